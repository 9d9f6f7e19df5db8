import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { QuantityKey } from '#basis/quantities.ts'
import { bandText, figureText } from '#craft/told/band.ts'

describe('a band is written no finer than it is wide', () => {
  test.each<[number, number, QuantityKey, string | undefined, string]>([
    [1170.2, 2448.9, 'firepower', undefined, '1.2 to 2.4 kW'],
    [1170.2, 2448.9, 'firepower', 'Btu/h', '4000 to 8400 Btu/h'],
    [1400, 2000, 'firepower', undefined, '1.40 to 2.00 kW'],
    [523.15, 580.65, 'wallTemperature', undefined, '250 to 308 °C'],
    [0.0041, 0.0049, 'fuelRate', undefined, '246 to 294 g/min'],
    [0.13, 0.205, 'efficiency', undefined, '13.0 to 20.5 %'],
    [40, 95, 'timeAfterLighting', undefined, '0.67 to 1.58 min'],
    [3400, 5300, 'burnTime', undefined, '57 min to 1 h 28 min'],
    [1.3, 2.81, 'airRatio', undefined, '1.3 to 2.8'],
    [0, 2.2, 'windSpeed', undefined, '0.0 to 2.2 m/s'],
    [5, 5, 'windSpeed', undefined, '5 m/s'],
    [0.1240693, 0.1240694, 'mass', undefined, '124 g'],
    [1481, 1493, 'heatFlow', undefined, '1481 to 1493 W'],
  ])('%d to %d of %s in %s', (low, high, key, unit, text) => {
    expect(bandText({ low, high }, key, unit)).toBe(text)
  })

  test('its ends lie where they were, to a tenth of its width or to four figures', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.double({ min: 1e-3, max: 1, noNaN: true }),
        (low, part) => {
          const high = low * (1 + part)
          const [from = Number.NaN, to = Number.NaN] = bandText({ low, high }, 'heatFlow')
            .replace(' W', '')
            .split(' to ')
            .map(Number)
          const off = Math.max(0.051 * (high - low), 0.0006 * high)
          expect(Math.abs(from - low)).toBeLessThanOrEqual(off)
          expect(Math.abs(to - high)).toBeLessThanOrEqual(off)
        },
      ),
    )
  })
})

describe('a figure has three figures', () => {
  test.each<[number, QuantityKey, string | undefined, string]>([
    [1814.3, 'firepower', undefined, '1.81 kW'],
    [1814.3, 'firepower', 'Btu/h', '6190 Btu/h'],
    [0.735, 'mass', undefined, '735 g'],
    [4410, 'burnTime', undefined, '1 h 14 min'],
    [600, 'burnTime', undefined, '10 min'],
    [0.1764, 'efficiency', undefined, '17.6 %'],
    [0, 'windSpeed', undefined, '0 m/s'],
    [12, 'bearing', undefined, '12°'],
  ])('%d of %s in %s', (value, key, unit, text) => {
    expect(figureText(value, key, unit)).toBe(text)
  })
})
