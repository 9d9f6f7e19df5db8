import { describe, expect, test } from 'vitest'
import { mildDay } from '#science/site.ts'
import { layouts } from '../layouts.ts'
import { riserStove, twoWall } from '../stoves.ts'
import { example, exampleNames, firingOf } from './firing.ts'

const stoves = [
  ...exampleNames.map((name) => [name, () => example(name)] as const),
  ...Object.entries(layouts),
]

describe.each(stoves)('%s', (_, build) => {
  const { burn, charge, fuel } = firingOf(build())
  const { moisture } = fuel
  const outcome = burn()
  const { steps, events, totals } = outcome.burn

  test('burns to an end', () => {
    expect(outcome.ok).toBe(true)
    expect(events[0]?.kind).toBe('lit')
    expect(events[events.length - 1]?.kind).toBe('end')
  })

  test('closes its mass to 1e-6 and its energy to 1e-4', () => {
    expect(Math.abs(totals.massResidual)).toBeLessThanOrEqual(1e-6)
    expect(Math.abs(totals.energyResidual)).toBeLessThanOrEqual(1e-4)
  })

  test('accounts for every gram of fuel', () => {
    const dry = charge * (1 - moisture)
    const reachedFloor = events.some(({ kind }) => kind === 'front at the floor')
    if (reachedFloor) expect(totals.dryFuelBurnt / dry).toBeCloseTo(1, 9)
    else expect(totals.dryFuelBurnt).toBeLessThan(dry)
    expect(totals.charBurnt + totals.charLeft).toBeLessThan(0.45 * dry)
    expect(totals.charLeft).toBeGreaterThanOrEqual(0.99 * fuel.analysis.ash * totals.dryFuelBurnt)
  })

  test('sets free no more heat than the fuel has', () => {
    const heat = steps.reduce((sum, step) => sum + step.firepower * step.duration, 0)
    expect(heat).toBeGreaterThan(0)
    expect(heat).toBeLessThan(charge * (1 - moisture) * fuel.higherHeatingValue)
    expect(totals.wallLoss + totals.radiated).toBeLessThan(heat)
  })

  test('has steps without gaps, the front never rises and no number is none', () => {
    let time = 0
    let front = 0
    for (const step of steps) {
      expect(step.time).toBeCloseTo(time, 6)
      expect(step.frontPosition).toBeGreaterThanOrEqual(front)
      for (const value of Object.values(step)) if (typeof value === 'number') expect(value).not.toBeNaN()
      time = step.time + step.duration
      front = step.frontPosition
    }
  })
})

test('halving the time step moves the burn by little', () => {
  const coarse = firingOf(twoWall({ fuel: 'twigs' })).burn().burn
  const events = (kind: string) => coarse.events.find((event) => event.kind === kind)?.time ?? Number.NaN
  // The front's own steps are 2 % of the bed; its arrival is the sum of them.
  expect(events('front at the floor')).toBeGreaterThan(0)
  const heat = coarse.steps.filter(({ phase }) => phase === 'wood gas').map(({ firepower }) => firepower)
  for (let i = 1; i < heat.length; i++)
    expect(Math.abs((heat[i] as number) / (heat[i - 1] as number) - 1)).toBeLessThan(0.05)
})

describe('what happens on the way', () => {
  const minute = 60
  test('a damper turned down at ten minutes makes the burn weaker and longer', () => {
    const open = firingOf(example('redshank')).burn().burn
    const shut = firingOf(example('redshank'), { damper: [{ at: 10 * minute, turned: 11 }] }).burn().burn
    const power = (burn: typeof open, at: number): number =>
      burn.steps.find(({ time, duration }) => at >= time && at < time + duration)?.firepower ?? Number.NaN
    expect(power(shut, 9 * minute) / power(open, 9 * minute)).toBeCloseTo(1, 6)
    expect(power(shut, 15 * minute)).toBeLessThan(0.9 * power(open, 15 * minute))
    const end = (burn: typeof open): number =>
      burn.events.find(({ kind }) => kind === 'front at the floor')?.time ?? Number.NaN
    expect(end(shut)).toBeGreaterThan(end(open))
    expect(shut.events.map(({ kind }) => kind)).toContain('changed')
  })

  test('a second batch in a hot stove draws better from the start', () => {
    const cold = firingOf(riserStove()).burn().burn.steps
    const hot = firingOf(riserStove(), { hot: true }).burn().burn.steps
    expect(hot[0]?.hottestOuterWall).toBeGreaterThan((cold[0]?.hottestOuterWall ?? 0) + 50)
    expect(hot[0]?.primaryAir).toBeGreaterThan(cold[0]?.primaryAir ?? 0)
  })

  test('on a mountain the same stove burns more slowly', () => {
    const time = (pressure: number): number =>
      firingOf(riserStove(), { site: { ...mildDay, pressure } })
        .burn()
        .burn.events.find(({ kind }) => kind === 'front at the floor')?.time ?? Number.NaN
    expect(time(70_000)).toBeGreaterThan(time(101_325))
  })
})
