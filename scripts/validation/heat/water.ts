import { STANDARD_ATMOSPHERE } from '#basis/constants.ts'
import places from '#reference/boilingPoints.json' with { type: 'json' }
import tank from '#reference/openTank.json' with { type: 'json' }
import saturation from '#reference/saturation.json' with { type: 'json' }
import properties from '#reference/waterProperties.json' with { type: 'json' }
import { boilingPointAt } from '#science/pot/boilingPoint.ts'
import { medianPotCoefficients } from '#science/pot/coefficients.ts'
import { evaporationRate } from '#science/pot/evaporation.ts'
import type { Pot } from '#science/pot/pot.ts'
import { potTop } from '#science/pot/potTop.ts'
import { saturationPressure, saturationTemperature } from '#science/pot/saturation.ts'
import { evaporationHeat, waterDensity, waterEnthalpy, waterHeat } from '#science/pot/water.ts'
import type { MoistAir } from '#science/weather/moistAir.ts'
import type { CheckSet, PointRow } from '../row.ts'

const boiling: CheckSet = {
  title: 'where water boils',
  source: `${saturation['table 35'].source} and table 36; ${saturation.derived.source} [bib:iapws2012]`,
  standing: 'reference data',
  note: '2e-9, nine digits; 1e-6 for what was worked out elsewhere.',
  rows: (): readonly PointRow[] => [
    ...saturation['table 35'].rows.map(({ T_K, p_MPa }) => ({
      check: `saturation pressure at ${T_K} K`,
      published: p_MPa,
      ours: saturationPressure(T_K) / 1e6,
      unit: 'MPa',
      allowed: { share: 2e-9 },
    })),
    ...saturation['table 36'].rows.map(({ p_MPa, T_K }) => ({
      check: `saturation temperature at ${p_MPa} MPa`,
      published: T_K,
      ours: saturationTemperature(p_MPa * 1e6),
      unit: 'K',
      allowed: { share: 2e-9 },
    })),
    ...saturation.derived.rows.map(({ T_K, p_Pa }) => ({
      check: `boiling point at ${p_Pa} Pa`,
      published: T_K,
      ours: saturationTemperature(p_Pa),
      unit: 'K',
      allowed: { share: 1e-6 },
    })),
  ],
}

const altitude: CheckSet = {
  title: 'boiling point by altitude',
  source: places.source,
  standing: 'proof of code',
  note: '0.02 °C.',
  rows: () =>
    places.rows.map(({ H_geopotential_m, Tboil_IF97_C }) => ({
      check: `water boils at ${H_geopotential_m} m`,
      published: Tboil_IF97_C,
      ours: boilingPointAt(H_geopotential_m) - 273.15,
      unit: '°C',
      allowed: { by: 0.02 },
    })),
}

/** In the order of the columns of the reference. */
const PROPERTIES: readonly (readonly [
  name: string,
  unit: string,
  ours: (T: number) => number,
  allowed: PointRow['allowed'],
])[] = [
  ['density', 'kg/m³', waterDensity, { share: 1.5e-5 }],
  ['heat capacity', 'J/(kg K)', waterHeat, { share: 1.5e-4 }],
  ['enthalpy', 'J/kg', waterEnthalpy, { by: 150 }],
  ['heat of evaporation', 'J/kg', evaporationHeat, { share: 1e-5 }],
  ['vapour pressure', 'Pa', saturationPressure, { share: 1e-5 }],
]

const water: CheckSet = {
  title: 'water in the pot',
  source: properties.source,
  standing: 'reference data',
  note: 'Density 1.5e-5, heat capacity 1.5e-4, heat of evaporation 1e-5, enthalpy 150 J/kg: what the polynomials leave of it.',
  rows: (): readonly PointRow[] => [
    ...(properties.rows as [number, number, number, number, number, number][]).flatMap(([T, ...published]) =>
      PROPERTIES.map(([name, unit, ours, allowed], i) => ({
        check: `water at ${T} K: ${name}`,
        published: published[i] as number,
        ours: ours(T),
        unit,
        allowed,
      })),
    ),
    {
      check: 'a litre from 20 °C to the boil',
      published: saturation.water.h_liq_20C_to_99_97C_kJ_kg,
      ours: (waterEnthalpy(373.12) - waterEnthalpy(293.15)) / 1000,
      unit: 'kJ/kg',
      allowed: { share: 2e-4 },
    },
  ],
}

const BTU_PER_SQUARE_FOOT_AND_HOUR = 3.15459
const kelvin = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9 + 273.15
/** The table names no humidity. */
const room: MoistAir = { temperature: kelvin(60), pressure: STANDARD_ATMOSPHERE, humidity: 0.5 }
const pan: Pot = { diameter: 0.5, height: 0.2, lid: false, wall: 0.001, metal: 'aluminium' }

const openTank: CheckSet = {
  title: 'heat lost by open hot water in still air',
  source: tank.source,
  standing: 'reference data',
  note: 'A quarter: its own word for the table is rough. Humidity is not given, half is assumed. Evaporation by Shah’s formula [bib:shah2002].',
  rows: () =>
    (tank.rows as [number, number, number][]).flatMap(([fahrenheit, evaporation, dry]): PointRow[] => {
      const T = kelvin(fahrenheit)
      const top = potTop(pan, T, room, 0, medianPotCoefficients)
      const area = (Math.PI / 4) * pan.diameter ** 2
      return [
        {
          check: `open water at ${fahrenheit} °F: evaporation`,
          published: evaporation * BTU_PER_SQUARE_FOOT_AND_HOUR,
          ours: evaporationRate(T, room) * evaporationHeat(T),
          unit: 'W/m²',
          allowed: { share: 0.25 },
        },
        {
          check: `open water at ${fahrenheit} °F: radiation and convection`,
          published: dry * BTU_PER_SQUARE_FOOT_AND_HOUR,
          ours: (top.convection + top.radiation) / area,
          unit: 'W/m²',
          allowed: { share: 0.25 },
        },
      ]
    }),
}

export const waterSets: readonly CheckSet[] = [boiling, altitude, water, openTank]
