import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import janaf from '#reference/janaf.json' with { type: 'json' }
import { medianCoefficients } from '#science/coefficients.ts'
import { type Front, frontModel } from '#science/fire/front.ts'
import { higherHeatingValue } from '#science/fuel/composition.ts'
import { type Fuel, fuelTable } from '#science/fuel/table.ts'
import { condensedRecords, gasRecords, type SpeciesRecord } from '#science/gas/speciesData.ts'
import { molarEnthalpy, shiftConstant } from '#science/gas/thermo.ts'
import { relativeMiss } from '../relativeMiss.ts'
import { anyFront } from './arbitraryFront.ts'
import {
  AIR_MOLAR_MASS,
  AIR_OXYGEN_SHARE,
  type Element,
  elementsIn,
  elementsOut,
  gasMass,
  oxygenNeed,
} from './elements.ts'

const fuelNamed = (key: string): Fuel => {
  const fuel = fuelTable.get(key)
  if (fuel === undefined) throw new Error(`${key} is not in the fuel table`)
  return fuel
}
const pellets = fuelNamed('pellets-6mm')

const closed = (airPerFuel: number, moisture = 0.08, fuel = pellets): Front => {
  const outcome = frontModel(fuel, moisture, 293.15, medianCoefficients).close(airPerFuel, 293.15)
  if (!outcome.ok) throw new Error(outcome.reason)
  return outcome.front
}

/** Runs a check on every drawn front that glows, and makes sure that most do: poor and ashy fuels often do not. */
const onFronts = (seed: number, check: (drawn: Drawn, front: Front) => void): void => {
  let glowing = 0
  let all = 0
  fc.assert(
    fc.property(anyFront, (drawn) => {
      all++
      const outcome = frontModel(drawn.fuel, drawn.moisture, drawn.ambient, drawn.coefficients).close(
        drawn.airPerFuel,
        drawn.ambient + drawn.preheated,
      )
      if (!outcome.ok) return
      glowing++
      check(drawn, outcome.front)
    }),
    { seed, numRuns: 300 },
  )
  expect(glowing / all).toBeGreaterThan(0.8)
}
type Drawn = typeof anyFront extends fc.Arbitrary<infer T> ? T : never

describe('what goes into the front comes out of it', () => {
  test.each(['C', 'H', 'O', 'N', 'Ar'] as const)('%s', (element: Element) => {
    onFronts(21, ({ fuel, moisture, airPerFuel }, front) => {
      const supplied = elementsIn(fuel, moisture, airPerFuel)[element]
      expect(Math.abs(elementsOut(fuel, front)[element] - supplied)).toBeLessThan(
        1e-10 * Math.max(1, supplied),
      )
    })
  })

  test('mass: fuel, water and air are gas, char and ash', () => {
    onFronts(22, ({ moisture, airPerFuel }, front) => {
      const supplied = 1 + moisture / (1 - moisture) + airPerFuel
      expect(relativeMiss(front.gas + front.char, supplied)).toBeLessThan(1e-12)
      expect(relativeMiss(gasMass(front), front.gas)).toBeLessThan(1e-10)
    })
  })

  test('no species is negative', () => {
    onFronts(23, (_, front) => {
      for (const amount of Object.values(front.moles)) expect(amount).toBeGreaterThanOrEqual(0)
    })
  })

  test('enthalpy, added up from the moles species by species', () => {
    const T0 = 298.15
    const kelvin = (record: SpeciesRecord, T: number): number => molarEnthalpy(record, T)
    /** Formation from a higher heating value, products CO2, liquid water and N2 [J/kg]. */
    const formation = (higher: number, C: number, H: number): number =>
      higher +
      (C / 0.012011) * kelvin(gasRecords.CO2, T0) +
      (H / 0.001008 / 2) * kelvin(condensedRecords.liquidWater, T0)
    const tarMass = 0.012011 + 1.2 * 0.001008 + 0.2 * 0.015999
    const tarShares = { C: 0.012011 / tarMass, H: (1.2 * 0.001008) / tarMass, O: (0.2 * 0.015999) / tarMass }
    const tarEnthalpy = (T: number): number =>
      formation(higherHeatingValue({ ...tarShares, N: 0, S: 0, ash: 0 }), tarShares.C, tarShares.H) +
      400 * (T - T0) +
      (2.9 / 2) * (T ** 2 - T0 ** 2) -
      (0.9e-3 / 3) * (T ** 3 - T0 ** 3)
    const charEnthalpy = (T: number): number =>
      formation(higherHeatingValue({ C: 0.915, H: 0.025, O: 0.057, N: 0.003, S: 0, ash: 0 }), 0.915, 0.025) +
      (kelvin(condensedRecords.graphite, T) - kelvin(condensedRecords.graphite, T0)) / 0.012011
    const airEnthalpy = (T: number): number =>
      (0.78084 * kelvin(gasRecords.N2, T) +
        0.209476 * kelvin(gasRecords.O2, T) +
        0.00934 * kelvin(gasRecords.Ar, T) +
        0.000314 * kelvin(gasRecords.CO2, T)) /
      AIR_MOLAR_MASS

    onFronts(24, ({ fuel, moisture, ambient, preheated, airPerFuel }, front) => {
      const { moles, temperature } = front
      const { C, H, ash } = fuel.analysis
      const water = moisture / (1 - moisture)
      const brought =
        formation(fuel.higherHeatingValue, C, H) +
        1300 * (ambient - T0) +
        (water / 0.018015) * kelvin(condensedRecords.liquidWater, ambient) +
        airPerFuel * airEnthalpy(ambient + preheated)
      const taken =
        moles.CO * kelvin(gasRecords.CO, temperature) +
        moles.CO2 * kelvin(gasRecords.CO2, temperature) +
        moles.H2 * kelvin(gasRecords.H2, temperature) +
        moles.H2O * kelvin(gasRecords.H2O, temperature) +
        moles.CH4 * kelvin(gasRecords.CH4, temperature) +
        moles.N2 * kelvin(gasRecords.N2, temperature) +
        moles.Ar * kelvin(gasRecords.Ar, temperature) +
        moles.tar * tarMass * tarEnthalpy(temperature) +
        (front.char - ash) * charEnthalpy(temperature) +
        ash * 900 * (temperature - T0)
      expect(Math.abs(brought - taken - front.loss)).toBeLessThan(1e-8 * fuel.higherHeatingValue)
    })
  })
})

