import type { Finding, RowOpening } from '#stove/model.ts'
import type { Check } from '../context.ts'
import { SAY } from '../finding.ts'
import { called, long, openingWord } from '../phrase.ts'
import { wallsOf } from './wall.ts'
import { closestBetweenRows, movedOutlines, rowOutlines, type WallOutline } from './wallOutline.ts'
import { gradeWeb, lesserWeb, webOfWallHole } from './web.ts'

interface PlacedRow {
  readonly opening: string
  readonly row: RowOpening
  readonly outlines: readonly WallOutline[]
}

const gapAfter = (
  lower: PlacedRow,
  upper: PlacedRow,
  circumference: number,
  rise: number,
  turned: number,
): number =>
  closestBetweenRows(
    lower.outlines,
    movedOutlines(upper.outlines, circumference, rise, turned),
    circumference,
  )?.gap ?? Number.POSITIVE_INFINITY

/** The least whole half millimetre the upper row has to rise to clear `wanted`; the gap grows with every step. */
const riseTo = (lower: PlacedRow, upper: PlacedRow, circumference: number, wanted: number): number => {
  let [low, high] = [0, 1]
  const clears = (steps: number): boolean =>
    gapAfter(lower, upper, circumference, steps * 0.0005, 0) >= wanted - 1e-9
  while (!clears(high) && high < 4096) [low, high] = [high, high * 2]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (clears(middle)) high = middle
    else low = middle
  }
  return high * 0.0005
}

/** The smallest turn in whole degrees within one pitch that clears `wanted`; null for none. */
const turnTo = (lower: PlacedRow, upper: PlacedRow, circumference: number, wanted: number): number | null => {
  for (let turn = 1; turn <= 360 / upper.row.count; turn += 1)
    for (const signed of [turn, -turn])
      if (gapAfter(lower, upper, circumference, 0, signed) >= wanted - 1e-9) return signed
  return null
}

const remedy = (lower: PlacedRow, upper: PlacedRow, circumference: number, wanted: number): string => {
  const height = upper.row.height + riseTo(lower, upper, circumference, wanted)
  const turn = turnTo(lower, upper, circumference, wanted)
  const rise = `${turn === null ? 'P' : 'p'}ut ${called(upper.opening)} ${long(height)} above the bottom edge`
  return turn === null
    ? `${rise}.`
    : `Turn ${called(upper.opening)} ${Math.abs(turn)}° ${turn > 0 ? 'clockwise' : 'anticlockwise'}, or ${rise}.`
}

const sentenceOf = (
  lower: PlacedRow,
  upper: PlacedRow,
  part: string,
  tin: number,
  positions: readonly [number, number],
  least: number,
  full: number,
): string => {
  const which = `${openingWord(lower.row)} ${positions[0]} of ${called(lower.opening)} and ${openingWord(upper.row)} ${positions[1]} of ${called(upper.opening)} on ${called(part)}`
  const capital = which.charAt(0).toUpperCase() + which.slice(1)
  if (tin <= 0) return `${capital} run into each other.`
  const left = `${capital} leave ${long(tin)} of tin between them`
  return tin < least
    ? `${left}; thin sheet needs at least ${long(least)}, twice its thickness.`
    : `${left}; a hand drill wants about the width of the smaller one (${long(full)}).`
}

/** Rows on one can whose openings come near each other, each at its true bearing. */
export const rowsMeet: Check = (context) => {
  const findings: Finding[] = []
  for (const { part, circumference, sheet, rows: all } of wallsOf(context)) {
    const rows = all
      .map(([opening, row]) => ({ opening, row, outlines: rowOutlines(opening, row, circumference) }))
      // A stable sort: rows of one height keep the order of the file.
      .sort((one, other) => one.row.height - other.row.height)
    for (const [index, lower] of rows.entries()) {
      for (const upper of rows.slice(index + 1)) {
        const closest = closestBetweenRows(lower.outlines, upper.outlines, circumference)
        if (closest === null) continue
        const web = lesserWeb(webOfWallHole(lower.row.hole, sheet), webOfWallHole(upper.row.hole, sheet))
        const severity = gradeWeb(closest.gap, web)
        if (severity === null) continue
        const positions = [closest.first.position, closest.second.position] as const
        findings.push(
          SAY[severity](
            'spacing.rows-meet',
            { part, opening: upper.opening },
            sentenceOf(lower, upper, part, closest.gap, positions, web.least, web.full),
            remedy(lower, upper, circumference, web.full),
          ),
        )
      }
    }
  }
  return findings
}
