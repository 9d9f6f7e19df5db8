import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  humidityRatio,
  moistAirDensity,
  saturatedVapourPressure,
  vapourPressure,
} from '#science/weather/moistAir.ts'

describe('humidity', () => {
  const air = {
    temperature: fc.double({ min: 243, max: 320, noNaN: true }),
    pressure: fc.double({ min: 5e4, max: 1.05e5, noNaN: true }),
    humidity: fc.double({ min: 0, max: 0.99, noNaN: true }),
  }

  test('damper air is lighter, dry air holds nothing', () => {
    fc.assert(
      fc.property(fc.record(air), (a) => {
        const damper = { ...a, humidity: a.humidity + 0.01 }
        expect(moistAirDensity(damper)).toBeLessThan(moistAirDensity(a))
        expect(humidityRatio(damper)).toBeGreaterThan(humidityRatio(a))
        expect(vapourPressure({ ...a, humidity: 0 })).toBe(0)
        expect(humidityRatio({ ...a, humidity: 0 })).toBe(0)
      }),
    )
  })

  test('the two laws of saturation meet at freezing within 0.2 %', () => {
    const below = saturatedVapourPressure(273.15 - 1e-9)
    expect(Math.abs(below / saturatedVapourPressure(273.15) - 1)).toBeLessThan(0.002)
  })
})
