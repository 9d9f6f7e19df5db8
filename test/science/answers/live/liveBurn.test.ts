import { describe, expect, test } from 'vitest'
import type { Metres } from '#basis/units.ts'
import { reportOf } from '#science/answers/burn/report.ts'
import { plainSetup } from '#science/answers/burn/setup.ts'
import { liveBurn } from '#science/answers/live/liveBurn.ts'
import { example, exampleNames } from '../../burn/firing.ts'

const pair = (name: (typeof exampleNames)[number]) => {
  const setup = plainSetup(example(name))
  const [report, live] = [reportOf(setup, 0), liveBurn(setup)]
  if (report.kind !== 'burn' || live.kind !== 'burn') throw new Error(`${name} does not burn`)
  return { report: report.report, ...live }
}

describe.each(exampleNames)('%s under the hand', (name) => {
  const { report, burn, moments } = pair(name)

  test('tells of the same burn as the whole report', () => {
    expect(burn.figures).toEqual(report.figures)
    expect(burn.touch).toEqual(report.touch)
    expect(burn.course).toBe(report.course)
    expect(burn.events).toEqual(report.events)
    expect(burn.fuel).toEqual(report.fuel)
    const litre = report.boils.find(({ litres }) => litres === 1)
    expect(burn.boil.boilsAt).toBe(litre?.boilsAt)
    expect(burn.boil.warmest).toBe(litre?.warmest)
    expect(burn.steps.map(({ firepower }) => firepower)).toEqual(
      report.series.map(({ firepower }) => firepower),
    )
  })

  test('keeps the moment of every step, which flows as the step says', () => {
    expect(moments).toHaveLength(burn.steps.length)
    for (const [i, moment] of moments.entries()) {
      expect(moment.firepower).toBe(burn.steps[i]?.firepower)
      expect(moment.frontPosition).toBe(burn.steps[i]?.frontPosition)
      // More leaves than comes in, by what the fuel gives to the gas: no more than burns away.
      const out = -moment.passages
        .filter(({ from, to }) => (from === null) !== (to === null))
        .reduce((sum, { massFlow, to }) => sum + (to === null ? -massFlow : massFlow), 0)
      expect(out).toBeGreaterThan(0)
      expect(out).toBeLessThanOrEqual(moment.fuelRate * (1 + 1e-9))
    }
  })

  test('has char as a share of the most there is', () => {
    const shares = burn.steps.map(({ charShare }) => charShare)
    expect(Math.max(...shares)).toBe(1)
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0)
  })
})

test('a stove filled over its secondary holes comes back with an answer, burn or reason', () => {
  const stove = example('redshank')
  const filled = { ...stove, fuel: { ...stove.fuel, level: 0.001 as Metres } }
  const outcome = liveBurn(plainSetup(filled))
  if (outcome.kind === 'no burn') expect(outcome.noBurn.sentence).toMatch(/\.$/)
  else expect(outcome.burn.steps.length).toBeGreaterThan(0)
})
