import type { Coefficients } from '#science/coefficients.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import type { DraughtLink, DraughtPlan } from '#science/draft/plan.ts'
import { flameOverSource } from '#science/flame/height.ts'
import { jetMixing } from '#science/flame/jets.ts'
import { outflowAngle, recirculates, swirlNumber, swirlWithBore } from '#science/flame/swirl.ts'
import { AIR } from '#science/gas/blend.ts'
import type { Site } from '#science/site.ts'
import type { FlameFacts, JetFacts } from './prediction.ts'
import type { SteadyState } from './state.ts'

/** Contraction of a jet behind a sharp hole; Kirchhoff's π/(π + 2) is exact for a slot [1]. */
const CONTRACTION = 0.61

/** Jets, swirl and height of the flame, from a solved state. */
export const flameFacts = (
  plan: DraughtPlan,
  state: SteadyState,
  site: Site,
  coefficients: Coefficients,
): FlameFacts => {
  const { height, diameter, potBottom, vanes } = plan.hearth
  const { front } = state
  const airDensity = site.pressure / (AIR.gasConstant * site.temperature)
  const flame = flameOverSource(
    state.flameHeat,
    diameter,
    { temperature: site.temperature, density: airDensity },
    front.gasHeat / Math.max(front.stoichiometricAir, 1e-6),
    potBottom === null ? null : potBottom - height,
    coefficients.flameHeight,
  )
  const angle = vanes === null ? 0 : outflowAngle(vanes.tongueAngle)
  const swirl =
    vanes === null || vanes.tongueAngle <= 0
      ? null
      : swirlWithBore(swirlNumber(vanes.hubRatio, angle), angle, vanes.area, vanes.boreArea)
  return {
    height: flame.height,
    strikesPot: potBottom === null ? null : flame.strikesPot,
    swirl,
    recirculates: swirl === null ? null : recirculates(swirl, coefficients.swirlForRecirculation),
    jets: jetsOf(plan, state, site, coefficients),
  }
}

const jetsOf = (
  { links, bed }: DraughtPlan,
  state: SteadyState,
  site: Site,
  coefficients: Coefficients,
): readonly JetFacts[] => {
  const { front } = state
  const flameNode = links[bed.segments[bed.segments.length - 1]?.link ?? -1]?.to ?? OUTSIDE
  if (flameNode === OUTSIDE) return []
  const stream = {
    flow: state.dryFuelRate * front.gas,
    density: site.pressure / (front.unburnt.gasConstant * front.temperature),
    diameter: 2 * Math.sqrt(bed.area / Math.PI),
  }
  // Wind parts a row into groups; together they are the row again.
  const rows = new Map<string, { link: DraughtLink; k: number; flow: number; count: number }>()
  for (const [k, link] of links.entries()) {
    if (link.kind !== 'opening' || link.opening === null || link.to !== flameNode || link.duty === 'passage')
      continue
    const key = `${link.part}/${link.opening}`
    const row = rows.get(key) ?? { link, k, flow: 0, count: 0 }
    rows.set(key, { ...row, flow: row.flow + (state.flow[k] as number), count: row.count + link.count })
  }
  return [...rows.values()].flatMap(({ link, k, flow, count }) => {
    const mixing = jetMixing(
      {
        count,
        diameter: Math.sqrt((4 * link.area) / link.count / Math.PI),
        contraction: CONTRACTION,
        flow,
        density: state.density[k] as number,
        viscosity: state.viscosity[k] as number,
      },
      stream,
      coefficients,
    )
    if (mixing === null) return []
    return [
      {
        part: link.part ?? '',
        opening: link.opening ?? '',
        count,
        momentumRatio: mixing.momentumRatio,
        reach: mixing.reach,
        bestCount: mixing.bestCount,
        outsideTests: mixing.outside.map(({ of, quantity }) => `${of}: ${quantity}`),
      },
    ]
  })
}
