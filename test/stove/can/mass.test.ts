import { describe, expect, test } from 'vitest'
import { fromMillimetres as mm } from '#basis/units.ts'
import seams from '#reference/canFits.json' with { type: 'json' }
import { FOOD_CANS } from '#stove/can/foodCans.ts'
import { canFromCode, measuredCan } from '#stove/can/fromCode.ts'
import { canMass } from '#stove/can/mass.ts'
import type { CanEnd } from '#stove/model.ts'

const exact = (value: number) => ({ value: mm(value), tolerance: mm(0) })

const can = (bottom: CanEnd, top: CanEnd) =>
  measuredCan({
    seamDiameter: exact(102),
    bodyDiameter: exact(100),
    height: exact(100),
    bodyWall: mm(0.2),
    endWall: mm(0.2),
    seamHeight: mm(3),
    bottom,
    top,
  })

/** Grams of steel at 7.85 g/cm³ in so many mm³. */
const grams = (volume: number): number => (7.85 * volume) / 1000
const inGrams = (bottom: CanEnd, top: CanEnd): number => canMass(can(bottom, top)) * 1000

describe('canMass', () => {
  test('a cup without seams is its wall and its floor', () => {
    // wall π × 99.8 × 0.2 × 100 = 6270.6 mm³, floor π/4 × 100² × 0.2 = 1570.8 mm³: 61.56 g
    expect(inGrams({ kind: 'drawn' }, { kind: 'cut' })).toBeCloseTo(grams(6270.6 + 1570.8), 2)
  })

  test('a double seam is five layers of plate (CFIA, double seam dimensional technology)', () => {
    const { layers, ofEnd, ofBody } = seams.doubleSeam
    expect(ofEnd + ofBody).toBe(layers)
    // An end cut out along the wall leaves the seam: all its layers but the wall, which the body has anyway.
    const seam = inGrams({ kind: 'drawn' }, { kind: 'open' }) - inGrams({ kind: 'drawn' }, { kind: 'cut' })
    // Round about 100 mm, 3 mm high, 0.2 mm thick: π × 100 × 3 × 0.2 = 188.5 mm³ a layer.
    expect(seam / grams(188.5)).toBeGreaterThan((layers - 1) * 0.98)
    expect(seam / grams(188.5)).toBeLessThan((layers - 1) * 1.02)
  })

  test('a whole end adds its panel and the wall down to it', () => {
    const panel =
      inGrams({ kind: 'drawn' }, { kind: 'plain', countersink: mm(5) }) -
      inGrams({ kind: 'drawn' }, { kind: 'open' })
    // panel π/4 × 99.6² × 0.2 = 1558.3 mm³; 2 mm more of chuck wall π × 99.6 × 0.2 × 2 = 125.2 mm³
    expect(panel).toBeCloseTo(grams(1558.3 + 125.2), 2)
  })

  test('a pulled-off panel leaves a ring, a larger opening leaves less', () => {
    const at = (opening: number) => inGrams({ kind: 'drawn' }, { kind: 'pull-off', opening: exact(opening) })
    // π/4 × (95² − 90²) × 0.2 = 145.3 mm³
    expect(at(90) - at(95)).toBeCloseTo(grams(145.3), 2)
  })

  test('grows with the can throughout the public table, code by code of one diameter', () => {
    for (const one of FOOD_CANS)
      for (const other of FOOD_CANS)
        if (one.code.slice(0, 3) === other.code.slice(0, 3) && one.code < other.code)
          expect(canMass(canFromCode(one.code))).toBeLessThan(canMass(canFromCode(other.code)))
  })
})
