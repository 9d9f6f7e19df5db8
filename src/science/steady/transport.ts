import type { Front } from '#science/fire/front.ts'
import { zOfStoichiometric } from '#science/gas/mixture.ts'
import type { FrontPlace } from './frontPlace.ts'
import type { Workspace } from './workspace.ts'

/** Share of the largest flow that every node takes from the open air, so that dead ends have a state [1]. */
const TRACE = 1e-11

/**
 * Carries composition along the flows of the last network solve and burns what meets oxygen, at once. For given flows the
 * mass fraction of gas is linear: what comes into a node, and with it. Returns the heat set free [W].
 */
export const transport = (w: Workspace, front: Front, place: FrontPlace): number => {
  spreadGas(w, front, place)
  return burn(w, front, place)
}

/** Does the front's gas go up through its link, as it should? Else its stretch of the bed passes gas like any other. */
const frontMakes = (w: Workspace, place: FrontPlace): boolean => (w.solver.flow[place.link] as number) > 0

const spreadGas = (w: Workspace, front: Front, place: FrontPlace): void => {
  const { table, forward, back, gasFraction, inflow, flowElimination, flowMatrix, flowMeets, fromFront } = w
  const { from, to } = table
  const nodes = w.plan.nodes.length
  flowMatrix.fill(0)
  inflow.fill(0)
  gasFraction.fill(0)
  for (let k = 0, at = 0; k < forward.length; k++, at += 4) {
    const a = from[k] as number
    const b = to[k] as number
    const returns = back[k] as number
    const aa = flowMeets[at] as number
    const ab = flowMeets[at + 1] as number
    inflow[a] = (inflow[a] as number) + returns
    flowMatrix[aa] = (flowMatrix[aa] as number) + returns
    flowMatrix[ab] = (flowMatrix[ab] as number) - returns
    if (k === place.link && frontMakes(w, place)) continue
    const goes = forward[k] as number
    const bb = flowMeets[at + 2] as number
    const ba = flowMeets[at + 3] as number
    inflow[b] = (inflow[b] as number) + goes
    flowMatrix[bb] = (flowMatrix[bb] as number) + goes
    flowMatrix[ba] = (flowMatrix[ba] as number) - goes
  }
  if (frontMakes(w, place)) {
    const over = to[place.link] as number
    const { made, passedAir, through } = fromFront
    const bb = flowMeets[4 * place.link + 2] as number
    inflow[over] = (inflow[over] as number) + made + passedAir + through
    flowMatrix[bb] = (flowMatrix[bb] as number) + made + passedAir + through
    gasFraction[over] = made + through / (1 + front.stoichiometricAir)
  }
  let largest = 0
  for (let i = 0; i < nodes; i++) largest = Math.max(largest, inflow[i] as number)
  w.ledger.trace = TRACE * largest + Number.MIN_VALUE
  for (let i = 0; i < nodes; i++) {
    const ii = w.flowDiagonal[i] as number
    flowMatrix[ii] = (flowMatrix[ii] as number) + w.ledger.trace
  }
  flowElimination.solve(flowMatrix, gasFraction)
  for (let i = 0; i < nodes; i++) gasFraction[i] = Math.min(1, Math.max(0, gasFraction[i] as number))
  gasFraction[nodes] = 0
}

/** Heat that comes bound to each node and does not go on bound is set free there [W]. */
const burn = (w: Workspace, front: Front, place: FrontPlace): number => {
  const { table, forward, back, gasFraction, inflow, bound, burnt, fromFront } = w
  const { from, to } = table
  const nodes = w.plan.nodes.length
  const stoichiometric = zOfStoichiometric(front)
  const perExcess = front.gasHeat / (1 - stoichiometric)
  for (let i = 0; i < nodes; i++) {
    // `chemicalHeat` of what leaves the node.
    const excess = (gasFraction[i] as number) - stoichiometric
    bound[i] = excess > 0 ? excess * perExcess : 0
    burnt[i] = -(inflow[i] as number) * (bound[i] as number)
  }
  const makes = frontMakes(w, place)
  for (let k = 0; k < forward.length; k++) {
    const a = from[k] as number
    const b = to[k] as number
    burnt[a] = (burnt[a] as number) + (back[k] as number) * (bound[b] as number)
    if (k === place.link && makes) burnt[b] = (burnt[b] as number) + fromFront.made * front.gasHeat
    else burnt[b] = (burnt[b] as number) + (forward[k] as number) * (bound[a] as number)
  }
  let released = 0
  for (let i = 0; i < nodes; i++) {
    burnt[i] = Math.max(0, burnt[i] as number)
    released += burnt[i] as number
  }
  burnt[nodes] = 0
  return released
}
