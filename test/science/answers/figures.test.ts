import { describe, expect, test } from 'vitest'
import { burnFigures, usualWish } from '#science/answers/figures.ts'
import { tripFuel } from '#science/answers/trip.ts'
import { turndown } from '#science/answers/turndown.ts'
import { windStood } from '#science/answers/windStood.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { mildDay } from '#science/site.ts'
import { example, exampleNames, firingOf } from '../burn/firing.ts'

const figuresOf = (name: (typeof exampleNames)[number], wish = usualWish) => {
  const firing = firingOf(example(name))
  return { firing, figures: burnFigures(firing.burn().burn, firing, wish, mildDay, medianCoefficients) }
}

describe.each(exampleNames)('%s', (name) => {
  const { firing, figures } = figuresOf(name)

  test('boils less water sooner, and no more water than it has heat for', () => {
    let before = 0
    for (const { litres, time, efficiency, efficiencyCharCredited, cooked } of figures.boils) {
      if (time !== null) {
        expect(time).toBeGreaterThan(before)
        before = time
      }
      expect(efficiency).toBeGreaterThan(0)
      expect(efficiencyCharCredited).toBeGreaterThan(efficiency)
      expect(efficiencyCharCredited).toBeLessThan(0.6)
      // Water that is left and steam make what was put in.
      expect(cooked.waterLeft).toBeGreaterThanOrEqual(0)
      expect(cooked.waterLeft).toBeLessThanOrEqual(litres)
      // A pot is dry after it has boiled, and then there is next to nothing in it.
      if (cooked.dryAt !== null) {
        expect(cooked.dryAt).toBeGreaterThan(cooked.boilsAt ?? Number.POSITIVE_INFINITY)
        expect(cooked.waterLeft).toBeLessThan(0.021 * litres)
      } else expect(cooked.waterLeft).toBeGreaterThan(0.019 * litres)
    }
  })

  test('a lid brings the boil forward', () => {
    const open = figuresOf(name, { ...usualWish, lid: false }).figures
    for (const [i, boil] of figures.boils.entries()) {
      const without = open.boils[i]?.time ?? Number.POSITIVE_INFINITY
      if (boil.time !== null) expect(boil.time).toBeLessThan(without)
    }
  })

  test('the hottest wall burns at once or says how long', () => {
    expect(figures.hottestOuterWall).toBeGreaterThan(mildDay.temperature)
    if (figures.hottestOuterWall > 345) expect(figures.longestTouch).toBeNull()
  })

  test('heat of walls and of gas are parts of what the fuel has', () => {
    expect(figures.heatOfWalls + figures.heatOfGas).toBeLessThan(
      1.1 * firing.charge * firing.lowerHeatingValue,
    )
  })

  test('fuel for twice the days is twice the fuel', () => {
    const one = tripFuel(figures, firing, 2, 3, 0.5)
    const two = tripFuel(figures, firing, 4, 3, 0.5)
    if (one.fuel === null) expect(two.fuel).toBeNull()
    else expect(two.fuel).toBeCloseTo(2 * one.fuel, 12)
  })
})

describe('turning down', () => {
  const firing = firingOf(example('redshank'))
  const answer = turndown(example('redshank'), firing, mildDay, medianCoefficients)

  test('closing the damper never raises firepower', () => {
    const settings = [...(answer?.settings ?? [])].sort((a, b) => a.free - b.free)
    expect(settings.length).toBeGreaterThan(4)
    for (let i = 1; i < settings.length; i++)
      expect((settings[i]?.firepower ?? 0) - (settings[i - 1]?.firepower ?? 0)).toBeGreaterThanOrEqual(-1e-3)
    expect(answer?.ratio).toBeGreaterThanOrEqual(1)
  })

  test('a stove without a damper has none', () => {
    expect(turndown(example('heron'), firingOf(example('heron')), mildDay, medianCoefficients)).toBeNull()
  })
})

test('a stove with a riser stands more wind than a pocket stove', () => {
  const stands = (name: (typeof exampleNames)[number]): number =>
    windStood(firingOf(example(name)), mildDay, medianCoefficients)?.stands ?? 0
  expect(stands('heron')).toBeGreaterThan(stands('redshank'))
})
