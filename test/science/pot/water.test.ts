import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import places from '#reference/boilingPoints.json' with { type: 'json' }
import saturation from '#reference/saturation.json' with { type: 'json' }
import properties from '#reference/waterProperties.json' with { type: 'json' }
import { standardPressure } from '#science/atmosphere.ts'
import { boilingPointAt } from '#science/pot/boilingPoint.ts'
import { saturationPressure, saturationTemperature } from '#science/pot/saturation.ts'
import { evaporationHeat, waterDensity, waterEnthalpy, waterHeat } from '#science/pot/water.ts'

const relative = (value: number, expected: number): number => Math.abs(value / expected - 1)

describe('IAPWS-IF97 region 4', () => {
  // The tables give nine digits.
  test.each(saturation['table 35'].rows)(`$T_K K: ${saturation['table 35'].source}`, ({ T_K, p_MPa }) => {
    expect(relative(saturationPressure(T_K), p_MPa * 1e6)).toBeLessThan(2e-9)
  })

  test.each(saturation['table 36'].rows)(`$p_MPa MPa: ${saturation['table 36'].source}`, ({ p_MPa, T_K }) => {
    expect(relative(saturationTemperature(p_MPa * 1e6), T_K)).toBeLessThan(2e-9)
  })

  test.each(saturation.derived.rows)(`$T_K K, $p_Pa Pa: ${saturation.derived.source}`, ({ T_K, p_Pa }) => {
    expect(relative(saturationTemperature(p_Pa), T_K)).toBeLessThan(1e-6)
  })

  test('pressure and temperature are each other’s inverse', () => {
    fc.assert(
      fc.property(fc.double({ min: 273.16, max: 640, noNaN: true }), (temperature) => {
        expect(relative(saturationTemperature(saturationPressure(temperature)), temperature)).toBeLessThan(
          1e-10,
        )
        expect(saturationPressure(temperature + 0.01)).toBeGreaterThan(saturationPressure(temperature))
      }),
    )
  })
})

describe(`water boils at a height: ${places.source}`, () => {
  test.each(places.rows)('$H_geopotential_m m', (row) => {
    expect(Math.abs(boilingPointAt(row.H_geopotential_m) - 273.15 - row.Tboil_IF97_C)).toBeLessThan(0.02)
    expect(relative(standardPressure(row.H_geopotential_m), row.p_Pa)).toBeLessThan(1e-4)
  })

  test('one degree less every 300 m or so: the trade’s rule is 0.1 K off', () => {
    for (const row of places.rows)
      expect(Math.abs(row.Tboil_IF97_C - row['Tboil_rule_100-h/300_C'])).toBeLessThan(0.11)
  })
})

describe(`water in the pot: ${properties.source}`, () => {
  test.each(properties.rows as [number, number, number, number, number, number][])(
    '%d K',
    (temperature, density, heat, enthalpy, evaporation, pressure) => {
      expect(relative(waterDensity(temperature), density)).toBeLessThan(1.5e-5)
      expect(relative(waterHeat(temperature), heat)).toBeLessThan(1.5e-4)
      expect(relative(evaporationHeat(temperature), evaporation)).toBeLessThan(1e-5)
      expect(relative(saturationPressure(temperature), pressure)).toBeLessThan(1e-5)
      // From 0.01 °C, as steam tables count; 1 atm adds 100 J/kg there.
      expect(Math.abs(waterEnthalpy(temperature) - enthalpy)).toBeLessThan(150)
    },
  )

  test(`a litre from 20 °C to the boil: ${saturation.water.source}`, () => {
    const heat = waterEnthalpy(373.12) - waterEnthalpy(293.15)
    expect(relative(heat, saturation.water.h_liq_20C_to_99_97C_kJ_kg * 1000)).toBeLessThan(2e-4)
  })

  test('enthalpy is the integral of heat capacity', () => {
    fc.assert(
      fc.property(fc.double({ min: 274, max: 373, noNaN: true }), (temperature) => {
        const slope = (waterEnthalpy(temperature + 0.1) - waterEnthalpy(temperature - 0.1)) / 0.2
        expect(relative(slope, waterHeat(temperature))).toBeLessThan(1e-6)
      }),
    )
  })
})
