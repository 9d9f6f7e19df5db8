import { medianCoefficients } from '#science/coefficients.ts'
import { planDraught } from '#science/draft/build.ts'
import { fuelOf } from '#science/fuel/charge.ts'
import { mildDay } from '#science/site.ts'
import { createSteadyModel } from '#science/steady/model.ts'
import type { Stove } from '#stove/model.ts'
import { riserStove, twoWall } from '../test/science/stoves.ts'
import { timing } from './measure.ts'
import type { Rows } from './row.ts'

/** Places of the front, so that no solve finds its answer ready. */
const POSITIONS = Array.from({ length: 20 }, (_, i) => 0.05 + 0.045 * i)

/** Settles the stove's state for every place of the front; returns the air's sum. */
const settleAll = (stove: Stove): (() => number) => {
  const outcome = planDraught(stove)
  const fuel = fuelOf(stove)
  if (!outcome.ok || !fuel.ok) throw new Error('the stove of the measurement does not burn')
  const model = createSteadyModel({
    plan: outcome.plan,
    fuel: fuel.value,
    site: mildDay,
    coefficients: medianCoefficients,
    burntOff: true,
  })
  return () => {
    let sum = 0
    for (const position of POSITIONS) {
      const found = model.solve(position)
      if (!found.ok) throw new Error(found.failure.sentence)
      sum += found.state.primaryAir
    }
    return sum
  }
}

/** One steady prediction from nothing, temperatures, walls and all, on one core. */
export const rows: Rows = async () => {
  const wide = await timing(settleAll(twoWall()), { calls: POSITIONS.length })
  const tall = await timing(settleAll(riserStove()), { calls: POSITIONS.length })
  return [
    { name: 'steady state of a two-wall stove', value: wide.median * 1e6, unit: 'µs', bar: { atMost: 50 } },
    {
      name: 'steady state of a stove with a riser',
      value: tall.median * 1e6,
      unit: 'µs',
      bar: { atMost: 50 },
    },
  ]
}
