import { eliminateDominant } from '#basis/numerics/elimination.ts'
import type { Front } from '#science/fire/front.ts'
import {
  chemicalHeat,
  type GasBasis,
  mixtureEnthalpy,
  mixtureHeat,
  mixtureTemperature,
} from '#science/gas/mixture.ts'
import { frontStreams, sumStreams } from './streams.ts'
import type { FrontPlace, Workspace } from './workspace.ts'

/**
 * Carries composition and heat along the flows of the last network solve. Gas that meets oxygen burns at once; a share of
 * the heat leaves as radiation, and the walls take or give their part. For given flows both fields are linear, so one
 * matrix serves for the two of them. Returns the heat set free [W].
 */
export const transport = (w: Workspace, basis: GasBasis, front: Front, place: FrontPlace): number => {
  sumStreams(w, basis, front, place)
  spreadGas(w)
  const released = burn(w, basis, front, place)
  spreadHeat(w, basis)
  return released
}

const spreadGas = ({ plan, matrix, eliminated, gasFraction }: Workspace): void => {
  eliminated.set(matrix)
  eliminateDominant(eliminated, plan.nodes.length, gasFraction)
  for (let i = 0; i < gasFraction.length; i++)
    gasFraction[i] = Math.min(1, Math.max(0, gasFraction[i] as number))
}

/** Heat that comes bound to each node and does not go on bound is set free there [W]. */
const burn = (w: Workspace, basis: GasBasis, front: Front, place: FrontPlace): number => {
  const { plan, matrix, gasFraction, inflow, heatIn, burnt, network, solver, coefficients } = w
  const n = plan.nodes.length
  let released = 0
  for (let i = 0; i < n; i++) {
    let bound = 0
    for (let j = 0; j < n; j++)
      if (j !== i) bound -= (matrix[i * n + j] as number) * chemicalHeat(basis, gasFraction[j] as number)
    if (network.to[place.link] === i)
      bound += frontStreams(place, front, Math.max(0, solver.flow[place.link] as number)).made * basis.heat
    const set = Math.max(0, bound - (inflow[i] as number) * chemicalHeat(basis, gasFraction[i] as number))
    burnt[i] = set
    released += set
    heatIn[i] = (heatIn[i] as number) - set * coefficients.flameRadiation
  }
  return released
}

/**
 * Enthalpies and temperatures. A wall may take several times what the gas carries, so its share goes in with the
 * temperature that comes out: T ≈ reference + h/cp about the temperature before.
 */
const spreadHeat = (w: Workspace, basis: GasBasis): void => {
  const { plan, matrix, eliminated, gasFraction, enthalpy, temperature, heatIn, reference, heat } = w
  const n = plan.nodes.length
  for (let i = 0; i < n; i++) {
    const before = temperature[i] as number
    const z = gasFraction[i] as number
    heat[i] = mixtureHeat(basis, z, before)
    reference[i] = before - mixtureEnthalpy(basis, z, before) / (heat[i] as number)
    enthalpy[i] = heatIn[i] as number
  }
  eliminated.set(matrix)
  const take = (row: number, conductance: number, column: number): void => {
    enthalpy[row] = (enthalpy[row] as number) - conductance * (reference[column] as number)
    eliminated[row * n + column] =
      (eliminated[row * n + column] as number) + conductance / (heat[column] as number)
  }
  for (let i = 0; i < n; i++) {
    enthalpy[i] = (enthalpy[i] as number) + (w.wallDrive[i] as number)
    take(i, w.wallConductance[i] as number, i)
  }
  // The walls of a gap heat the air that passes from what it comes with, and what they give goes the way it goes.
  for (const k of w.gapLinks) {
    const { from, to } = plan.links[k] as (typeof plan.links)[number]
    const g = w.gapConductance[k] as number
    const share = w.gapShare[k] as number
    const drawn = g * (w.gapWall[k] as number)
    enthalpy[to] = (enthalpy[to] as number) + share * drawn
    enthalpy[from] = (enthalpy[from] as number) + (1 - share) * drawn
    take(to, share * g * share, from)
    take(to, share * g * (1 - share), to)
    take(from, (1 - share) * g * share, from)
    take(from, (1 - share) * g * (1 - share), to)
  }
  eliminateDominant(eliminated, n, enthalpy)

  // What was booked between gas and walls, with the temperatures it was booked at.
  const reached = (i: number): number =>
    (reference[i] as number) + (enthalpy[i] as number) / (heat[i] as number)
  let fromWalls = 0
  for (let i = 0; i < n; i++)
    fromWalls += (w.wallDrive[i] as number) - (w.wallConductance[i] as number) * reached(i)
  for (const k of w.gapLinks) {
    const { from, to } = plan.links[k] as (typeof plan.links)[number]
    const share = w.gapShare[k] as number
    const enters = share * reached(from) + (1 - share) * reached(to)
    const given = (w.gapConductance[k] as number) * ((w.gapWall[k] as number) - enters)
    w.gapHeat[k] = given
    fromWalls += given
  }
  w.ledger.fromWalls = fromWalls
  for (let i = 0; i < n; i++)
    temperature[i] = mixtureTemperature(
      basis,
      gasFraction[i] as number,
      enthalpy[i] as number,
      temperature[i] as number,
    )
}
