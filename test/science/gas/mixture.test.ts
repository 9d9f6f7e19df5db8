import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { DRY_AIR_MOLAR_MASS, MOLAR_GAS_CONSTANT } from '#basis/constants.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { frontModel } from '#science/fire/front.ts'
import { fuelTable } from '#science/fuel/table.ts'
import { AIR, AIR_MOLES, blendOf, specificEnthalpy, specificHeat } from '#science/gas/blend.ts'
import {
  chemicalHeat,
  type GasBasis,
  mixtureEnthalpy,
  mixtureGasConstant,
  mixtureHeat,
  mixtureTemperature,
  zOfStoichiometric,
} from '#science/gas/mixture.ts'
import { gasRecords } from '#science/gas/speciesData.ts'
import { GAS_SPECIES, MOLAR_MASS, molarEnthalpy, molarHeatCapacity } from '#science/gas/thermo.ts'
import { relativeMiss } from '../relativeMiss.ts'

const temperature = fc.integer({ min: 250, max: 2500 })
const share = fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000)

describe('a blend of gases', () => {
  const composition = fc.array(fc.integer({ min: 0, max: 100 }), {
    minLength: GAS_SPECIES.length,
    maxLength: GAS_SPECIES.length,
  })

  test('has the heat of its species added up one by one', () => {
    fc.assert(
      fc.property(composition, temperature, (amounts, T) => {
        const moles = Object.fromEntries(GAS_SPECIES.map((name, i) => [name, amounts[i] ?? 0]))
        const sum = (of: (name: (typeof GAS_SPECIES)[number]) => number): number =>
          GAS_SPECIES.reduce((total, name) => total + (moles[name] ?? 0) * of(name), 0)
        const size = sum((name) => Math.abs(molarEnthalpy(gasRecords[name], T))) + 1
        const blend = blendOf(moles)
        expect(
          Math.abs(specificEnthalpy(blend, T) - sum((name) => molarEnthalpy(gasRecords[name], T))),
        ).toBeLessThan(1e-11 * size)
        const heat = sum((name) => molarHeatCapacity(gasRecords[name], T))
        expect(Math.abs(specificHeat(blend, T) - heat)).toBeLessThan(1e-11 * heat + 1e-12)
        expect(blend.gasConstant).toBeCloseTo(
          sum(() => MOLAR_GAS_CONSTANT),
          6,
        )
      }),
      { seed: 41, numRuns: 200 },
    )
  })

  test('its heat capacity is the slope of its enthalpy', () => {
    for (const T of [250, 500, 900, 1100, 2000]) {
      const slope = (specificEnthalpy(AIR, T + 0.5) - specificEnthalpy(AIR, T - 0.5)) / 1
      expect(relativeMiss(specificHeat(AIR, T), slope)).toBeLessThan(1e-6)
    }
  })

  test('air is a kilogram, with the gas constant of dry air', () => {
    const mass = (['N2', 'O2', 'Ar', 'CO2'] as const).reduce(
      (sum, name) => sum + AIR_MOLES[name] * MOLAR_MASS[name],
      0,
    )
    expect(mass).toBeCloseTo(1, 12)
    // CIPM-2007 counts 400 ppm of CO2, ISO 2533 314: 4e-5.
    expect(relativeMiss(AIR.gasConstant, MOLAR_GAS_CONSTANT / DRY_AIR_MOLAR_MASS)).toBeLessThan(1e-4)
  })

  // cp of air at 300 K is 1.005 kJ/(kg K), common handbook value.
  test('air holds about 1.005 kJ a kilogram and kelvin at 300 K', () => {
    expect(relativeMiss(specificHeat(AIR, 300), 1005)).toBeLessThan(0.002)
  })
})

describe('wood gas on its way to being burnt', () => {
  const fuel = fuelTable.get('wood-chips')
  if (fuel === undefined) throw new Error('no chips in the fuel table')
  const closed = frontModel(fuel, fuel.moisture, 293.15, medianCoefficients).close(1.5, 293.15)
  if (!closed.ok) throw new Error(closed.reason)
  const { front } = closed
  const basis: GasBasis = front

  test('the temperature of an enthalpy has that enthalpy, from any guess', () => {
    fc.assert(
      fc.property(share, temperature, temperature, (z, T, guess) => {
        const found = mixtureTemperature(basis, z, mixtureEnthalpy(basis, z, T), guess)
        expect(Math.abs(found - T)).toBeLessThan(1e-6)
      }),
      { seed: 42, numRuns: 300 },
    )
  })

  test('enthalpy rises with temperature', () => {
    fc.assert(
      fc.property(share, temperature, (z, T) => {
        expect(mixtureHeat(basis, z, T)).toBeGreaterThan(0)
      }),
      { seed: 43, numRuns: 200 },
    )
  })

  test('properties do not jump where the last of the air is used', () => {
    const z = zOfStoichiometric(basis)
    for (const property of [
      (at: number) => mixtureGasConstant(basis, at),
      (at: number) => mixtureEnthalpy(basis, at, 1200) / 1e6,
      (at: number) => chemicalHeat(basis, at) / 1e6,
    ])
      expect(Math.abs(property(z * (1 + 1e-9)) - property(z * (1 - 1e-9)))).toBeLessThan(1e-6)
  })

  test('raw gas binds all its heat, air and burnt gas none', () => {
    expect(relativeMiss(chemicalHeat(basis, 1), front.gasHeat)).toBeLessThan(1e-12)
    expect(chemicalHeat(basis, 0)).toBe(0)
    expect(chemicalHeat(basis, 0.999 * zOfStoichiometric(basis))).toBe(0)
  })

  test('mixing gas and air at 25 °C and burning them frees just the heat of combustion', () => {
    const z = zOfStoichiometric(basis)
    const before = z * specificEnthalpy(front.unburnt, 298.15) + (1 - z) * specificEnthalpy(AIR, 298.15)
    expect(relativeMiss(before - mixtureEnthalpy(basis, z, 298.15), z * front.gasHeat)).toBeLessThan(1e-9)
  })

  test('an adiabatic flame of it is hottest with just enough air', () => {
    const flame = (z: number): number =>
      mixtureTemperature(
        basis,
        z,
        z * specificEnthalpy(front.unburnt, front.temperature) + (1 - z) * specificEnthalpy(AIR, 293.15),
        1500,
      )
    const best = zOfStoichiometric(basis)
    for (const factor of [0.5, 0.8, 1.2, 1.6]) expect(flame(factor * best)).toBeLessThan(flame(best))
    // Wood gas in air without losses: 1600 to 2400 K.
    expect(flame(best)).toBeGreaterThan(1600)
    expect(flame(best)).toBeLessThan(2400)
  })
})
