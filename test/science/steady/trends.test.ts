import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import type { Fraction, Metres } from '#basis/units.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { type ChargedFuel, fuelOf } from '#science/fuel/charge.ts'
import { mildDay, type Site } from '#science/site.ts'
import { createSteadyModel } from '#science/steady/model.ts'
import { predictSteady } from '#science/steady/predict.ts'
import type { SteadyState } from '#science/steady/state.ts'
import type { FuelCharge, OwnFuel, Stove } from '#stove/model.ts'
import { planOf } from '../draft/frozenNetwork.ts'
import { band, changed, dampered, layouts } from '../layouts.ts'
import { can, canPart, floorHoles, open, place, plain, ring, riserStove, row, twoWall } from '../stoves.ts'

interface Changes {
  readonly fuel?: ChargedFuel
  readonly moisture?: number
  readonly site?: Site
}

/** Halfway down; the fields that a comparison needs, copied out of the model's own arrays. */
const burning = (
  stove: Stove,
  { moisture, fuel = orThrow(fuelOf(stove, moisture)), site = mildDay }: Changes = {},
) => {
  const outcome = createSteadyModel({
    plan: planOf(stove),
    fuel,
    site,
    coefficients: medianCoefficients,
    burntOff: true,
  }).solve(0.5)
  if (!outcome.ok) throw new Error(`${outcome.failure.code}: ${outcome.failure.sentence}`)
  const { primaryAir, dryFuelRate, flameHeat, front }: SteadyState = outcome.state
  return { primaryAir, dryFuelRate, flameHeat, frontTemperature: front.temperature }
}

const charged = (charge: Partial<FuelCharge>): Stove => {
  const stove = twoWall()
  return { ...stove, fuel: { ...stove.fuel, ...charge } }
}

/** Pellets of the maker's own, like the table's but for what is given. */
const ownFuel = (measured: Partial<OwnFuel>): Stove =>
  charged({
    own: { name: 'own pellets', moisture: null, bulk: null, pieces: null, pieceDensity: null, ...measured },
  })

const mm = (value: number): Metres => (value / 1000) as Metres

const falls = (values: readonly number[]): void => {
  for (const [i, value] of values.entries()) if (i > 0) expect(value).toBeLessThan(values[i - 1] as number)
}

describe('the fuel', () => {
  test('wetter fuel gives less heat', () => {
    falls([0, 0.08, 0.16, 0.24, 0.3].map((moisture) => burning(twoWall(), { moisture }).flameHeat))
  })

  test('finer fuel lets less air through', () => {
    const air = [1.5, 1, 0.7, 0.5].map(
      (scale) =>
        burning(ownFuel({ pieces: { shape: 'rod', diameter: mm(6 * scale), length: mm(15 * scale) } }))
          .primaryAir,
    )
    falls(air)
  })

  test('fuel that lies denser lets less air through', () => {
    falls(
      [550, 600, 650, 700].map(
        (density) => burning(ownFuel({ bulk: { density, vesselDiameter: mm(90) } })).primaryAir,
      ),
    )
  })

  test('fines choke the bed', () => {
    falls([0, 0.02, 0.05, 0.1, 0.2].map((fines) => burning(charged({ fines: fines as Fraction })).primaryAir))
  })

  test('sticks that stand let more air through than sticks as they fall', () => {
    const sticks = { kind: 'twigs', level: mm(60) } as const
    falls([
      burning(charged({ ...sticks, packing: 'upright' })).primaryAir,
      burning(charged({ ...sticks, packing: 'tipped' })).primaryAir,
    ])
  })

  test('a deeper bed lets less air through', () => {
    falls([30, 45, 60, 75].map((level) => burning(twoWall({ level })).primaryAir))
  })
})

describe('the draught', () => {
  test('a taller riser draws more, until its wall has cooled the gas', () => {
    const heights = [60, 120, 180, 240, 300, 400, 600, 900, 1500, 2500]
    const air = heights.map((height) => burning(riserStove(height)).primaryAir)
    const best = air.indexOf(Math.max(...air))
    console.log(
      `riser: most primary air at ${heights[best]} mm, ${((air[best] as number) * 1e3).toFixed(3)} g/s`,
    )
    // Up to the length of the arm a riser only helps.
    for (let i = 1; i < 5; i++) expect(air[i]).toBeGreaterThan(air[i - 1] as number)
    // Each further decimetre is worth less than the one before.
    const gain = (i: number): number =>
      ((air[i] as number) - (air[i - 1] as number)) / ((heights[i] as number) - (heights[i - 1] as number))
    for (let i = 2; i < heights.length; i++) expect(gain(i)).toBeLessThan(gain(i - 1))
  })

  test.each([
    ['two walls', twoWall()],
    ['a riser', riserStove(250)],
    ['pellets of the maker', ownFuel({ bulk: { density: 650, vesselDiameter: mm(90) } })],
  ])('%s: a breath of wind that drives nothing changes nothing', (_, stove) => {
    const calm = burning(stove)
    const breath = burning(stove, { site: { ...mildDay, wind: { speed: 1e-6, from: 20 } } })
    // Not nothing at all: two-way flow is scaled by the largest stream, and a parted intake is no longer one stream.
    expect(breath.primaryAir / calm.primaryAir).toBeCloseTo(1, 3)
    expect(breath.flameHeat / calm.flameHeat).toBeCloseTo(1, 3)
    expect(breath.frontTemperature).toBeCloseTo(calm.frontTemperature, 1)
  })

  test('a damper turns the fire down', () => {
    falls([0, 4, 6, 8, 9.5].map((turned) => burning(dampered(turned)).flameHeat))
  })

  test('thin air on a mountain draws less', () => {
    falls(
      [101325, 90e3, 80e3, 65e3].map(
        (pressure) => burning(twoWall(), { site: { ...mildDay, pressure } }).primaryAir,
      ),
    )
  })

  test('a wider floor lets more primary air through', () => {
    falls([61, 37, 19, 12].map((count) => burning(twoWall({ floor: floorHoles(count, 4, 38) })).primaryAir))
  })
})

