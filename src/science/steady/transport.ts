import { OUTSIDE } from '#science/draft/network.ts'
import type { Front } from '#science/fire/front.ts'
import { AIR, specificEnthalpy } from '#science/gas/blend.ts'
import { chemicalHeat, type GasBasis, mixtureTemperature } from '#science/gas/mixture.ts'
import { forwardFlow } from './exchange.ts'
import type { FrontPlace, Workspace } from './workspace.ts'

/**
 * Carries composition and heat along the flows of the last network solve. Gas that meets oxygen burns at once; a share of
 * the heat leaves as radiation, and the walls take or give what `walls.ts` last found. For given flows both fields are
 * linear, so one elimination serves for the two of them. Returns the heat set free [W], or NaN when a temperature leaves
 * the range of the gas data.
 */
export const transport = (w: Workspace, basis: GasBasis, front: Front, place: FrontPlace): number => {
  const { plan, network, solver, coefficients, gasFraction, enthalpy, matrix, inflow, burnt, heatIn } = w
  const n = plan.nodes.length
  const m = plan.links.length
  matrix.fill(0)
  inflow.fill(0)
  heatIn.fill(0)
  gasFraction.fill(0)
  w.ledger.fromWalls = 0

  const carry = (amount: number, source: number, sink: number): void => {
    if (amount <= 0 || sink === OUTSIDE) return
    inflow[sink] = (inflow[sink] as number) + amount
    if (source === OUTSIDE) heatIn[sink] = (heatIn[sink] as number) + amount * w.airEnthalpy
    else matrix[sink * n + source] = (matrix[sink * n + source] as number) - amount
  }
  for (let k = 0; k < m; k++) {
    const from = network.from[k] as number
    const to = network.to[k] as number
    const net = solver.flow[k] as number
    const forward = forwardFlow(net, w.exchange[k] as number)
    carry(forward - net, to, from)
    if (k === place.link && net > 0) {
      if (to === OUTSIDE) continue
      const { made, passedAir, through } = frontStreams(place, front, net)
      inflow[to] = (inflow[to] as number) + made + passedAir + through
      gasFraction[to] = (gasFraction[to] as number) + made + through / (1 + basis.stoichiometricAir)
      heatIn[to] = (heatIn[to] as number) + frontStreamHeat(basis, front, place, net)
    } else carry(forward, from, to)
    const heated = net >= 0 ? to : from
    const fromWall = w.gapHeat[k] as number
    if (heated !== OUTSIDE && fromWall !== 0) {
      heatIn[heated] = (heatIn[heated] as number) + fromWall
      w.ledger.fromWalls += fromWall
    }
  }
  for (let i = 0; i < n; i++) {
    const mass = inflow[i] as number
    // A dead end takes the state of the open air.
    if (mass <= 0) heatIn[i] = w.airEnthalpy
    matrix[i * n + i] = mass > 0 ? mass : 1
  }

  // Composition first: it says what burns where. what comes bound and goes on burnt is set free.
  const upper = w.eliminated
  upper.set(matrix)
  eliminate(upper, n, gasFraction)
  for (let i = 0; i < n; i++) {
    const z = Math.min(1, Math.max(0, gasFraction[i] as number))
    gasFraction[i] = z
  }
  let released = 0
  for (let i = 0; i < n; i++) {
    let comes = 0
    for (let j = 0; j < n; j++) {
      if (j === i) continue
      const amount = -(matrix[i * n + j] as number)
      if (amount > 0) comes += amount * chemicalHeat(basis, gasFraction[j] as number)
    }
    if (network.to[place.link] === i) {
      const net = Math.max(0, solver.flow[place.link] as number)
      comes += frontStreams(place, front, net).made * basis.heat
    }
    const set = Math.max(0, comes - (inflow[i] as number) * chemicalHeat(basis, gasFraction[i] as number))
    burnt[i] = set
    released += set
    const toWall = w.wallHeat[i] as number
    heatIn[i] = (heatIn[i] as number) - set * coefficients.flameRadiation - toWall
    w.ledger.fromWalls -= toWall
  }

  for (let i = 0; i < n; i++) enthalpy[i] = heatIn[i] as number
  upper.set(matrix)
  eliminate(upper, n, enthalpy)
  for (let i = 0; i < n; i++) {
    const temperature = mixtureTemperature(
      basis,
      gasFraction[i] as number,
      enthalpy[i] as number,
      w.temperature[i] as number,
    )
    if (!(temperature > 0)) return Number.NaN
    w.temperature[i] = temperature
  }
  return released
}

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

/**
 * Solves a diagonally dominant system in place, no pivoting. Row sums of the flow matrix are never below zero: what
 * leaves a node for others came into it.
 */
const eliminate = (a: Float64Array, n: number, x: Float64Array): void => {
  for (let c = 0; c < n; c++) {
    const diagonal = a[c * n + c] as number
    for (let r = c + 1; r < n; r++) {
      const entry = a[r * n + c] as number
      if (entry === 0) continue
      const factor = entry / diagonal
      for (let j = c + 1; j < n; j++)
        a[r * n + j] = (a[r * n + j] as number) - factor * (a[c * n + j] as number)
      x[r] = (x[r] as number) - factor * (x[c] as number)
    }
  }
  for (let r = n - 1; r >= 0; r--) {
    let sum = x[r] as number
    for (let j = r + 1; j < n; j++) sum -= (a[r * n + j] as number) * (x[j] as number)
    x[r] = sum / (a[r * n + r] as number)
  }
}
