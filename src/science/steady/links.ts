import { STANDARD_GRAVITY } from '#basis/constants.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import { CREEPING_HOLE_LOSS } from '#science/draft/resistance.ts'
import type { Front } from '#science/fire/front.ts'
import { bedPassage, tippedResistance } from '#science/fuel/bedResistance.ts'
import { type GasBasis, mixtureGasConstant, zOfStoichiometric } from '#science/gas/mixture.ts'
import { quickAirViscosity } from '#science/gas/transport.ts'
import { ratioToAir } from '#science/gas/viscosityRatio.ts'
import { type FrontPlace, gainOf, type Workspace } from './workspace.ts'

/**
 * Sets every link's resistance and buoyancy for the temperatures at hand. A link carries the gas of the nodes it
 * joins, in proportion to what passes each way; a node's pressure is meant at the node's own height, and its gas column reaches from there to the link.
 * Viscosity is air's at the gas temperature times the gas's own ratio to it, fitted once
 * a fuel to Wilke's rule.
 */
export const setLinks = (w: Workspace, basis: GasBasis, front: Front, place: FrontPlace): void => {
  const { plan, site, network, airDensity, density, temperature } = w
  const { nodes, links } = plan
  for (let i = 0; i < nodes.length; i++)
    density[i] =
      site.pressure / (mixtureGasConstant(basis, w.gasFraction[i] as number) * (temperature[i] as number))
  for (let k = 0; k < links.length; k++) {
    const link = links[k] as (typeof links)[number]
    const share = w.share[k] as number
    const passing = share * densityOf(w, link.from) + (1 - share) * densityOf(w, link.to)
    const warmth = share * temperatureOf(w, link.from) + (1 - share) * temperatureOf(w, link.to)
    const z = share * gasOf(w, link.from) + (1 - share) * gasOf(w, link.to)
    const viscosity = gasViscosity(w, basis, z, warmth)
    w.linkDensity[k] = passing
    w.linkViscosity[k] = viscosity
    if ((w.segmentOf[k] as number) >= 0) {
      setBedLink(w, k, front, place)
      continue
    }
    // Holes creep by the coefficient; a gap's friction is exact.
    const creep = link.kind === 'gap' ? 1 : w.coefficients.creepingHoleLoss / CREEPING_HOLE_LOSS
    network.linear[k] = (creep * link.shape.viscous * viscosity) / passing
    network.quadratic[k] = link.shape.inertial / passing
    const below = link.from === OUTSIDE ? 0 : airDensity - (density[link.from] as number)
    const above = link.to === OUTSIDE ? 0 : airDensity - (density[link.to] as number)
    const fromHeight = nodes[link.from]?.height ?? 0
    const toHeight = nodes[link.to]?.height ?? 0
    const head =
      link.kind === 'gap'
        ? ((below + above) / 2) * (toHeight - fromHeight)
        : below * (link.height - fromHeight) - above * (link.height - toHeight)
    network.head[k] = head * STANDARD_GRAVITY + (w.windHead[k] as number)
  }
}

const gasOf = (w: Workspace, node: number): number => (node === OUTSIDE ? 0 : (w.gasFraction[node] as number))

/** Of a mixture between air, burnt gas and raw gas, the ratios mixed by mass [Pa s]. */
const gasViscosity = (w: Workspace, basis: GasBasis, z: number, temperature: number): number => {
  const { unburnt, burnt } = w.viscosity
  const stoichiometric = zOfStoichiometric(basis)
  const ofBurnt = z === 0 ? 1 : ratioToAir(burnt, temperature)
  const ratio =
    z <= stoichiometric
      ? 1 + (z / stoichiometric) * (ofBurnt - 1)
      : ofBurnt + ((z - stoichiometric) / (1 - stoichiometric)) * (ratioToAir(unburnt, temperature) - ofBurnt)
  return ratio * quickAirViscosity(temperature)
}

const densityOf = (w: Workspace, node: number): number =>
  node === OUTSIDE ? w.airDensity : (w.density[node] as number)
const temperatureOf = (w: Workspace, node: number): number =>
  node === OUTSIDE ? w.site.temperature : (w.temperature[node] as number)

/**
 * A stretch of the bed: raw fuel up to the front, char above it. In the front's own stretch air turns to gas on the
 * way, `gain` kilograms a kilogram, so Δp = R_raw(ṁ) + R_char(gain·ṁ).
 */
const setBedLink = (w: Workspace, k: number, front: Front, place: FrontPlace): void => {
  const { plan, site, network, airDensity, fuel, coefficients } = w
  const { bed, nodes } = plan
  const link = plan.links[k] as (typeof plan.links)[number]
  const segment = w.segmentOf[k] as number
  const stretch = bed.segments[segment] as (typeof bed.segments)[number]
  const passing = w.linkDensity[k] as number
  const viscosity = w.linkViscosity[k] as number
  const rawDepth = Math.min(Math.max(place.height, stretch.from), stretch.to) - stretch.from
  const charDepth = stretch.to - stretch.from - rawDepth
  const gain = segment === place.segment ? gainOf(place, front) : 1
  // Char above the front is hot; in the front's own stretch it passes fresh gas, higher up the mixed gas of its node.
  const fresh = segment === place.segment || (w.solver.flow[k] as number) < 0
  const hotDensity = fresh ? site.pressure / (front.unburnt.gasConstant * front.temperature) : passing
  const hotViscosity = fresh
    ? quickAirViscosity(front.temperature) * ratioToAir(w.viscosity.unburnt, front.temperature)
    : viscosity
  const raw = bedPassage(fuel.resistance, bed.area, rawDepth)
  const char = bedPassage(
    tippedResistance(coefficients.charVoid, fuel.pieceDiameter * coefficients.charShrink),
    bed.area,
    charDepth * coefficients.charSettle * place.charLeft,
  )
  network.linear[k] = (raw.viscous * viscosity) / passing + (gain * char.viscous * hotViscosity) / hotDensity
  network.quadratic[k] = raw.inertial / passing + (gain * gain * char.inertial) / hotDensity
  network.gain[k] = gain
  const top = bed.base + stretch.to
  const over = link.to === OUTSIDE ? 0 : airDensity - (w.density[link.to] as number)
  network.head[k] =
    STANDARD_GRAVITY *
      ((airDensity - passing) * rawDepth +
        (airDensity - hotDensity) * charDepth -
        over * (top - (nodes[link.to]?.height ?? top))) +
    (w.windHead[k] as number)
}
