import type { Front } from '#science/fire/front.ts'
import { COLDEST, HOTTEST, mixtureTemperature } from '#science/gas/mixture.ts'
import { mixtureProperties } from '#science/gas/mixturePolynomial.ts'
import type { FrontPlace } from './frontPlace.ts'
import type { Workspace } from './workspace.ts'

/**
 * Books what the gas brings to every node: each stream its enthalpy over the node's own, per kilogram, so that formation
 * enthalpies cancel and an imbalance of mass does no harm; the front's gas; and less what the flame there radiates.
 */
export const bookGas = (w: Workspace, front: Front, place: FrontPlace): void => {
  const { table, forward, back, enthalpy, specificHeat, temperature, gasFraction, burnt, heat, fromFront } = w
  const { from, to } = table
  const { matrix, surplus, links, diagonal } = heat
  const nodes = w.plan.nodes.length
  mixtureProperties(front, gasFraction, temperature, nodes, enthalpy, specificHeat)
  const makes = (w.solver.flow[place.link] as number) > 0
  for (let k = 0, at = 0; k < forward.length; k++, at += 4) {
    const a = from[k] as number
    const b = to[k] as number
    const higher = (enthalpy[a] as number) - (enthalpy[b] as number)
    const heatA = specificHeat[a] as number
    const heatB = specificHeat[b] as number
    const returns = back[k] as number
    const aa = links[at] as number
    const ab = links[at + 1] as number
    surplus[a] = (surplus[a] as number) - returns * higher
    matrix[aa] = (matrix[aa] as number) + returns * heatA
    matrix[ab] = (matrix[ab] as number) - returns * heatB
    if (k === place.link && makes) continue
    const goes = forward[k] as number
    const bb = links[at + 2] as number
    const ba = links[at + 3] as number
    surplus[b] = (surplus[b] as number) + goes * higher
    matrix[bb] = (matrix[bb] as number) + goes * heatB
    matrix[ba] = (matrix[ba] as number) - goes * heatA
  }
  if (makes) {
    const over = to[place.link] as number
    const bb = links[4 * place.link + 2] as number
    const total = fromFront.made + fromFront.passedAir + fromFront.through
    surplus[over] = (surplus[over] as number) + fromFront.heat - total * (enthalpy[over] as number)
    matrix[bb] = (matrix[bb] as number) + total * (specificHeat[over] as number)
  }
  const { flameRadiation } = w.coefficients
  const { trace } = w.ledger
  for (let i = 0; i < nodes; i++) {
    const ii = diagonal[i] as number
    surplus[i] =
      (surplus[i] as number) +
      trace * (w.airEnthalpy - (enthalpy[i] as number)) -
      flameRadiation * (burnt[i] as number)
    matrix[ii] = (matrix[ii] as number) + trace * (specificHeat[i] as number)
  }
}

/** Changes of temperature for which the heat capacity may be taken as it was: the error is a hundred-thousandth of them [K]. */
const SMALL_CHANGE = 0.1

/** Takes the changes that the heat balances ask for: enthalpies as they are, temperatures that go with them. */
export const changeGas = (w: Workspace, front: Front): void => {
  const { enthalpy, specificHeat, temperature, gasFraction, heat } = w
  const nodes = w.plan.nodes.length
  for (let i = 0; i < nodes; i++) {
    const change = heat.surplus[i] as number
    const h = (enthalpy[i] as number) + (specificHeat[i] as number) * change
    const near = Math.min(HOTTEST, Math.max(COLDEST, (temperature[i] as number) + change))
    enthalpy[i] = h
    temperature[i] =
      Math.abs(change) < SMALL_CHANGE ? near : mixtureTemperature(front, gasFraction[i] as number, h, near)
  }
}
