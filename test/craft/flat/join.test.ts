import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chooseJoin } from '#craft/flat/join.ts'

const apart = (a: number, b: number): number => {
  const turn = (((a - b) % 360) + 360) % 360
  return Math.min(turn, 360 - turn)
}

describe('the join of a wrap', () => {
  const spans = fc.array(
    fc.record({
      bearing: fc.double({ min: 0, max: 359, noNaN: true }),
      half: fc.double({ min: 1, max: 20, noNaN: true }),
    }),
    { maxLength: 6 },
  )

  it('cuts nothing where a gap of two degrees or more is to be had', () => {
    fc.assert(
      fc.property(spans, fc.double({ min: 0, max: 359, noNaN: true }), (taken, preferred) => {
        const isFree = (bearing: number, by = 0) =>
          taken.every((span) => apart(bearing, span.bearing) >= span.half + by)
        const hasGap = Array.from({ length: 3600 }, (_, index) => index / 10).some((bearing) =>
          isFree(bearing, 1),
        )
        fc.pre(hasGap)
        expect(isFree(chooseJoin(taken, preferred), -1e-9)).toBe(true)
      }),
    )
  })

  it('stays where it is preferred if that cuts nothing', () => {
    expect(chooseJoin([{ bearing: 170, half: 9 }], 180)).toBe(180)
  })

  it('goes to the middle of the nearest gap', () => {
    expect(
      chooseJoin(
        [180, 150, 120, 210, 240].map((bearing) => ({ bearing, half: 10 })),
        181,
      ),
    ).toBe(195)
  })
})
