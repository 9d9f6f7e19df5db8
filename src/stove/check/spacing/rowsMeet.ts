import { long } from '#basis/text/bothUnits.ts'
import type { Finding } from '#stove/model.ts'
import type { Check } from '../context.ts'
import { SAY } from '../finding.ts'
import { called, openingWord } from '../phrase.ts'
import { type LaidRow, partRows, webBetween } from './partRows.ts'
import { type Wall, wallsOf } from './wall.ts'
import { type Closest, closestBetweenRows, rowOutlines } from './wallOutline.ts'
import { gradeWeb, type Web } from './web.ts'

const sentenceOf = (lower: LaidRow, upper: LaidRow, part: string, closest: Closest, web: Web): string => {
  const one = `${openingWord(lower.row)} ${closest.first.position} of ${called(lower.opening)}`
  const other = `${openingWord(upper.row)} ${closest.second.position} of ${called(upper.opening)}`
  const both = `${one.charAt(0).toUpperCase()}${one.slice(1)} and ${other} on ${called(part)}`
  if (closest.gap <= 0) return `${both} run into each other.`
  const left = `${both} leave ${long(closest.gap)} of tin between them`
  return closest.gap < web.least
    ? `${left}; thin sheet needs at least ${long(web.least)}, twice its thickness.`
    : `${left}; a hand drill wants about the width of the smaller one, ${long(web.full)}.`
}

const onWall = (wall: Wall): readonly Finding[] => {
  const rows = wall.rows
    .map(
      ([opening, row]): LaidRow => ({
        opening,
        row,
        outlines: rowOutlines(opening, row, wall.circumference),
      }),
    )
    // A stable sort: rows of one height keep the order of the file.
    .sort((one, other) => one.row.height - other.row.height)
  const findings: Finding[] = []
  for (const [index, lower] of rows.entries()) {
    for (const upper of rows.slice(index + 1)) {
      const closest = closestBetweenRows(lower.outlines, upper.outlines, wall.circumference)
      if (closest === null) continue
      const web = webBetween(lower, upper, wall.sheet)
      const severity = gradeWeb(closest.gap, web)
      if (severity === null) continue
      const others = rows.filter((row) => row !== lower && row !== upper)
      findings.push(
        SAY[severity](
          'spacing.rows-meet',
          { part: wall.part, opening: upper.opening },
          sentenceOf(lower, upper, wall.part, closest, web),
          partRows({ wall, lower, upper, others, web }),
        ),
      )
    }
  }
  return findings
}

/** Rows on one can whose openings come near each other, each at its true bearing. */
export const rowsMeet: Check = (context) => wallsOf(context).flatMap(onWall)
