import { STANDARD_GRAVITY } from '#basis/constants.ts'
import type { Front } from '#science/fire/front.ts'
import { mixtureGasConstant, zOfStoichiometric } from '#science/gas/mixture.ts'
import { quickAirViscosity } from '#science/gas/transport.ts'
import { ratioToAir } from '#science/gas/viscosityRatio.ts'
import { type FrontPlace, gainOf } from './frontPlace.ts'
import type { Workspace } from './workspace.ts'

/**
 * Sets every link's resistance and buoyancy for the temperatures at hand. A link carries the gas of the nodes it
 * joins, in proportion to what passes each way; a node's pressure is meant at the node's own height, and its gas column
 * reaches from there to the link. Viscosity is air's at the gas temperature times the gas's own ratio to it, fitted once
 * a fuel to Wilke's rule.
 */
export const setLinks = (w: Workspace, front: Front, place: FrontPlace): void => {
  const { site, network, airDensity, density, temperature, gasFraction, table, share, windHead } = w
  const { linear, quadratic, head } = network
  const { from, to, viscous, inertial, riseFrom, riseTo, segment } = table
  const nodes = network.nodes
  for (let i = 0; i < nodes; i++)
    density[i] =
      site.pressure / (mixtureGasConstant(front, gasFraction[i] as number) * (temperature[i] as number))
  const stoichiometric = zOfStoichiometric(front)
  for (let k = 0; k < network.links; k++) {
    const a = from[k] as number
    const b = to[k] as number
    const there = share[k] as number
    const back = 1 - there
    const densityFrom = density[a] as number
    const densityTo = density[b] as number
    const passing = there * densityFrom + back * densityTo
    const warmth = there * (temperature[a] as number) + back * (temperature[b] as number)
    const z = there * (gasFraction[a] as number) + back * (gasFraction[b] as number)
    const viscosity = gasViscosity(w, stoichiometric, z, warmth)
    w.linkDensity[k] = passing
    w.linkViscosity[k] = viscosity
    if ((segment[k] as number) >= 0) {
      setBedLink(w, k, front, place)
      continue
    }
    const perDensity = 1 / passing
    linear[k] = (viscous[k] as number) * viscosity * perDensity
    quadratic[k] = (inertial[k] as number) * perDensity
    head[k] =
      STANDARD_GRAVITY *
        ((airDensity - densityFrom) * (riseFrom[k] as number) +
          (airDensity - densityTo) * (riseTo[k] as number)) +
      (windHead[k] as number)
  }
}

/** Of a mixture between air, burnt gas and raw gas, the ratios mixed by mass [Pa s]. */
const gasViscosity = (w: Workspace, stoichiometric: number, z: number, temperature: number): number => {
  const { unburnt, burnt } = w.viscosity
  const ofBurnt = z === 0 ? 1 : ratioToAir(burnt, temperature)
  const ratio =
    z <= stoichiometric
      ? 1 + (z / stoichiometric) * (ofBurnt - 1)
      : ofBurnt + ((z - stoichiometric) / (1 - stoichiometric)) * (ratioToAir(unburnt, temperature) - ofBurnt)
  return ratio * quickAirViscosity(temperature)
}

/**
 * A stretch of the bed: raw fuel up to the front, char above it. In the front's own stretch air turns to gas on the
 * way, `gain` kilograms a kilogram, so Δp = R_raw(ṁ) + R_char(gain·ṁ).
 */
const setBedLink = (w: Workspace, k: number, front: Front, place: FrontPlace): void => {
  const { site, network, airDensity, bed, table } = w
  const s = table.segment[k] as number
  const passing = w.linkDensity[k] as number
  const viscosity = w.linkViscosity[k] as number
  const gain = s === place.segment ? gainOf(place, front) : 1
  // Char above the front is hot; in the front's own stretch it passes fresh gas, higher up the mixed gas of its node.
  const fresh = s === place.segment || (w.solver.flow[k] as number) < 0
  const hotDensity = fresh ? site.pressure / (front.unburnt.gasConstant * front.temperature) : passing
  const hotViscosity = fresh
    ? quickAirViscosity(front.temperature) * ratioToAir(w.viscosity.unburnt, front.temperature)
    : viscosity
  network.linear[k] =
    ((bed.rawViscous[s] as number) * viscosity) / passing +
    (gain * (bed.charViscous[s] as number) * hotViscosity) / hotDensity
  network.quadratic[k] =
    (bed.rawInertial[s] as number) / passing + (gain * gain * (bed.charInertial[s] as number)) / hotDensity
  network.gain[k] = gain
  const over = airDensity - (w.density[table.to[k] as number] as number)
  network.head[k] =
    STANDARD_GRAVITY *
      ((airDensity - passing) * (bed.rawDepth[s] as number) +
        (airDensity - hotDensity) * (bed.charDepth[s] as number) -
        over * (bed.overNode[s] as number)) +
    (w.windHead[k] as number)
}
