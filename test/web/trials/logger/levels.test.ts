import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Joined, levelFor, levelsOf } from '#web/trials/logger/levels.ts'

const readings = fc.array(
  fc.oneof({ weight: 20, arbitrary: fc.double({ min: -50, max: 900, noNaN: true }) }, fc.constant(null)),
  { minLength: 1000, maxLength: 3000 },
)
const joined = (y: readonly (number | null)[]): Joined => [y.map((_, i) => i / 10), y]
const told = (values: readonly (number | null | undefined)[]) => values.filter((value) => value != null)

describe('coarser stand-ins for many readings', () => {
  it('invent nothing, keep time rising, and get fewer', () => {
    fc.assert(
      fc.property(readings, (y) => {
        const levels = levelsOf(joined(y))
        for (const [x, values = []] of levels) {
          expect(x.length).toBe(values.length)
          for (let i = 1; i < x.length; i++) expect(x[i]).toBeGreaterThanOrEqual(x[i - 1] as number)
          for (const value of told(values)) expect(y).toContain(value)
        }
        expect(levels.map(([x]) => x.length)).toEqual(levels.map(([x]) => x.length).toSorted((a, b) => b - a))
      }),
      { numRuns: 20 },
    )
  })

  it('keep a knock of one reading in sight at every level', () => {
    const y: (number | null)[] = Array.from({ length: 36_000 }, (_, i) => Math.sin(i / 500))
    y[20_011] = 900
    y[9_999] = -40
    for (const [, values = []] of levelsOf(joined(y))) {
      expect(Math.max(...told(values))).toBe(900)
      expect(Math.min(...told(values))).toBe(-40)
    }
  })

  it('lift the pen where it was lifted', () => {
    const y: (number | null)[] = Array.from({ length: 4000 }, () => 20)
    y[2000] = null
    for (const [, values = []] of levelsOf(joined(y))) expect(values).toContain(null)
  })

  it('are taken from afar, the readings themselves from near', () => {
    const levels = levelsOf(joined(Array.from({ length: 36_000 }, (_, i) => i)))
    expect(levelFor(levels, 0.01)).toBe(0)
    expect(levels[levelFor(levels, 1)]?.[0].length).toBeLessThanOrEqual(6000)
  })
})
