import annulus from '#reference/annulus.json' with { type: 'json' }
import reference from '#reference/heatTransfer.json' with { type: 'json' }
import { hotSideUpNusselt } from '#science/heat/horizontalPlate.ts'
import { impingingJetNusselt } from '#science/heat/impingingJet.ts'
import {
  enteringNusselt,
  ringNusselt,
  TUBE_NUSSELT_ISOTHERMAL,
  TUBE_NUSSELT_UNIFORM_FLUX,
} from '#science/heat/laminarDuct.ts'
import { verticalPlateFullNusselt, verticalPlateNusselt } from '#science/heat/naturalConvection.ts'
import type { CheckSet } from '../row.ts'

interface BookCase {
  readonly case: string
  readonly source: string
  readonly inputs: Readonly<Record<string, number>>
  readonly outputs: Readonly<Record<string, number>>
  readonly Nu_ChurchillChu_full: number
}
const [incropera, janna] = reference['natural convection'] as unknown as [BookCase, BookCase]

const upright: CheckSet = {
  title: 'free convection: worked examples of textbooks',
  source: `${incropera.case}: ${incropera.source}; ${janna.case}: ${janna.source} [bib:churchill1975]`,
  standing: 'proof of code',
  note: 'Digits given. For the top the book stays with the laminar law, where ours goes over smoothly to the turbulent one: 5 %.',
  rows: () => {
    const { Pr, Gr } = incropera.inputs as { Pr: number; Gr: number }
    const oven = janna.inputs as Record<'k_BTU' | 'Pr' | 'L_ft', number>
    const { Ra_side, h_side, Ra_top, h_top } = janna.outputs as Record<
      'Ra_side' | 'h_side' | 'Ra_top' | 'h_top',
      number
    >
    const unit = 'Btu/(h ft² °F)'
    return [
      {
        check: 'upright plate, Incropera example 9.2',
        published: incropera.Nu_ChurchillChu_full,
        ours: verticalPlateFullNusselt(Gr * Pr, Pr),
        unit: '',
        allowed: { share: 1e-12 },
      },
      {
        check: 'upright side of an oven, Janna example 8.5',
        published: h_side,
        ours: (verticalPlateNusselt(Ra_side, oven.Pr) * oven.k_BTU) / oven.L_ft,
        unit,
        allowed: { share: 1e-4 },
      },
      {
        check: 'top of the oven, Janna example 8.5',
        published: h_top,
        // Its length is area over perimeter, 0.5 ft.
        ours: (hotSideUpNusselt(Ra_top) * oven.k_BTU) / 0.5,
        unit,
        allowed: { share: 0.05 },
      },
    ]
  },
}

const ringGap: CheckSet = {
  title: 'laminar flow in a ring gap, Nusselt number, developed and at its entry',
  source: annulus.source,
  standing: 'proof of code',
  note: '0.5 % developed, 2.6 % at the entry: how well straight lines and a fitted form follow the exact series.',
  rows: () => [
    ...(annulus.developed.rows as [number, number, number][]).flatMap(([ratio, inner, outer]) => [
      {
        check: `ring gap ${ratio}, inner wall`,
        published: inner,
        ours: ringNusselt(ratio, 'inner'),
        unit: '',
        allowed: { share: 0.005 },
      },
      {
        check: `ring gap ${ratio}, outer wall`,
        published: outer,
        ours: ringNusselt(ratio, 'outer'),
        unit: '',
        allowed: { share: 0.005 },
      },
    ]),
    ...(annulus.entry.rows as [number, 'inner' | 'outer', number, number][]).map(
      ([ratio, wall, graetz, nusselt]) => ({
        check: `ring gap ${ratio}, ${wall} wall, entry at Gz ${graetz}`,
        published: nusselt,
        ours: enteringNusselt(ringNusselt(ratio, wall), graetz),
        unit: '',
        allowed: { share: 0.026 },
      }),
    ),
  ],
}

const tube: CheckSet = {
  title: 'round tube in laminar flow, Nusselt number',
  source: `${reference.tube.source}; the exact series by ${annulus.source}`,
  standing: 'reference data',
  note: '0.2 %: texts write 3.66.',
  rows: () => [
    {
      check: 'tube of one wall temperature, by series',
      published: annulus.tube,
      ours: TUBE_NUSSELT_ISOTHERMAL,
      unit: '',
      allowed: { share: 0.002 },
    },
    {
      check: 'tube of one wall temperature, as texts write it',
      published: reference.tube.Nu_T_const,
      ours: TUBE_NUSSELT_ISOTHERMAL,
      unit: '',
      allowed: { share: 1e-12 },
    },
    {
      check: 'tube of one heat flux',
      published: reference.tube.Nu_q_const,
      ours: TUBE_NUSSELT_UNIFORM_FLUX,
      unit: '',
      allowed: { share: 1e-12 },
    },
  ],
}

const ringFromMemory: CheckSet = {
  title: 'ring gap in Incropera’s table',
  source: reference['annulus from memory'].source,
  standing: 'from memory',
  note: 'Its last digit.',
  rows: () =>
    (reference['annulus from memory'].rows as [number, number | null, number][])
      .filter(([ratio]) => ratio >= 0.05)
      .flatMap(([ratio, inner, outer]) => [
        {
          check: `Incropera’s ring gap ${ratio}, inner wall`,
          published: inner as number,
          ours: ringNusselt(ratio, 'inner'),
          unit: '',
          allowed: { by: 0.006 },
        },
        {
          check: `Incropera’s ring gap ${ratio}, outer wall`,
          published: outer,
          ours: ringNusselt(ratio, 'outer'),
          unit: '',
          allowed: { by: 0.006 },
        },
      ]),
}

const jet: CheckSet = {
  title: 'turbulent jet on a plate, Martin’s formula',
  source: reference['impinging jet'].source,
  standing: 'proof of code',
  note: '1e-5. No can stove reaches its Reynolds numbers; it is kept to compare with.',
  rows: () =>
    reference['impinging jet'].rows.map((row) => ({
      check: `jet on a plate, Re ${row.Re}, H/D ${row['H/D']}`,
      published: row.Nu_avg,
      ours: impingingJetNusselt(row.Re, row.Pr, row['H/D'], row['r/D']),
      unit: '',
      allowed: { share: 1e-5 },
    })),
}

export const convectionSets: readonly CheckSet[] = [upright, ringGap, tube, ringFromMemory, jet]