describe('the closure', () => {
  test('the gas is in shift equilibrium at the front’s own temperature', () => {
    onFronts(25, (_, { moles, temperature }) => {
      fc.pre(moles.CO > 1e-3 && moles.H2 > 1e-3 && moles.H2O > 1e-3)
      const quotient = (moles.CO2 * moles.H2) / (moles.CO * moles.H2O)
      expect(relativeMiss(quotient, shiftConstant(temperature))).toBeLessThan(1e-6)
    })
  })

  test('air that burns the gas follows from its moles', () => {
    onFronts(26, (_, front) => {
      const air = (oxygenNeed(front) / AIR_OXYGEN_SHARE) * AIR_MOLAR_MASS
      expect(relativeMiss(front.stoichiometricAir * front.gas, air)).toBeLessThan(1e-9)
    })
  })

  test('its heat is that of CO, H2 and CH4 of JANAF, and of its tar', () => {
    const formation = (species: 'CO' | 'H2O' | 'CO2' | 'CH4'): number =>
      1000 * (janaf.tables[species].rows.find((row) => row[0] === 298.15)?.[5] as number)
    const heats = {
      CO: formation('CO') - formation('CO2'),
      H2: -formation('H2O'),
      CH4: formation('CH4') - formation('CO2') - 2 * formation('H2O'),
    }
    onFronts(27, (_, front) => {
      const { moles } = front
      const tarMass = moles.tar * (0.012011 + 1.2 * 0.001008 + 0.2 * 0.015999)
      const tarShare = (part: number): number => (moles.tar * part) / tarMass
      const tarHigher = higherHeatingValue({
        C: tarShare(0.012011),
        H: tarShare(1.2 * 0.001008),
        O: tarShare(0.2 * 0.015999),
        N: 0,
        S: 0,
        ash: 0,
      })
      // 0.6 mol of water a mole of tar leave as vapour, 44.0 kJ/mol (JANAF: 285.83 − 241.83).
      const tarHeat = tarMass * tarHigher - moles.tar * 0.6 * 44_004
      const heat = moles.CO * heats.CO + moles.H2 * heats.H2 + moles.CH4 * heats.CH4 + tarHeat
      expect(relativeMiss(front.gasHeat * front.gas, heat)).toBeLessThan(1e-3)
    })
  })

  test('wetter fuel makes a colder front', () => {
    const temperatures = [0, 0.08, 0.15, 0.22, 0.3].map((moisture) => closed(1.5, moisture).temperature)
    for (const [i, temperature] of temperatures.entries())
      if (i > 0) expect(temperature).toBeLessThan(temperatures[i - 1] as number)
  })

  test('more air makes a hotter front and poorer gas', () => {
    const fronts = [1.2, 1.5, 1.8, 2.1].map((air) => closed(air))
    for (const [i, front] of fronts.entries()) {
      const before = fronts[i - 1]
      if (before === undefined) continue
      expect(front.temperature).toBeGreaterThan(before.temperature)
      expect(front.gasHeat).toBeLessThan(before.gasHeat)
    }
  })

  test('warmer air makes a hotter front', () => {
    const model = frontModel(pellets, 0.08, 293.15, medianCoefficients)
    const at = (T: number): number => {
      const outcome = model.close(1.5, T)
      return outcome.ok ? outcome.front.temperature : Number.NaN
    }
    expect(at(500)).toBeGreaterThan(at(293.15))
  })
})

describe('fronts that cannot be', () => {
  const model = frontModel(pellets, 0.08, 293.15, medianCoefficients)

  test.each([0, 0.01, 0.1])('%d kg of air is too little', (airPerFuel) => {
    expect(model.close(airPerFuel, 293.15)).toEqual({
      ok: false,
      reason: 'too wet or too little air to glow',
    })
  })

  test.each([6, 20])('%d kg of air is more than the fuel can use', (airPerFuel) => {
    expect(model.close(airPerFuel, 293.15)).toEqual({ ok: false, reason: 'more air than the fuel can use' })
  })

  test('fuel that is mostly water is too wet', () => {
    expect(frontModel(pellets, 0.75, 293.15, medianCoefficients).close(1.5, 293.15)).toEqual({
      ok: false,
      reason: 'too wet or too little air to glow',
    })
  })
})