describe('stoves that cannot burn say why', () => {
  const codeOf = (stove: Stove): string => {
    const outcome = orThrow(predictSteady(stove))
    return outcome.kind === 'no burn' ? outcome.noBurn.code : 'burns'
  }
  const noFloor = canPart('fuel can', can(90.5, 118, plain, open, 93.5), {
    secondary: row('secondary', 20, 6, 104),
  })

  test('no hole under the fuel', () => {
    expect(codeOf(changed(twoWall(), { 'fuel can': noFloor }))).toBe('no air to the fuel')
  })

  test('no intake', () => {
    const shell = canPart('shell', can(112, 140, plain, ring(92)), {})
    expect(codeOf(changed(twoWall(), { shell }))).toBe('no air to the fuel')
  })

  test('damper shut', () => {
    expect(codeOf(dampered(18))).toBe('no air to the fuel')
  })

  test('a damper without windows', () => {
    const shut = changed(twoWall(), { damper: band(30, {}) }, [
      ...twoWall().assembly,
      place('damper', 'slips over', 'shell', 7),
    ])
    expect(codeOf(shut)).toBe('no air to the fuel')
  })

  test('a can that stands flat on the ground', () => {
    const flat = riserStove()
    expect(codeOf({ ...flat, assembly: [place('fuel can', 'on ground'), ...flat.assembly.slice(1)] })).toBe(
      'no air to the fuel',
    )
  })

  test('no fuel can', () => {
    const stove = twoWall()
    const assembly = stove.assembly.filter(({ part }) => part === 'shell')
    expect(codeOf({ ...stove, assembly })).toBe('no fuel can')
  })

  test('nothing that holds the fuel', () => {
    const hollow = canPart('fuel can', can(90.5, 118, open, open, 93.5), {
      secondary: row('secondary', 20, 6, 104),
    })
    expect(codeOf(changed(twoWall(), { 'fuel can': hollow }))).toBe('no floor under the fuel')
  })

  test('a lid without a hole', () => {
    const sealed = changed(
      twoWall(),
      { stand: undefined, concentrator: undefined },
      twoWall().assembly.slice(0, 2),
    )
    const can_ = canPart('fuel can', can(90.5, 118, plain, plain, 93.5), { floor: floorHoles(37, 4, 38) })
    expect(codeOf(changed(sealed, { 'fuel can': can_ }))).toBe('no way out')
  })

  test('a fuel that nobody knows is the maker’s to mend', () => {
    const outcome = predictSteady({ ...twoWall(), fuel: { ...twoWall().fuel, kind: 'peat' } })
    expect(outcome.ok).toBe(false)
    if (!outcome.ok) expect(outcome.problems[0]).toMatchObject({ code: 'fuel.unknown', value: 'peat' })
  })

  test('every sentence is one', () => {
    for (const stove of [changed(twoWall(), { 'fuel can': noFloor }), dampered(18)]) {
      const outcome = orThrow(predictSteady(stove))
      if (outcome.kind !== 'no burn') throw new Error('it burns')
      expect(outcome.noBurn.sentence).toMatch(/^[A-Z].*\.$/)
    }
  })
})

test('what one solve leaves behind does not change the next', () => {
  const stove = (layouts['two walls with a pot stand'] as (typeof layouts)[string])()
  const fuel = orThrow(fuelOf(stove))
  const model = createSteadyModel({
    plan: planOf(stove),
    fuel,
    site: mildDay,
    coefficients: medianCoefficients,
    burntOff: true,
  })
  const primary = (position: number): number => {
    const outcome = model.solve(position)
    return outcome.ok ? outcome.state.primaryAir : Number.NaN
  }
  const first = primary(0.5)
  primary(0.9)
  primary(0.1)
  expect(primary(0.5)).toBe(first)
})
