import places from '#reference/boilingPoints.json' with { type: 'json' }
import moist from '#reference/moistAir.json' with { type: 'json' }
import wind from '#reference/windCylinder.json' with { type: 'json' }
import { standardPressure } from '#science/atmosphere.ts'
import { cylinderPressureCoefficient } from '#science/weather/cylinderPressure.ts'
import { moistAirDensity } from '#science/weather/moistAir.ts'
import type { CheckSet } from '../row.ts'

const atmosphere: CheckSet = {
  title: 'pressure of the standard atmosphere',
  source: `ISO 2533, US Standard Atmosphere 1976 [bib:ussa1976], ${places.source}`,
  standing: 'reference data',
  note: '0.01 %.',
  rows: () =>
    places.rows.map(({ H_geopotential_m, p_Pa }) => ({
      check: `air pressure at ${H_geopotential_m} m`,
      published: p_Pa,
      ours: standardPressure(H_geopotential_m),
      unit: 'Pa',
      allowed: { share: 1e-4 },
    })),
}

const moistAir: CheckSet = {
  title: 'density of moist air',
  source: `${moist.source} [bib:picard2008]`,
  standing: 'reference data',
  note: '0.1 %: ours takes air and vapour for ideal gases.',
  rows: () =>
    (moist.rows as [number, number, number, number][]).map(([celsius, pressure, humidity, density]) => ({
      check: `moist air at ${celsius} °C, ${pressure} Pa, humidity ${humidity}`,
      published: density,
      ours: moistAirDensity({ temperature: celsius + 273.15, pressure, humidity }),
      unit: 'kg/m³',
      allowed: { share: 1e-3 },
    })),
}

const windOnCan: CheckSet = {
  title: 'wind pressure round an endless cylinder at subcritical Reynolds number',
  source: wind.source,
  standing: 'from memory',
  note: 'The model’s curve goes through this table; ±0.15 is what the memory is worth.',
  rows: () =>
    (wind['subcritical_Re_1e5_from_memory_pm0.15'] as [number, number][]).map(([angle, coefficient]) => ({
      check: `wind pressure coefficient at ${angle}°`,
      published: coefficient,
      ours: cylinderPressureCoefficient(angle, 1),
      unit: '',
      allowed: { by: 0.15 },
    })),
}

export const weatherSets: readonly CheckSet[] = [atmosphere, moistAir, windOnCan]
