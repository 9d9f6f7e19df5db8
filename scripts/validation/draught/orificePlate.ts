import published from '#reference/orificePlate.json' with { type: 'json' }
import { thickHoleLoss } from '#science/draft/resistance.ts'
import type { CheckSet, PointRow } from '../row.ts'

/**
 * The orifice plate of a meter, ISO 5167-2:2003, 5.3.2 [bib:iso5167]. It stands here and not in the model: its pipes are 50 mm wide
 * and more and its Reynolds numbers 5000 and more, where holes drilled in a can see 100 to 3000. It shows that we can write an
 * equation down, and what our sharp hole comes to where both hold: far from walls and fast.
 */
interface Taps {
  /** Distances of the taps from the plate, upstream and down, over the pipe's diameter [1]. */
  readonly upstream: number
  readonly downstream: number
}

const CORNER: Taps = { upstream: 0, downstream: 0 }
const AT_PIPE_DIAMETERS: Taps = { upstream: 1, downstream: 0.47 }
const flange = (pipe: number): Taps => ({ upstream: 25.4 / pipe, downstream: 25.4 / pipe })

/** Narrower pipes ask for a term of their own [mm]. */
const SMALL_PIPE = 71.12

/** Discharge coefficient by the equation of Reader-Harris and Gallagher; diameters in millimetres [1]. */
const readerHarrisGallagher = (
  pipe: number,
  hole: number,
  reynolds: number,
  { upstream, downstream }: Taps,
): number => {
  const b = hole / pipe
  const a = ((19000 * b) / reynolds) ** 0.8
  const m = (2 * downstream) / (1 - b)
  return (
    0.5961 +
    0.0261 * b ** 2 -
    0.216 * b ** 8 +
    0.000521 * ((1e6 * b) / reynolds) ** 0.7 +
    (0.0188 + 0.0063 * a) * b ** 3.5 * (1e6 / reynolds) ** 0.3 +
    ((0.043 + 0.08 * Math.exp(-10 * upstream) - 0.123 * Math.exp(-7 * upstream)) * (1 - 0.11 * a) * b ** 4) /
      (1 - b ** 4) -
    0.031 * (m - 0.8 * m ** 1.1) * b ** 1.3 +
    (pipe < SMALL_PIPE ? 0.011 * (0.75 - b) * (2.8 - pipe / 25.4) : 0)
  )
}

/** Expansibility of a gas that loses pressure in the plate, ISO 5167-2:2003, 5.3.2.2 [1]. */
const expansibility = (b: number, pressureRatio: number, kappa: number): number =>
  1 - (0.351 + 0.256 * b ** 4 + 0.93 * b ** 8) * (1 - pressureRatio ** (1 / kappa))

const massFlow = (c: number, b: number, eps: number, hole: number, drop: number, density: number): number =>
  (c / Math.sqrt(1 - b ** 4)) * eps * (Math.PI / 4) * (hole / 1000) ** 2 * Math.sqrt(2 * drop * density)

const row = (check: string, told: number, ours: number, unit: string, share: number): PointRow => ({
  check,
  published: told,
  ours,
  unit,
  allowed: { share },
})

const [air, again, gas, flow] = published.published_checks as unknown as [
  { D_mm: number; d_mm: number; ReD: number; C_corner: number; C_D_D2: number; C_flange: number },
  { D_mm: number; d_mm: number; mu: number; qm_kg_s: number; C_flange: number },
  { D_mm: number; d_mm: number; p1: number; p2: number; kappa: number; epsilon: number },
  {
    D_mm: number
    d_mm: number
    p1: number
    p2: number
    rho: number
    C: number
    epsilon: number
    qm_kg_s: number
  },
]

const code: CheckSet = {
  title: 'orifice plate of a flow meter, outside the range of our holes',
  source: `${published.source} [bib:iso5167]`,
  standing: 'proof of code',
  note: '1e-9: the digits given. It proves the writing down, not our holes.',
  rows: () => {
    const taps = (one: Taps): number => readerHarrisGallagher(air.D_mm, air.d_mm, air.ReD, one)
    const reynolds = (4 * again.qm_kg_s) / (Math.PI * (again.D_mm / 1000) * again.mu)
    return [
      row('orifice plate, corner taps', air.C_corner, taps(CORNER), '', 1e-9),
      row('orifice plate, taps at D and D/2', air.C_D_D2, taps(AT_PIPE_DIAMETERS), '', 1e-9),
      row('orifice plate, flange taps', air.C_flange, taps(flange(air.D_mm)), '', 1e-9),
      row(
        'orifice plate, flange taps, another flow',
        again.C_flange,
        readerHarrisGallagher(again.D_mm, again.d_mm, reynolds, flange(again.D_mm)),
        '',
        1e-9,
      ),
      row(
        'expansibility in an orifice plate',
        gas.epsilon,
        expansibility(gas.d_mm / gas.D_mm, gas.p2 / gas.p1, gas.kappa),
        '',
        1e-12,
      ),
      row(
        'mass flow through an orifice plate',
        flow.qm_kg_s,
        massFlow(flow.C, flow.d_mm / flow.D_mm, flow.epsilon, flow.d_mm, flow.p1 - flow.p2, flow.rho),
        'kg/s',
        1e-12,
      ),
    ]
  },
}

const ours: CheckSet = {
  title: 'our sharp hole beside the standard’s plate, far from walls and fast',
  source: `${published.source} [bib:iso5167]`,
  standing: 'proof of code',
  note: '1 %: the plate at a tenth of its pipe and a Reynolds number of ten million, where it hardly feels either.',
  rows: () => [
    row(
      'sharp hole, discharge coefficient',
      readerHarrisGallagher(100, 10, 1e7, CORNER),
      1 / Math.sqrt(thickHoleLoss(0, 1)),
      '',
      0.01,
    ),
  ],
}

export const orificePlateSets: readonly CheckSet[] = [code, ours]
