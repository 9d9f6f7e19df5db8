import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import { fuelOf } from '#science/fuel/charge.ts'
import { mildDay } from '#science/site.ts'
import { createSteadyModel } from '#science/steady/model.ts'
import { planOf } from '../draft/frozenNetwork.ts'
import { layouts } from '../layouts.ts'

describe('mass, added up over the outside of the stove', () => {
  test.each(Object.entries(layouts))('%s: what goes out is air and fuel less char', (_, build) => {
    const stove = build()
    const plan = planOf(stove)
    const fuel = orThrow(fuelOf(stove))
    const model = createSteadyModel({
      plan,
      fuel,
      site: mildDay,
      coefficients: medianCoefficients,
      burntOff: true,
    })
    for (const position of [0.1, 0.5]) {
      const outcome = model.solve(position)
      if (!outcome.ok) throw new Error(outcome.failure.sentence)
      const { flow, front, dryFuelRate } = outcome.state
      const net = plan.links.reduce((sum, { from, to }, k) => {
        const m = flow[k] as number
        return sum + (from === OUTSIDE ? m : 0) - (to === OUTSIDE ? m : 0)
      }, 0)
      const water = fuel.moisture / (1 - fuel.moisture)
      const largest = Math.max(...flow.map(Math.abs))
      // Out minus in is what the fuel gave: itself and its water, less the char it leaves.
      expect(Math.abs(-net - dryFuelRate * (1 + water - front.char))).toBeLessThan(3e-9 * largest)
    }
  })
})
