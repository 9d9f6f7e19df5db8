import { long } from '#basis/text/bothUnits.ts'
import type { Finding, RowOpening, Shelf } from '#stove/model.ts'
import { wallHoleSize } from '#stove/opening/row.ts'
import type { Check } from '../context.ts'
import { SAY } from '../finding.ts'
import { largestBit } from '../handBits.ts'
import { openingWord, percent, says } from '../phrase.ts'
import { wallsOf } from './wall.ts'
import { closestInRow, rowOutlines } from './wallOutline.ts'
import { gradeWeb, type Web, webOfWallHole } from './web.ts'

interface Crowded {
  readonly row: RowOpening
  readonly circumference: number
  /** Tin between the closest two [m]. */
  readonly tin: number
  readonly web: Web
  readonly shelf: Shelf | null
}

/** The most positions round the can that leave the full web; 0 where not even one does. */
const roomFor = ({ row, circumference, web }: Crowded): number =>
  Math.floor((circumference / (wallHoleSize(row.hole).round + web.full)) * (1 + 1e-9))

const fewer = (crowded: Crowded): string | null => {
  const count = roomFor(crowded)
  const { row } = crowded
  if (count < 1 || count >= row.count) return null
  const word = `${openingWord(row)}${count === 1 ? '' : 's'}`
  return `${count} ${word} round the can (${percent(count / row.count)} of the area)`
}

const narrower = ({ row, tin, shelf }: Crowded): string | null => {
  if (row.hole.shape !== 'round') return null
  const pitch = tin + row.hole.diameter
  const bit = largestBit(shelf, pitch / 2)
  return bit === null ? null : `${bit.text} (${percent((bit.diameter / row.hole.diameter) ** 2)} of the area)`
}

const remedy = (crowded: Crowded): string => {
  const ways = [fewer(crowded), narrower(crowded)].filter((way) => way !== null)
  return ways.length === 0
    ? 'Use fewer and smaller openings, or share them between two rows.'
    : `Use ${ways.join(', or ')}.`
}

const sentenceOf = ({ row, tin, web }: Crowded, opening: string, part: string): string => {
  const they = (predicate: string): string => says(row, opening, part, predicate)
  if (tin <= 0) return they('run into each other.')
  const left = they(`leave ${long(tin)} of tin between them`)
  if (tin < web.least) return `${left}; thin sheet needs at least ${long(web.least)}, twice its thickness.`
  return row.hole.shape === 'round'
    ? `${left}; a hand drill wants about one hole’s width, ${long(web.full)}.`
    : `${left}; a strip under ${long(web.full)} bends when it is cut.`
}

/** Tin left between neighbours in a row, at their bearings round the can. */
export const rowSpacing: Check = (context) => {
  const findings: Finding[] = []
  for (const { part, circumference, sheet, rows } of wallsOf(context)) {
    for (const [opening, row] of rows) {
      const closest = closestInRow(rowOutlines(opening, row, circumference), circumference)
      if (closest === null) continue
      const web = webOfWallHole(row.hole, sheet)
      const severity = gradeWeb(closest.gap, web)
      if (severity === null) continue
      const crowded: Crowded = { row, circumference, tin: closest.gap, web, shelf: context.shelf }
      findings.push(
        SAY[severity](
          'spacing.neighbours',
          { part, opening },
          sentenceOf(crowded, opening, part),
          remedy(crowded),
        ),
      )
    }
  }
  return findings
}
