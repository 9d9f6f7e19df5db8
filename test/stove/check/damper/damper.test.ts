import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { contextOf } from '#stove/check/context.ts'
import { damper } from '#stove/check/damper/damper.ts'
import type { RowOpening } from '#stove/model.ts'
import {
  band,
  brief,
  type CanSpec,
  canPart,
  type Openings,
  place,
  round,
  row,
  slit,
  stove,
  window,
} from '../stoves.ts'

interface Case {
  readonly holes?: RowOpening
  readonly windows?: Openings
  readonly height?: number
  readonly raised?: number
  readonly turned?: number
  readonly more?: Openings
  readonly spec?: CanSpec
}

/** Can 314.16 mm round; 8 intake holes of 12 mm at 25 mm: a pitch of 39.27 mm. The band starts 15 mm up. */
const damped = ({ holes, windows, height = 20, raised = 15, turned = 0, more = {}, spec = {} }: Case) =>
  damper(
    contextOf(
      stove(
        {
          shell: canPart('shell', spec, { intake: holes ?? row('intake', 8, round(12), 25), ...more }),
          damper: band(height, windows ?? { windows: row('intake', 8, window(14, 16), 10) }),
        },
        [place('shell', 'on ground'), place('damper', 'slips over', 'shell', { raised, turned })],
      ),
      null,
    ),
  )

describe('a damper that works', () => {
  test('windows that match, wherever the front mark of the can is', () => {
    expect(damped({})).toEqual([])
    expect(damped({ holes: row('intake', 8, round(12), 25, { bearing: 20 }), turned: 20 })).toEqual([])
  })

  test('slits and round windows', () => {
    expect(damped({ windows: { w: row('intake', 8, round(14), 10) } })).toEqual([])
    expect(
      damped({
        holes: row('intake', 8, slit(14, 4, 'axis'), 25),
        windows: { w: row('intake', 8, window(6, 16), 10) },
      }),
    ).toEqual([])
  })
})

describe('opening', () => {
  test('too few windows', () => {
    const found = damped({ windows: { w: row('intake', 4, window(14, 16), 10) } })
    expect(brief(found)).toEqual(['warn damper.cannot-open damper'])
    expect(found[0]?.sentence).toContain('50 %')
    expect(found[0]?.sentence).toContain('4 windows and the row 8 holes')
    expect(found[0]?.fix).toContain('8 windows')
  })

  test('a left-out position needs no window', () => {
    expect(damped({ holes: row('intake', 8, round(12), 25, { leftOut: [5] }) })).toEqual([])
  })

  test('windows smaller than the holes, too low, or not all over holes at once', () => {
    expect(damped({ windows: { w: row('intake', 8, window(8, 16), 10) } })[0]?.sentence).toContain(
      'smaller than the holes',
    )
    expect(damped({ windows: { w: row('intake', 8, window(14, 12), 7) } })[0]?.sentence).toContain(
      '3 mm (1/8 in) too low',
    )
    const uneven = row('intake', 16, window(14, 16), 10, { leftOut: [2, 4, 6, 8, 9, 11, 13, 15] })
    expect(damped({ windows: { w: uneven } })[0]?.sentence).toContain('all at once')
  })

  test('no windows at all', () => {
    expect(damped({ windows: {} })[0]?.sentence).toContain('it has no windows')
  })
})

describe('shutting', () => {
  // Pitch 39.27: between windows of 28 mm stand 11.27 mm of tin, of 26 mm 13.27 mm; the holes are 12 mm.
  test('tin between the windows has to cover a hole', () => {
    expect(damped({ windows: { w: row('intake', 8, window(26, 16), 10) } })).toEqual([])
    const found = damped({ windows: { w: row('intake', 8, window(31, 16), 10) } })
    expect(brief(found)).toEqual(['warn damper.cannot-close damper'])
    // 39.27 − 12 − 2 = 25.27 mm, and 1 in is more.
    expect(found[0]?.fix).toContain('at most 24 mm (15/16 in) wide')
  })

  test('holes too close for any window', () => {
    const found = damped({
      holes: row('intake', 14, round(12), 25),
      windows: { w: row('intake', 14, window(14, 16), 10) },
    })
    expect(brief(found)).toEqual(['warn damper.cannot-close damper'])
    expect(found[0]?.fix).toContain('fewer or smaller holes')
  })
})

describe('lying right', () => {
  // The row reaches from 19 to 31 mm.
  test('a band too narrow, or too low', () => {
    expect(
      brief(damped({ height: 10, raised: 20, windows: { w: row('intake', 8, window(14, 10), 5) } })),
    ).toContain('warn damper.not-over-row damper')
    const low = damped({ raised: 5, windows: { w: row('intake', 8, window(14, 16), 10) } })
    expect(low.map(({ code }) => code)).toContain('damper.not-over-row')
    // Row at 25, band middle at 15.
    expect(low.find(({ code }) => code === 'damper.not-over-row')?.fix).toContain('raise it by 10 mm')
  })

  test('over no intake at all', () => {
    expect(brief(damped({ raised: 60 }))).toEqual(['warn damper.no-intake damper'])
  })

  test('over another row', () => {
    const screws = { screws: row('fixing', 3, round(3), 30, { bearing: 20 }) }
    expect(brief(damped({ more: screws }))).toEqual(['warn damper.hides-row damper'])
    expect(damped({ more: { screws: row('fixing', 3, round(3), 40, { bearing: 20 }) } })).toEqual([])
  })

  test('over a seam or a bead', () => {
    expect(brief(damped({ spec: { beads: [[33, 37]] } }))).toEqual(['warn damper.on-ridge damper'])
    expect(damped({ spec: { beads: [[36, 40]] } })).toEqual([])
  })

  test('placed partly shut', () => {
    const found = damped({ turned: 11.25 })
    expect(brief(found)).toEqual(['note damper.drawn-partly-shut damper'])
    expect(found[0]?.fix).toBe('Turn it 11° anticlockwise to open it.')
  })

  test('turning band and can together changes nothing', () => {
    const sentences = (turn: number) =>
      damped({ holes: row('intake', 8, round(12), 25, { bearing: turn }), turned: 11.25 + turn }).map(
        ({ sentence }) => sentence,
      )
    fc.assert(
      fc.property(fc.double({ min: -360, max: 360, noNaN: true }), (turn) => {
        expect(sentences(turn)).toEqual(sentences(0))
      }),
      { numRuns: 50 },
    )
  })
})
