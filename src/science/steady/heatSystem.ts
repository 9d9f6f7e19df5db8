import { planElimination, type SparseElimination } from '#basis/numerics/sparseElimination.ts'
import type { DraughtPlan } from '#science/draft/plan.ts'
import { meetingPlaces } from './linkTable.ts'
import type { GapWalls, WallModel } from './wallModel.ts'

/**
 * The heat balances of all nodes and walls as one linear system in the changes of their temperatures: gas and tin exchange
 * far more heat than they carry on, so each is found with the other. Unknowns are the nodes, the open air, whose
 * temperature stays, and the walls. Heat leaves one unknown and comes to another, so every column adds up to 0 or more and
 * elimination needs no pivots.
 */
export interface HeatSystem {
  readonly elimination: SparseElimination
  /** Minus the slope of every surplus by every temperature [W/K]. */
  readonly matrix: Float64Array
  /** Heat that comes to each unknown less what leaves it [W]; after the solve, the change of its temperature [K]. */
  readonly surplus: Float64Array
  /** Where the entries are held: of each unknown itself, and of the pairs that links, contacts and facing walls make. */
  readonly diagonal: Int32Array
  readonly links: Int32Array
  readonly contacts: Int32Array
  readonly facing: Int32Array
  /** Of each gap: its unknowns (below, above, its walls) and the places where each meets each, by rows. */
  readonly gaps: readonly GapPlaces[]
}

export interface GapPlaces {
  readonly unknowns: Int32Array
  readonly places: Int32Array
  /** Share of the heat its air takes that each of them gets, and by how much each one's warmth adds to that heat [1]. */
  readonly gets: Float64Array
  readonly gives: Float64Array
}

/** The number of a wall among the unknowns. */
export const unknownOfWall = (nodes: number, wall: number): number => nodes + 1 + wall

/** Lays out the heat system of a plan: its pattern and its places, before any number is known. */
export const layOutHeat = ({ nodes, links }: DraughtPlan, walls: WallModel): HeatSystem => {
  const n = nodes.length
  const size = n + 1 + walls.stretches.length
  const wallAt = (s: number): number => unknownOfWall(n, s)
  const linkPairs = links.map(({ from, to }) => [from, to] as const)
  const contactPairs = walls.contacts.map(({ wall, node }) => [wallAt(wall), node] as const)
  const facingPairs = walls.facing.map(({ inner, outer }) => [wallAt(inner), wallAt(outer)] as const)
  const inGap = (gap: GapWalls): number[] => {
    const { from, to } = links[gap.link] as (typeof links)[number]
    return [from, to, ...gap.walls.map(wallAt)]
  }
  const gapPairs = walls.gaps.flatMap((gap) => {
    const members = inGap(gap)
    return members.flatMap((a, i) => members.slice(i + 1).map((b) => [a, b] as const))
  })
  const elimination = planElimination(size, [...linkPairs, ...contactPairs, ...facingPairs, ...gapPairs])
  return {
    elimination,
    matrix: new Float64Array(elimination.places),
    surplus: new Float64Array(size),
    diagonal: Int32Array.from({ length: size }, (_, i) => elimination.place(i, i)),
    links: meetingPlaces(elimination, linkPairs),
    contacts: meetingPlaces(elimination, contactPairs),
    facing: meetingPlaces(elimination, facingPairs),
    gaps: walls.gaps.map((gap) => {
      const members = inGap(gap)
      return {
        unknowns: Int32Array.from(members, (i) => (i < 0 ? n : i)),
        places: Int32Array.from(members.flatMap((i) => members.map((j) => elimination.place(i, j)))),
        gets: Float64Array.of(0, 0, ...gap.weights.map((weight) => -weight)),
        gives: Float64Array.of(0, 0, ...gap.weights),
      }
    }),
  }
}

/**
 * Books a flow of heat from one unknown to another, with its slopes by the temperature there and here [W], [W/K]. `at` is
 * where the pair's four places begin.
 */
export const bookHeat = (
  { matrix, surplus }: HeatSystem,
  from: number,
  to: number,
  meets: Int32Array,
  at: number,
  heat: number,
  slopeFrom: number,
  slopeTo: number,
): void => {
  const aa = meets[at] as number
  const ab = meets[at + 1] as number
  const bb = meets[at + 2] as number
  const ba = meets[at + 3] as number
  surplus[from] = (surplus[from] as number) - heat
  surplus[to] = (surplus[to] as number) + heat
  matrix[aa] = (matrix[aa] as number) + slopeFrom
  matrix[ab] = (matrix[ab] as number) - slopeTo
  matrix[bb] = (matrix[bb] as number) + slopeTo
  matrix[ba] = (matrix[ba] as number) - slopeFrom
}
