import air from '#reference/airTransport.json' with { type: 'json' }
import measured from '#reference/mixtureViscosity.json' with { type: 'json' }
import pure from '#reference/pureTransport.json' with { type: 'json' }
import { DRY_AIR_MOLE_FRACTIONS } from '#science/gas/blend.ts'
import { mixtureConductivity, mixtureViscosity } from '#science/gas/mixtureTransport.ts'
import { pureTransport } from '#science/gas/pureTransport.ts'
import { airConductivity, airViscosity } from '#science/gas/transport.ts'
import type { CheckSet, PointRow } from '../row.ts'

const viscosityRow = (check: string, published: number, ours: number, share: number): PointRow => ({
  check,
  published: published * 1e6,
  ours: ours * 1e6,
  unit: 'µPa s',
  allowed: { share },
})

const conductivityRow = (check: string, published: number, ours: number, share: number): PointRow => ({
  check,
  published: published * 1e3,
  ours: ours * 1e3,
  unit: 'mW/(m K)',
  allowed: { share },
})

const ofAir = (rows: readonly (readonly number[])[], name: string, shares: readonly [number, number]) =>
  (rows as readonly (readonly [number, number, number])[]).flatMap(([T, viscosity, conductivity]) => [
    viscosityRow(`${name} viscosity of air at ${T} K`, viscosity, airViscosity(T), shares[0]),
    conductivityRow(`${name} conductivity of air at ${T} K`, conductivity, airConductivity(T), shares[1]),
  ])

const checkValues: CheckSet = {
  title: 'viscosity and conductivity of air: the paper’s own check values',
  source: `${air.published.source} [bib:lemmon2004]`,
  standing: 'proof of code',
  note: '3e-5: six digits are printed.',
  rows: () => ofAir(air.published.rows, 'published', [3e-5, 3e-5]),
}

const elsewhere: CheckSet = {
  title: 'the same correlation, 250 to 1500 K',
  source: air.recomputed.source,
  standing: 'proof of code',
  note: '1.5 % and 2 %, set before the code was written; the two agree to their digits.',
  rows: () => ofAir(air.recomputed.rows, 'recomputed', [0.015, 0.02]),
}

type HandbookRow = [number, number, number, number, number, number, string]
const handbookRows = air.handbook.rows as unknown as readonly HandbookRow[]

const handbook: CheckSet = {
  title: 'viscosity and conductivity of air in a handbook',
  source: air.handbook.source,
  standing: 'reference data',
  note: '1.5 % and 2 %, set before the code was written. Viscosities above 180 °C are from memory and stand below.',
  rows: () =>
    handbookRows.flatMap(([celsius, , , conductivity, viscosity, , provenance]) => {
      const T = celsius + 273.15
      return [
        ...(provenance === 'retrieved'
          ? [viscosityRow(`handbook viscosity of air at ${celsius} °C`, viscosity, airViscosity(T), 0.015)]
          : []),
        conductivityRow(
          `handbook conductivity of air at ${celsius} °C`,
          conductivity,
          airConductivity(T),
          0.02,
        ),
      ]
    }),
}

const handbookFromMemory: CheckSet = {
  title: 'viscosity of hot air in a handbook',
  source: 'the same table, its viscosities above 180 °C from memory',
  standing: 'from memory',
  note: '1.5 % would be asked.',
  rows: () =>
    handbookRows
      .filter(([, , , , , , provenance]) => provenance !== 'retrieved')
      .map(([celsius, , , , viscosity]) =>
        viscosityRow(
          `handbook viscosity of air at ${celsius} °C`,
          viscosity,
          airViscosity(celsius + 273.15),
          0.015,
        ),
      ),
}

/** Largest share that viscosity and conductivity may be off; the same formulas on both sides where it is tiny. */
const pureShares: Readonly<Record<string, readonly [number, number]>> = {
  N2: [1e-6, 1e-6],
  O2: [1e-6, 1e-6],
  Ar: [1e-6, 1e-6],
  H2O: [1e-6, 1e-6],
  CO2: [0.01, 1e-6],
  H2: [0.01, 0.04],
  CH4: [0.01, 0.03],
}

const pureGases: CheckSet = {
  title: 'viscosity and conductivity of each gas, by another program',
  source: pure.source,
  standing: 'reference data',
  note: '1e-6 where both hold the same correlation; else the spread of two correlations, 1 to 4 %.',
  rows: () =>
    (pure.rows as unknown as readonly (readonly [string, number, number, number])[])
      .filter(([gas]) => gas !== 'air')
      .flatMap(([gas, T, viscosity, conductivity]) => {
        const own = pureTransport[gas as keyof typeof pureTransport]
        const [ofViscosity, ofConductivity] = pureShares[gas] as readonly [number, number]
        return [
          viscosityRow(`viscosity of ${gas} at ${T} K`, viscosity, own.viscosity(T), ofViscosity),
          conductivityRow(
            `conductivity of ${gas} at ${T} K`,
            conductivity,
            own.conductivity(T),
            ofConductivity,
          ),
        ]
      }),
}

const mixedAir: CheckSet = {
  title: 'air mixed of its gases by the rules of Wilke and of Mason and Saxena',
  source: 'air as one substance, Lemmon & Jacobsen 2004 [bib:lemmon2004]',
  standing: 'reference data',
  note: '1.5 % and 2 %.',
  rows: () =>
    [250, 300, 400, 500, 700, 900, 1100, 1300, 1500].flatMap((T) => [
      viscosityRow(
        `viscosity of mixed air at ${T} K`,
        airViscosity(T),
        mixtureViscosity(DRY_AIR_MOLE_FRACTIONS, T),
        0.015,
      ),
      conductivityRow(
        `conductivity of mixed air at ${T} K`,
        airConductivity(T),
        mixtureConductivity(DRY_AIR_MOLE_FRACTIONS, T),
        0.02,
      ),
    ]),
}

const hydrogenInNitrogen: CheckSet = {
  title: 'viscosity of hydrogen in nitrogen, the hardest pair for a mixing rule',
  source: measured.source,
  standing: 'measurement',
  note: '2.5 %.',
  rows: () =>
    (measured.rows as unknown as readonly (readonly [number, number])[]).map(([x, viscosity]) =>
      viscosityRow(
        `hydrogen in nitrogen, mole fraction ${x}`,
        viscosity,
        mixtureViscosity({ H2: x, N2: 1 - x }, measured.temperature),
        0.025,
      ),
    ),
}

export const transportSets: readonly CheckSet[] = [
  checkValues,
  elsewhere,
  handbook,
  handbookFromMemory,
  pureGases,
  mixedAir,
  hydrogenInNitrogen,
]
