import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Metres } from '#basis/units.ts'
import { fitCans } from '#stove/fit/fit.ts'
import type { FitKind } from '#stove/fit/fitKind.ts'
import { anyCan, closePair, withDiameters } from './sampleCans.ts'

const pair = fc.oneof(closePair, fc.tuple(anyCan, anyCan))
const goesIn = (kind: FitKind): boolean => kind === 'drops in' || kind === 'slides in'
const runs = { numRuns: 1000 }

describe('fits of any two cans', () => {
  test('whatever goes in, the other goes over', () => {
    fc.assert(
      fc.property(pair, ([one, other]) => {
        const [into, over] = [fitCans(one, other), fitCans(other, one)]
        expect(over.kind === 'goes over the outside').toBe(goesIn(into.kind))
        expect(over.kind === 'snaps on the lip').toBe(into.kind === 'snaps on the lip')
        if (goesIn(into.kind)) {
          expect(over.clearance).toEqual(into.clearance)
          if (over.certain !== into.certain)
            // Going over does not tell dropping from sliding; nothing else may differ.
            expect([into.atTightest, into.atLoosest]).toEqual(['slides in', 'drops in'])
        }
      }),
      runs,
    )
  })

  test('a certain verdict holds for every true size within the tolerances', () => {
    const somewhere = fc.double({ min: -1, max: 1, noNaN: true })
    fc.assert(
      fc.property(pair, somewhere, somewhere, ([one, other], first, second) => {
        const truly = (share: number) => (can: typeof one) =>
          withDiameters(can, ({ value, tolerance }) => ({
            value: (value + share * tolerance) as Metres,
            tolerance: 0 as Metres,
          }))
        const fit = fitCans(one, other)
        const real = fitCans(truly(first)(one), truly(second)(other), {
          // Which of two mouths is the wider must not change with the draw.
          ...(fit.through !== null && fit.kind !== 'goes over the outside' ? { through: fit.through } : {}),
        })
        if (fit.certain && fit.through !== null) expect(real.kind).toBe(fit.kind)
      }),
      runs,
    )
  })

  test('more tolerance never makes a verdict more certain, nor changes the verdict', () => {
    fc.assert(
      fc.property(pair, fc.double({ min: 1, max: 5, noNaN: true }), ([one, other], times) => {
        const rougher = (can: typeof one) =>
          withDiameters(can, ({ value, tolerance }) => ({ value, tolerance: (tolerance * times) as Metres }))
        const before = fitCans(one, other)
        const after = fitCans(rougher(one), rougher(other))
        expect(after.kind).toBe(before.kind)
        if (after.certain) expect(before.certain).toBe(true)
      }),
      runs,
    )
  })

  test('twice the cans, twice the clearance and the same verdict', () => {
    // Powers of two scale without rounding, so a verdict that stands exactly on a threshold stays there.
    fc.assert(
      fc.property(pair, fc.constantFrom(0.25, 0.5, 2, 4), ([one, other], scale) => {
        const scaled = (can: typeof one) => ({
          ...withDiameters(can, ({ value, tolerance }) => ({
            value: (value * scale) as Metres,
            tolerance: (tolerance * scale) as Metres,
          })),
          bodyWall: (can.bodyWall * scale) as Metres,
        })
        const before = fitCans(one, other)
        const after = fitCans(scaled(one), scaled(other))
        expect(after.kind).toBe(before.kind)
        expect(after.certain).toBe(before.certain)
        if (before.clearance !== null)
          expect(after.clearance?.least).toBeCloseTo(before.clearance.least * scale, 9)
      }),
      runs,
    )
  })

  test('a narrower can goes in wherever a wider one did', () => {
    fc.assert(
      fc.property(pair, fc.double({ min: 0, max: 0.02, noNaN: true }), ([one, other], less) => {
        const narrower = withDiameters(one, ({ value, tolerance }) => ({
          value: (value - less) as Metres,
          tolerance,
        }))
        if (goesIn(fitCans(one, other).kind)) expect(goesIn(fitCans(narrower, other).kind)).toBe(true)
      }),
      runs,
    )
  })

  test('the least clearance is never more than the most, and the nominal lies in the middle', () => {
    fc.assert(
      fc.property(pair, ([one, other]) => {
        const { clearance } = fitCans(one, other)
        fc.pre(clearance !== null)
        expect(clearance.least).toBeLessThanOrEqual(clearance.most)
        expect((clearance.least + clearance.most) / 2).toBeCloseTo(clearance.nominal, 12)
      }),
    )
  })

  test('says something sensible of every pair', () => {
    fc.assert(
      fc.property(pair, ([one, other]) => {
        const { sentence } = fitCans(one, other, { innerName: 'A', outerName: 'B' })
        expect(sentence).toMatch(/^A .*B.*\.$/)
        expect(sentence).not.toMatch(/NaN|undefined|null|-\d/)
      }),
    )
  })
})
