import flow from '#reference/flowChecks.json' with { type: 'json' }
import {
  annulusFriction,
  bed,
  holes,
  type PassageShape,
  perforatedPlateLoss,
  thickHoleLoss,
} from '#science/draft/resistance.ts'
import type { CheckSet } from '../row.ts'

/** Pressure drop of a shape at a mass flow in a gas [Pa]. */
export const dropOf = (shape: PassageShape, massFlow: number, density: number, viscosity: number): number =>
  ((shape.viscous * viscosity) / density) * massFlow +
  (shape.inertial / density) * massFlow * Math.abs(massFlow)

const ergun: CheckSet = {
  title: 'packed bed, Ergun’s equation',
  source: `${flow.ergun.source} [bib:ergun1952]`,
  standing: 'proof of code',
  note: '2e-6: the digits given.',
  rows: () =>
    flow.ergun.rows.map(({ dp_m, voidage, v_m_s, rho, mu, L_m, dP_Pa }) => {
      const area = 0.01
      return {
        check: `Ergun, ${dp_m * 1000} mm pieces at ${v_m_s} m/s`,
        published: dP_Pa,
        ours: dropOf(bed(area, L_m, voidage, dp_m), rho * v_m_s * area, rho, mu),
        unit: 'Pa',
        allowed: { share: 2e-6 },
      }
    }),
}

const plate: CheckSet = {
  title: 'plate full of holes across a duct, loss on the approach velocity',
  source: `${flow.perforatedPlate.source} [bib:idelchik1986]`,
  standing: 'proof of code',
  note: '6e-4: four digits are given.',
  rows: () =>
    flow.perforatedPlate.rows.map(({ f, zeta_formula }) => ({
      check: `plate of open share ${f}`,
      published: zeta_formula,
      ours: perforatedPlateLoss(f),
      unit: '',
      allowed: { share: 6e-4 },
    })),
}

const plateTable: CheckSet = {
  title: 'the same plate in the handbook’s own table',
  source: flow.perforatedPlate.source,
  standing: 'from memory',
  note: '4 %: table and formula are said to be within 3.4 % of each other.',
  rows: () =>
    flow.perforatedPlate.rows.map(({ f, zeta_table_from_memory }) => ({
      check: `table of plates, open share ${f}`,
      published: zeta_table_from_memory,
      ours: perforatedPlateLoss(f),
      unit: '',
      allowed: { share: 0.04 },
    })),
}

const thick: CheckSet = {
  title: 'hole with a thick edge, plenum to plenum',
  source: `${flow.thickEdge.source} [bib:rennels2012]`,
  standing: 'proof of code',
  note: '5e-5: five digits are given.',
  rows: () => [
    ...(flow.thickEdge.rows as [number, number][]).map(([ratio, zeta]) => ({
      check: `loss of a hole, t/d ${ratio}`,
      published: zeta,
      ours: thickHoleLoss(ratio * 0.006, 0.006),
      unit: '',
      allowed: { share: 5e-5 },
    })),
    {
      check: 'discharge coefficient of a sharp hole',
      published: flow.thickEdge.sharp['Cd=1/sqrt(zeta)'],
      ours: 1 / Math.sqrt(thickHoleLoss(0, 1)),
      unit: '',
      allowed: { share: 5e-5 },
    },
  ],
}

/** Loss times Reynolds number of a hole in a flow that creeps [1]. */
const creepingLoss = (thicknessRatio: number, reynolds: number): number => {
  const [diameter, density, viscosity] = [0.006, 1.2, 1.8e-5]
  const area = (Math.PI / 4) * diameter ** 2
  const velocity = (reynolds * viscosity) / (density * diameter)
  const shape = holes(1, area, diameter, thicknessRatio * diameter)
  const loss = dropOf(shape, density * velocity * area, density, viscosity) / (0.5 * density * velocity ** 2)
  return loss * reynolds
}

const creeping: CheckSet = {
  title: 'hole in creeping flow, loss times Reynolds number',
  source:
    'Idelchik diagram 8-5, as given by Electronics Cooling, May 1998 [bib:idelchik1986] [bib:electronicscooling1998]',
  standing: 'given',
  note: 'Holes of a grid have 30; it is the median of `creepingHoleLoss`.',
  rows: () => [
    {
      check: 'creeping flow through a hole of a grid',
      published: 30,
      ours: creepingLoss(0, 1e-4),
      unit: '',
      allowed: { share: 1e-3 },
    },
  ],
}

const [lone, finite] = flow.creepingHole.rows as unknown as [
  { check: { Re: number; zeta: number } },
  { check: { Re: number; 't/d': number; zeta: number } },
]

const loneHole: CheckSet = {
  title: 'one hole alone in creeping flow, exact',
  source: flow.creepingHole.source,
  standing: 'from memory',
  note: 'Ours is the grid’s, a fifth lower; 12π lies at the upper end of the coefficient’s band.',
  rows: () => [
    {
      check: 'one hole alone, no thickness',
      published: lone.check.zeta * lone.check.Re,
      ours: creepingLoss(0, 1e-4),
      unit: '',
      allowed: { share: 0.25 },
    },
    {
      check: `one hole alone, t/d ${finite.check['t/d']}`,
      published: finite.check.zeta * finite.check.Re,
      ours: creepingLoss(finite.check['t/d'], 1e-4),
      unit: '',
      allowed: { share: 0.25 },
    },
  ],
}

const ring: CheckSet = {
  title: 'ring gap in laminar flow, friction factor times Reynolds number',
  source: flow.annulus.source,
  standing: 'proof of code',
  note: '5e-5. The exact solution, written down from memory and worked out elsewhere; a test solves the velocity profile by finite differences besides.',
  rows: () =>
    (flow.annulus.rows as [number, number][]).map(([k, friction]) => ({
      check: `ring gap, inner over outer ${k}`,
      published: friction,
      ours: annulusFriction(k),
      unit: '',
      allowed: { share: 5e-5 },
    })),
}

export const passageSets: readonly CheckSet[] = [ergun, plate, plateTable, thick, creeping, loneHole, ring]
