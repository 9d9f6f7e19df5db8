import { expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { fromMillimetres as mm } from '#basis/units.ts'
import { predictSteady } from '#science/steady/predict.ts'
import type { Stove } from '#stove/model.ts'
import { riserStove } from '../stoves.ts'

/** A riser with a pot over it on rods. */
const potOnRods = (gap: number): Stove => ({ ...riserStove(), potDiameter: mm(160), potGap: mm(gap) })

const primary = (stove: Stove): number => {
  const outcome = orThrow(predictSteady(stove))
  return outcome.kind === 'prediction' ? outcome.prediction.halfway.air.primary : 0
}

test('a pot that would only close the riser is taken to stand elsewhere', () => {
  expect(primary(potOnRods(0))).toBeCloseTo(primary({ ...riserStove(), potDiameter: null }), 12)
})

test('the higher the rods, the better it draws, up to as if there were no pot', () => {
  const gaps = [3, 6, 10, 18, 40]
  const drawn = gaps.map((gap) => primary(potOnRods(gap)))
  for (let i = 1; i < drawn.length; i++)
    expect(drawn[i] as number).toBeGreaterThanOrEqual((drawn[i - 1] as number) * (1 - 1e-6))
  expect(drawn[0] as number).toBeLessThan(0.9 * (drawn[4] as number))
  // From a quarter of the diameter up the ring is as wide as the riser's own mouth: 73 mm/4 = 18.25 mm.
  expect((drawn[4] as number) / primary({ ...riserStove(), potDiameter: null })).toBeCloseTo(1, 4)
})
