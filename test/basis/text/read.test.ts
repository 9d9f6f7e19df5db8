import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Outcome } from '#basis/problem.ts'
import { type QuantityKey, quantities, quantity } from '#basis/quantities.ts'
import { readCount, readQuantity } from '#basis/text/read.ts'
import { toSi, units } from '#basis/unitTable.ts'
import reference from '#reference/unitFactors.json' with { type: 'json' }

const code = (outcome: Outcome<unknown>): string =>
  outcome.ok ? 'read' : (outcome.problems[0]?.code ?? 'none')
const keys = Object.keys(quantities) as QuantityKey[]

describe('quantities with their units', () => {
  test.each([
    ['340 g', 'mass', 0.34],
    ['1.2 kg', 'mass', 1.2],
    ['12 oz', 'mass', 0.3401942775],
    ['1 1/2 lbs', 'mass', 0.680388555],
    ['20 °C', 'ambientTemperature', 293.15],
    ['20°C', 'ambientTemperature', 293.15],
    ['20 C', 'ambientTemperature', 293.15],
    ['−10 ℃', 'ambientTemperature', 263.15],
    ['68 °F', 'ambientTemperature', 293.15],
    ['68F', 'ambientTemperature', 293.15],
    ['293.15 K', 'ambientTemperature', 293.15],
    ['18 °F', 'temperatureRise', 10],
    ['10 K', 'temperatureRise', 10],
    ['45 s', 'burnTime', 45],
    ['80 min', 'burnTime', 4800],
    ['1.5 h', 'burnTime', 5400],
    ['1 h 20 min', 'burnTime', 4800],
    ['1h20min', 'burnTime', 4800],
    ['12 min 30 s', 'burnTime', 750],
    ['1 hour 0 minutes 5.5 seconds', 'burnTime', 3605.5],
    ['500 mL', 'waterVolume', 5e-4],
    ['0.5 L', 'waterVolume', 5e-4],
    ['500 cm³', 'waterVolume', 5e-4],
    ['16 US fl oz', 'waterVolume', 4.73176473e-4],
    ['1 US pint', 'waterVolume', 4.73176473e-4],
    ['1 US quart', 'waterVolume', 9.46352946e-4],
    ['1 US gal', 'waterVolume', 3.785411784e-3],
    ['15°', 'bearing', 15],
    ['-15 deg', 'bearing', -15],
    ['7.5 degrees', 'vaneAngle', 7.5],
    ['8 %', 'fuelMoisture', 0.08],
    ['12,5%', 'fuelMoisture', 0.125],
    ['1013 hPa', 'airPressure', 101_300],
    ['1013 mbar', 'airPressure', 101_300],
    ['29.92 inHg', 'airPressure', 101_320.748119],
    ['10 mph', 'windSpeed', 4.4704],
    ['18 km/h', 'windSpeed', 5],
    ['650 kg/m3', 'bulkDensity', 650],
    ['0.65 g/cm³', 'bulkDensity', 650],
    ['4000 ft', 'altitude', 1219.2],
    ['12 g/min', 'fuelRate', 2e-4],
    ['3 kW', 'firepower', 3000],
    ['17 MJ/kg', 'heatingValue', 17e6],
    ['1.3', 'airRatio', 1.3],
    [1.3, 'airRatio', 1.3],
    ['24', 'holeCount', 24],
    ['5/8 in (16 mm)', 'holeDiameter', 0.015875],
  ] as const)('%s as %s', (text, key, expected) => {
    const outcome = readQuantity(text, 'x', key)
    expect(outcome).toMatchObject({ ok: true })
    if (outcome.ok) expect(Math.abs(outcome.value - expected)).toBeLessThanOrEqual(1e-9 * Math.abs(expected))
  })

  test.each(reference.temperatures.rows as [string, number][])('%s = %d K', (text, kelvin) => {
    const outcome = readQuantity(
      text,
      'x',
      kelvin < 200 || kelvin > 330 ? 'gasTemperature' : 'ambientTemperature',
    )
    if (outcome.ok) expect(outcome.value).toBeCloseTo(kelvin, 10)
    else expect(code(outcome)).toBe('temperature.range')
  })
})

