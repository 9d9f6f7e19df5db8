import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import places from '#reference/boilingPoints.json' with { type: 'json' }
import { boilingPointAt } from '#science/pot/boilingPoint.ts'
import { saturationPressure, saturationTemperature } from '#science/pot/saturation.ts'
import { waterEnthalpy, waterHeat } from '#science/pot/water.ts'

const relative = (value: number, expected: number): number => Math.abs(value / expected - 1)

describe('IAPWS-IF97 region 4', () => {
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
  test('one degree less every 300 m or so: the trade’s rule is 0.1 K off', () => {
    for (const row of places.rows)
      expect(
        Math.abs(boilingPointAt(row.H_geopotential_m) - 273.15 - row['Tboil_rule_100-h/300_C']),
      ).toBeLessThan(0.13)
  })
})

describe('water in the pot', () => {
  test('enthalpy is the integral of heat capacity', () => {
    fc.assert(
      fc.property(fc.double({ min: 274, max: 373, noNaN: true }), (temperature) => {
        const slope = (waterEnthalpy(temperature + 0.1) - waterEnthalpy(temperature - 0.1)) / 0.2
        expect(relative(slope, waterHeat(temperature))).toBeLessThan(1e-6)
      }),
    )
  })
})
