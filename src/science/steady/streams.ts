import { OUTSIDE } from '#science/draft/network.ts'
import type { Front } from '#science/fire/front.ts'
import { AIR, specificEnthalpy } from '#science/gas/blend.ts'
import type { GasBasis } from '#science/gas/mixture.ts'
import { forwardFlow } from './exchange.ts'
import type { FrontPlace, Workspace } from './workspace.ts'

/** What leaves the front's stretch of the bed when `net` enters it: fresh gas, air that passed by, gas burnt before [kg/s]. */
export const frontStreams = (
  { airShare, active }: FrontPlace,
  front: Front,
  net: number,
): { made: number; passedAir: number; through: number } => ({
  made: (net * airShare * active * front.gas) / front.airPerFuel,
  passedAir: net * airShare * (1 - active),
  through: net * (1 - airShare),
})

/** Enthalpy of the three together [W]. */
export const frontStreamHeat = (basis: GasBasis, front: Front, place: FrontPlace, net: number): number => {
  const { made, passedAir, through } = frontStreams(place, front, net)
  return (
    made * specificEnthalpy(front.unburnt, front.temperature) +
    passedAir * specificEnthalpy(AIR, place.airTemperature) +
    through * specificEnthalpy(basis.burnt, place.airTemperature)
  )
}

/** Share of the largest flow that every node takes from the open air, so that dead ends have a state [1]. */
const TRACE = 1e-11

/**
 * Lays out who sends what to whom, for the flows of the last network solve: `matrix` (diagonal what comes in, off it what
 * comes from which node, negative), `inflow`, and the right-hand sides of composition (`gasFraction`) and heat (`heatIn`).
 */
export const sumStreams = (w: Workspace, basis: GasBasis, front: Front, place: FrontPlace): void => {
  const { plan, network, solver, gasFraction, matrix, inflow, heatIn } = w
  const n = plan.nodes.length
  matrix.fill(0)
  inflow.fill(0)
  heatIn.fill(0)
  gasFraction.fill(0)
  const carry = (amount: number, source: number, sink: number): void => {
    if (amount <= 0 || sink === OUTSIDE) return
    inflow[sink] = (inflow[sink] as number) + amount
    if (source === OUTSIDE) heatIn[sink] = (heatIn[sink] as number) + amount * w.airEnthalpy
    else matrix[sink * n + source] = (matrix[sink * n + source] as number) - amount
  }
  for (let k = 0; k < plan.links.length; k++) {
    const from = network.from[k] as number
    const to = network.to[k] as number
    const net = solver.flow[k] as number
    const forward = forwardFlow(net, w.exchange[k] as number)
    carry(forward - net, to, from)
    if (k !== place.link || net <= 0) carry(forward, from, to)
    else if (to !== OUTSIDE) {
      const { made, passedAir, through } = frontStreams(place, front, net)
      inflow[to] = (inflow[to] as number) + made + passedAir + through
      gasFraction[to] = (gasFraction[to] as number) + made + through / (1 + basis.stoichiometricAir)
      heatIn[to] = (heatIn[to] as number) + frontStreamHeat(basis, front, place, net)
    }
  }
  let largest = 0
  for (let i = 0; i < n; i++) largest = Math.max(largest, inflow[i] as number)
  const trace = TRACE * largest + Number.MIN_VALUE
  for (let i = 0; i < n; i++) {
    matrix[i * n + i] = (inflow[i] as number) + trace
    heatIn[i] = (heatIn[i] as number) + trace * w.airEnthalpy
  }
}