describe('refused', () => {
  test.each([
    ['340', 'mass', 'mass.no-unit'],
    ['340 mm', 'mass', 'mass.wrong-kind'],
    ['1 lb 4 oz', 'mass', 'mass.two-units'],
    ['12 oz (340 g)', 'mass', 'mass.trailing'],
    ['20', 'ambientTemperature', 'temperature.no-unit'],
    [20, 'ambientTemperature', 'temperature.no-unit'],
    ['20 °', 'ambientTemperature', 'temperature.wrong-kind'],
    ['20 c', 'ambientTemperature', 'temperature.unknown-unit'],
    ['-300 °C', 'gasTemperature', 'temperature.range'],
    ['12:30', 'burnTime', 'time.clock'],
    ['80 m', 'burnTime', 'time.wrong-kind'],
    ['1 h 90 min', 'burnTime', 'time.carry'],
    ['1 h 20', 'burnTime', 'time.two-units'],
    ['20 min 1 h', 'burnTime', 'time.two-units'],
    ['13 h 0 min', 'burnTime', 'time.range'],
    ['12 fl oz', 'waterVolume', 'volume.two-meanings'],
    ['1 pint', 'waterVolume', 'volume.two-meanings'],
    ['2 cups', 'waterVolume', 'volume.unknown-unit'],
    ['1 ML', 'waterVolume', 'volume.unknown-unit'],
    ['15', 'bearing', 'angle.no-unit'],
    [15, 'bearing', 'angle.no-unit'],
    ['0.08', 'fuelMoisture', 'share.no-unit'],
    [0.08, 'fuelMoisture', 'share.no-unit'],
    ['61 %', 'fuelMoisture', 'share.range'],
    ['1013', 'airPressure', 'pressure.no-unit'],
    ['1.3 x', 'airRatio', 'ratio.trailing'],
    [Number.NaN, 'airRatio', 'ratio.not-a-number'],
    ['lots', 'airRatio', 'ratio.not-a-number'],
    [undefined, 'airRatio', 'ratio.empty'],
  ] as const)('%j as %s: %s', (text, key, expected) => {
    const outcome = readQuantity(text, 'burn.setting', key)
    expect(code(outcome)).toBe(expected)
    if (!outcome.ok) expect(outcome.problems[0]).toMatchObject({ field: 'burn.setting' })
  })
})

describe('counts', () => {
  test.each([
    [24, 24],
    ['24', 24],
    [' 24 ', 24],
    [1, 1],
    [400, 400],
  ])('%j', (given, expected) => {
    expect(readCount(given, 'x', 'holeCount')).toEqual({ ok: true, value: expected })
  })

  test.each([
    [0, 'count.range'],
    [-3, 'count.range'],
    [1e9, 'count.range'],
    [24.5, 'count.not-whole'],
    ['24.5', 'count.not-whole'],
    ['24 holes', 'count.trailing'],
    ['twelve', 'count.not-a-number'],
    ['', 'count.empty'],
    [null, 'count.empty'],
    [Number.NaN, 'count.not-a-number'],
    [Number.POSITIVE_INFINITY, 'count.not-a-number'],
    [[24], 'count.not-a-number'],
    ['1,200', 'count.ambiguous-comma'],
  ])('%j: %s', (given, expected) => {
    expect(code(readCount(given, 'x', 'holeCount'))).toBe(expected)
  })
})

test('every spelling of a unit reads as its symbol does', () => {
  for (const key of keys) {
    const row = quantity(key)
    const middle = (row.min + row.max) / 2
    for (const unit of units[row.kind])
      for (const spelling of unit.spellings) {
        const number = (middle * unit.over) / unit.times - unit.shift
        const digits = Math.abs(number) < 1e9 ? number.toFixed(6) : number.toFixed(0)
        const outcome = readQuantity(`${digits} ${spelling}`, 'x', key)
        if (outcome.ok) expect(outcome.value).toBe(toSi(Number(digits), unit))
        else expect(code(outcome)).toBe(`${row.kind}.range`)
      }
  }
})

test('whatever is typed gives a value in range or one problem', () => {
  const fragment = fc.constantFrom(
    ...[
      '1',
      '20',
      '0.5',
      '/',
      ' ',
      '-',
      ',',
      '½',
      'g',
      'kg',
      'h',
      'min',
      ':',
      '%',
      '°',
      '°C',
      'US',
      'fl oz',
      '(',
      'e9',
    ],
  )
  fc.assert(
    fc.property(
      fc.oneof(
        fc.array(fragment, { maxLength: 7 }).map((parts) => parts.join('')),
        fc.anything(),
      ),
      fc.constantFrom(...keys),
      (text, key) => {
        const outcome = readQuantity(text, 'x', key)
        const row = quantity(key)
        if (outcome.ok) {
          expect(outcome.value).toBeGreaterThanOrEqual(row.min - 1e-9 * Math.abs(row.min))
          expect(outcome.value).toBeLessThanOrEqual(row.max + 1e-9 * Math.abs(row.max))
        } else expect(outcome.problems[0]?.code).toMatch(new RegExp(`^${row.kind}\\.[a-z-]+$`))
      },
    ),
    { numRuns: 20_000 },
  )
})
