import { bedPassage, tippedResistance } from '#science/fuel/bedResistance.ts'
import type { FrontPlace } from './frontPlace.ts'
import type { SteadyInput } from './input.ts'

/** What each stretch of the bed puts in the way of a flow with the front where it is: raw fuel up to it, char above. */
export interface BedTable {
  /** Depth of raw fuel and of char in the stretch [m]. */
  readonly rawDepth: Float64Array
  readonly charDepth: Float64Array
  /** As `PassageShape` [1/m³], [1/m⁴]. */
  readonly rawViscous: Float64Array
  readonly rawInertial: Float64Array
  readonly charViscous: Float64Array
  readonly charInertial: Float64Array
  /** From the node above the stretch up to the stretch's top [m]. */
  readonly overNode: Float64Array
}

export const emptyBed = (segments: number): BedTable => ({
  rawDepth: new Float64Array(segments),
  charDepth: new Float64Array(segments),
  rawViscous: new Float64Array(segments),
  rawInertial: new Float64Array(segments),
  charViscous: new Float64Array(segments),
  charInertial: new Float64Array(segments),
  overNode: new Float64Array(segments),
})

/** Lays the bed out for one place of the front. */
export const layBed = (
  table: BedTable,
  { plan, fuel, coefficients }: SteadyInput,
  { height, charLeft }: FrontPlace,
): void => {
  const { bed, nodes, links } = plan
  const charResistance = tippedResistance(coefficients.charVoid, fuel.pieceDiameter * coefficients.charShrink)
  for (const [s, { link, from, to }] of bed.segments.entries()) {
    const rawDepth = Math.min(Math.max(height, from), to) - from
    const charDepth = to - from - rawDepth
    const raw = bedPassage(fuel.resistance, bed.area, rawDepth)
    const char = bedPassage(charResistance, bed.area, charDepth * coefficients.charSettle * charLeft)
    const top = bed.base + to
    table.rawDepth[s] = rawDepth
    table.charDepth[s] = charDepth
    table.rawViscous[s] = raw.viscous
    table.rawInertial[s] = raw.inertial
    table.charViscous[s] = char.viscous
    table.charInertial[s] = char.inertial
    table.overNode[s] = top - (nodes[links[link]?.to ?? -1]?.height ?? top)
  }
}
