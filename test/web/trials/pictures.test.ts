import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lanes, timeTicks } from '#web/trials/lanes.ts'
import { plotScale, spreadOut } from '#web/trials/plotScale.ts'
import { piecesOf } from '#web/trials/symbolPieces.ts'

const value = fc.double({ min: -1e4, max: 1e4, noNaN: true })

describe('the line of figures below a plot', () => {
  it('keeps every value on the sheet, with figures in order', () => {
    fc.assert(
      fc.property(fc.array(value, { minLength: 1, maxLength: 20 }), (values) => {
        const { x, ticks, low, high } = plotScale(values, 100, 700)
        for (const one of values) {
          expect(x(one)).toBeGreaterThanOrEqual(100)
          expect(x(one)).toBeLessThanOrEqual(700)
        }
        for (const [i, tick] of ticks.entries()) {
          if (i > 0) expect(tick).toBeGreaterThan(ticks[i - 1] as number)
          expect(tick).toBeGreaterThanOrEqual(low - 1e-6 * (high - low))
        }
      }),
    )
  })

  it('steps by 1, 2 or 5', () => {
    expect(plotScale([10, 14], 0, 600).ticks).toEqual([10, 11, 12, 13, 14])
    expect(plotScale([-3, -1], 0, 600, { zero: true }).ticks).toContain(0)
  })
})

describe('points and words that would lie on each other', () => {
  it('no two points of one row are nearer than a point is wide', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 200 }), { maxLength: 30 }), (places) => {
        const rows = spreadOut(places, 12)
        for (const [i, a] of places.entries())
          for (let j = 0; j < i; j++)
            if (rows[i] === rows[j]) expect(Math.abs(a - (places[j] as number))).toBeGreaterThanOrEqual(12)
      }),
    )
  })

  it('no two words of one line of writing overlap, and none leaves the sheet', () => {
    const mark = fc.record({
      key: fc.uuid(),
      x: fc.integer({ min: 0, max: 900 }),
      text: fc.string({ maxLength: 30 }),
    })
    fc.assert(
      fc.property(fc.array(mark, { maxLength: 20 }), (marks) => {
        const placed = lanes(marks, 960)
        for (const a of placed) {
          expect(a.from).toBeGreaterThanOrEqual(0)
          expect(a.from + a.text.length * 6.4).toBeLessThanOrEqual(960.001)
          for (const b of placed)
            if (a !== b && a.lane === b.lane && a.from <= b.from)
              expect(a.from + a.text.length * 6.4).toBeLessThanOrEqual(b.from)
        }
      }),
    )
  })

  it('figures a line of time in steps a clock knows', () => {
    expect(timeTicks(1200)).toEqual([0, 300, 600, 900, 1200])
    expect(timeTicks(45)).toEqual([0, 10, 20, 30, 40])
  })
})

describe('symbols', () => {
  it('hangs and lifts what the protocol hangs and lifts', () => {
    expect(piecesOf('Δt_c^T = 3').map(({ kind, text }) => kind + text)).toEqual([
      'plainΔt',
      '_c',
      '^T',
      'plain = 3',
    ])
  })
})
