import tables from '#reference/emissivity.json' with { type: 'json' }
import reference from '#reference/heatTransfer.json' with { type: 'json' }
import integrated from '#reference/viewFactors.json' with { type: 'json' }
import { tinplateEmissivity } from '#science/heat/emissivity.ts'
import { blackEmission, concentricFlux, exchangeArea, greyFlux } from '#science/heat/greyRadiation.ts'
import { discToDisc, discToTube, ringView } from '#science/heat/viewFactors.ts'
import type { CheckSet, PointRow } from '../row.ts'

interface Row {
  readonly case: string
  readonly source: string
  readonly inputs: Readonly<Record<'eps' | 'T1' | 'T2', number>>
  readonly outputs: { readonly Q_W: number }
  readonly q_W_m2: number
  readonly q_W_m2_of_A1: number
}
const [black, grey, rectangles, cylinders, tinned] = reference.radiation as unknown as [
  Row,
  Row,
  Row,
  Row,
  Row,
]

const surfaces: CheckSet = {
  title: 'radiation between surfaces',
  source: `${black.source}; ${rectangles.case}; ${cylinders.source}`,
  standing: 'proof of code',
  note: '5e-6 with an earlier Stefan–Boltzmann constant, 1e-4 where the book rounds it.',
  rows: (): readonly PointRow[] => [
    ...[black, grey].map(({ inputs: { eps, T1, T2 }, q_W_m2 }) => ({
      check: `grey surface of emissivity ${eps}, ${T1} and ${T2} K`,
      published: q_W_m2,
      ours: greyFlux(eps, T1, T2),
      unit: 'W/m²',
      allowed: { share: 5e-6 },
    })),
    {
      check: 'black rectangles face to face, 400 and 600 K',
      published: rectangles.outputs.Q_W,
      ours: exchangeArea(4.5, 1, 4.5, 1, 0.11) * (blackEmission(400) - blackEmission(600)),
      unit: 'W',
      allowed: { share: 1e-4 },
    },
    {
      check: 'cylinder in a cylinder, both oxidised',
      published: cylinders.q_W_m2_of_A1,
      ours: concentricFlux(900, 600, 0.8, 0.8, 0.05 / 0.06),
      unit: 'W/m²',
      allowed: { share: 1e-4 },
    },
    {
      check: 'cylinder in a cylinder, the outer tinned',
      published: tinned.q_W_m2_of_A1,
      ours: concentricFlux(900, 600, 0.8, 0.064, 0.05 / 0.06),
      unit: 'W/m²',
      allowed: { share: 1e-4 },
    },
  ],
}

const views: CheckSet = {
  title: 'view factors, by numerical integration',
  source: `${integrated.source}; ours by closed forms [bib:howell2010]`,
  standing: 'proof of code',
  note: 'The integrals’ own error: 1e-5 between discs, 5e-5 in a ring, 0.5 % in the corner of a can.',
  rows: (): readonly PointRow[] => [
    ...(integrated['coaxial discs'].rows as [number, number, number, number][]).map(
      ([r1, r2, gap, view]) => ({
        check: `discs of radius ${r1} and ${r2}, ${gap} apart`,
        published: view,
        ours: discToDisc(r1, r2, gap),
        unit: '',
        allowed: { by: 5e-6 },
      }),
    ),
    ...(integrated['disc to the wall it stands in'].rows as [number, number, number][]).map(
      ([radius, height, view]) => ({
        check: `floor of radius ${radius} to its wall of height ${height}`,
        published: view,
        ours: discToTube(radius, height),
        unit: '',
        allowed: { share: 0.005 },
      }),
    ),
    ...(integrated['outer tube to inner tube'].rows as [number, number, number, number][]).map(
      ([inner, outer, height, view]) => ({
        check: `tube ${outer} to the tube ${inner} in it, height ${height}`,
        published: view,
        ours: ringView(inner, outer, height).outerToInner,
        unit: '',
        allowed: { by: 5e-5 },
      }),
    ),
    ...(integrated['outer tube to itself'].rows as [number, number, number, number][]).map(
      ([inner, outer, height, view]) => ({
        check: `tube ${outer} round a tube ${inner} to itself, height ${height}`,
        published: view,
        ours: ringView(inner, outer, height).outerToItself,
        unit: '',
        allowed: { by: 5e-5 },
      }),
    ),
  ],
}

type TableRow = [string, string, number | string, number | string]
const rowsOf = (material: string, condition: string): readonly TableRow[] =>
  (tables.rows as TableRow[]).filter(([m, c]) => m === material && c === condition)

const emissivity: CheckSet = {
  title: 'emissivity of tinplate, new and burnt off',
  source: tables.source,
  standing: 'reference data',
  note: 'The tables differ among themselves by 0.04 at one temperature; the value of new tin was given to the model.',
  rows: (): readonly PointRow[] => [
    ...rowsOf('steel', 'oxidised').flatMap(([, , celsius, value]) => {
      const ends = String(celsius).split('-').map(Number)
      const values = String(value).split('-').map(Number)
      return ends.map((t, i) => ({
        check: `oxidised steel at ${t} °C (row ${celsius})`,
        published: values[Math.min(i, values.length - 1)] as number,
        ours: tinplateEmissivity(t + 273.15, true),
        unit: '',
        allowed: { by: 0.041 },
      }))
    }),
    ...rowsOf('iron, tinned', 'sheet').map(([, , celsius, value]) => ({
      check: `tinned sheet at ${celsius} °C`,
      published: value as number,
      ours: tinplateEmissivity((celsius as number) + 273.15, false),
      unit: '',
      allowed: { by: 0.041 },
    })),
  ],
}

export const radiationSets: readonly CheckSet[] = [surfaces, views, emissivity]
