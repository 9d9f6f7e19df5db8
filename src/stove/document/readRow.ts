import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { closely } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import type { RowOpening, WallHole } from '#stove/model.ts'
import { closestPitch, wallHoleSize, wrapBearing } from '#stove/opening/row.ts'
import type { RowRead } from './openingSchema.ts'
import { type Place, problemAt, within } from './place.ts'

/** The wall a row is cut in. */
export interface Wall {
  readonly height: Metres
  /** Outside diameter of the plain wall; null where it is not known, as of a band that is round nothing. */
  readonly diameter: Metres | null
  /** What to call it in a message. */
  readonly name: string
}

const holeOf = (hole: RowRead['hole']): WallHole => {
  if ('bit' in hole) return { shape: 'round', diameter: hole.bit.diameter, bit: hole.bit.name }
  if ('diameter' in hole) return { shape: 'round', diameter: hole.diameter, bit: null }
  if ('slit' in hole) return { shape: 'slit', ...hole.slit }
  const { width, height, foot, bit } = hole.window
  return { shape: 'window', width, height, foot: foot ?? 'square', bit: bit?.name ?? null }
}

/** The fields of the hole that say how far it reaches round the wall and up it. */
const sizeFields = (
  hole: RowRead['hole'],
  place: Place,
): { readonly round: Place; readonly axial: Place } => {
  if ('bit' in hole) return { round: within(place, 'bit'), axial: within(place, 'bit') }
  if ('diameter' in hole) return { round: within(place, 'diameter'), axial: within(place, 'diameter') }
  if ('window' in hole)
    return { round: within(place, 'window', 'width'), axial: within(place, 'window', 'height') }
  const along = within(place, 'slit', 'length')
  const across = within(place, 'slit', 'width')
  return hole.slit.along === 'axis' ? { round: across, axial: along } : { round: along, axial: across }
}

const leftOutProblems = (leftOut: readonly number[], count: number, place: Place): readonly Problem[] => {
  const problems = leftOut.flatMap((position, index) => {
    const at = within(place, index)
    if (position > count)
      return [
        problemAt(
          at,
          'row.left-out-beyond',
          `a position from 1 to ${count}`,
          `The row has ${count} positions: correct this one, or "count".`,
        ),
      ]
    return leftOut.indexOf(position) === index
      ? []
      : [problemAt(at, 'row.left-out-twice', 'each position once', 'Delete the second one.')]
  })
  if (problems.length > 0 || leftOut.length < count) return problems
  return [
    problemAt(
      place,
      'row.all-left-out',
      `at most ${count - 1} of the ${count} positions`,
      'Leave at least one hole to cut, or delete the row.',
      `all ${count} positions`,
    ),
  ]
}

const sizeProblems = (
  row: RowOpening,
  wall: Wall,
  fields: ReturnType<typeof sizeFields>,
): readonly Problem[] => {
  const { round, axial } = wallHoleSize(row.hole)
  const problems: Problem[] = []
  // Straight through the can, a hole as wide as the can would leave no wall beside it.
  if (wall.diameter !== null && round >= wall.diameter)
    problems.push(
      problemAt(
        fields.round,
        'opening.wider-than-can',
        `less than the ${closely(wall.diameter)} of ${wall.name}`,
        'Look at the unit, or take a smaller hole.',
      ),
    )
  if (axial > wall.height)
    problems.push(
      problemAt(
        fields.axial,
        'opening.taller-than-wall',
        `at most the height of ${wall.name}, ${closely(wall.height)}`,
        'Look at the unit, or take a smaller hole.',
      ),
    )
  return problems
}

const heightProblems = (
  row: RowOpening,
  wall: Wall,
  from: 'bottom' | 'top',
  place: Place,
): readonly Problem[] => {
  const half = wallHoleSize(row.hole).axial / 2
  // A hole that just touches the edge is a matter for the checks.
  const slack = 1e-9
  if (row.height >= half - slack && row.height <= wall.height - half + slack) return []
  return [
    problemAt(
      place,
      'row.outside-wall',
      `${closely(half)} to ${closely(wall.height - half)} from either edge, for the whole opening to lie in the wall of ${wall.name}`,
      `The height is that of the middle of the opening, measured from the ${from} edge: measure again.`,
    ),
  ]
}

const overlapProblems = (row: RowOpening, wall: Wall, place: Place): readonly Problem[] => {
  if (wall.diameter === null) return []
  const circumference = (Math.PI * wall.diameter) as Metres
  const { round } = wallHoleSize(row.hole)
  const pitch = closestPitch(row, circumference)
  if (pitch > round) return []
  const most = Math.floor(circumference / round)
  const fit = most * round < circumference ? most : most - 1
  return [
    problemAt(
      place,
      'row.overlap',
      `fewer than ${closely(circumference)} ÷ ${closely(round)}, so at most ${fit} openings with any tin between them`,
      'Use fewer or smaller openings.',
      `${row.count} openings of ${closely(round)}, middles ${closely(pitch)} apart`,
    ),
  ]
}

/** A row as it lies in its wall. */
export const readRow = (read: RowRead, wall: Wall, place: Place): Outcome<RowOpening> => {
  const leftOut = read.leftOut ?? []
  const turn = (read.bearing ?? 0) + (read.stagger === true ? 180 / read.count : 0)
  const from = read.from ?? 'bottom'
  const row: RowOpening = {
    kind: 'row',
    duty: read.duty,
    hole: holeOf(read.hole),
    count: read.count,
    leftOut,
    height: (from === 'top' ? wall.height - read.height : read.height) as Metres,
    bearing: wrapBearing(turn),
    ...(from === 'top' ? { measuredFrom: from } : {}),
  }
  const positions = leftOutProblems(leftOut, read.count, within(place, 'leftOut'))
  if (positions.length > 0) return bad(...positions)
  const sizes = sizeProblems(row, wall, sizeFields(read.hole, within(place, 'hole')))
  if (sizes.length > 0) return bad(...sizes)
  const problems = [
    ...heightProblems(row, wall, from, within(place, 'height')),
    ...overlapProblems(row, wall, within(place, 'count')),
  ]
  return problems.length > 0 ? bad(...problems) : good(row)
}
