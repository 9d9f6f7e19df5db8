import type { Front } from '#science/fire/front.ts'
import type { FrontPlace } from './frontPlace.ts'
import { bookGas, changeGas } from './gasHeat.ts'
import { bookWalls, changeWalls } from './wallHeat.ts'
import type { Workspace } from './workspace.ts'

/**
 * Brings gas and walls together nearer to balance for the flows and the composition at hand: one Newton step in all of their
 * temperatures, conductivities and emissivities as they were. Returns the largest change of a wall's temperature [K].
 */
export const balanceHeat = (w: Workspace, front: Front, place: FrontPlace, dryFuelRate: number): number => {
  const { elimination, matrix, surplus, diagonal } = w.heat
  matrix.fill(0)
  surplus.fill(0)
  bookGas(w, front, place)
  bookWalls(w, front, dryFuelRate)
  // The open air stays as it is, whatever it gets.
  const air = w.plan.nodes.length
  matrix[diagonal[air] as number] = 1
  surplus[air] = 0
  elimination.solve(matrix, surplus)
  const change = changeWalls(w)
  changeGas(w, front)
  return change
}
