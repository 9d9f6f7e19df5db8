import { long } from '#basis/text/bothUnits.ts'
import type { WallZone } from '#stove/can/zones.ts'
import type { Finding, RowOpening, Shelf } from '#stove/model.ts'
import { wallHoleSize } from '#stove/opening/row.ts'
import type { Check } from '../context.ts'
import { SAY, stop } from '../finding.ts'
import { level, says } from '../phrase.ts'
import { TIN } from '../rules.ts'
import { heightRemedy, tinToZone } from './clearHeight.ts'
import { type Wall, wallsOf } from './wall.ts'
import { gradeWeb, type Web, webOfWallHole } from './web.ts'

interface Told {
  readonly severity: Finding['severity']
  /** Tin left; less is worse [m]. */
  readonly tin: number
  /** The sentence after "The 8 holes of 16 mm in … on …". */
  readonly sentence: string
}

/** A trimmed edge has no height; the bottom of a drawn can has its rounded corner. */
const isCutEdge = ({ why, from, to }: WallZone): boolean => why === 'edge' && from === to

const overlapping = ({ hole }: RowOpening, zone: WallZone): Omit<Told, 'tin'> | null => {
  const drilled = hole.shape === 'round'
  switch (zone.why) {
    case 'bead':
      return {
        severity: 'warn',
        sentence: 'lie on a rolled bead, where a bit wanders and a template does not lie flat.',
      }
    case 'seam':
      // Three layers of the end and two of the body [bib:cfia].
      return drilled
        ? {
            severity: 'stop',
            sentence: 'reach into the seam: the bit would meet five layers of tin and snatch.',
          }
        : {
            severity: 'warn',
            sentence: 'reach into the seam: five layers of tin, which snips will not cut cleanly.',
          }
    case 'edge':
      if (!isCutEdge(zone))
        return {
          severity: 'warn',
          sentence: 'lie on the rounded corner of the drawn bottom, where a bit slides off.',
        }
      // A notch from the cut edge inward is a usual way to let gas out; a hole over the edge is not.
      return drilled ? { severity: 'warn', sentence: 'break through the cut edge.' } : null
  }
}

const nearBead = (tin: number, sheet: number): Omit<Told, 'tin'> | null =>
  tin < TIN.holeToFormed.value * sheet
    ? { severity: 'note', sentence: `leave only ${long(tin)} of flat tin to a rolled bead.` }
    : null

const nearEnd = (
  { hole }: RowOpening,
  zone: WallZone,
  tin: number,
  web: Web,
  sheet: number,
): Omit<Told, 'tin'> | null => {
  const least = (zone.why === 'edge' ? TIN.holeToEdge : TIN.holeToFormed).value * sheet
  const wanted = { least, poor: Math.max(least, web.poor), full: Math.max(least, web.full) }
  const severity = gradeWeb(tin, wanted)
  if (severity === null) return null
  const reason =
    tin < least
      ? `thin sheet needs at least ${long(least)} there.`
      : hole.shape === 'round'
        ? `a hand drill wants about one hole’s width, ${long(wanted.full)}.`
        : `a strip under ${long(wanted.full)} bends when it is cut.`
  const end = `${zone.from <= 0 ? 'bottom' : 'top'} ${zone.why}`
  return { severity, sentence: `leave ${long(tin)} of tin to the ${end}; ${reason}` }
}

const told = (row: RowOpening, zone: WallZone, web: Web, sheet: number): Told | null => {
  const half = wallHoleSize(row.hole).axial / 2
  const tin = tinToZone(row.height - half, row.height + half, zone)
  const notch = isCutEdge(zone) && row.hole.shape !== 'round' && tin <= TIN.edgeSlack.value
  const found =
    tin <= 0 || notch
      ? overlapping(row, zone)
      : zone.why === 'bead'
        ? nearBead(tin, sheet)
        : nearEnd(row, zone, tin, web, sheet)
  return found === null ? null : { ...found, tin }
}

/** Of several zones of one sort, the one that is nearest says it all: the remedy heeds every zone. */
const worstOf = (all: readonly Told[]): Told | null =>
  all.reduce<Told | null>((worst, found) => (worst === null || found.tin < worst.tin ? found : worst), null)

const SORTS: readonly WallZone['why'][] = ['seam', 'bead', 'edge']

const onWall = (wall: Wall, shelf: Shelf | null): readonly Finding[] =>
  wall.rows.flatMap(([opening, row]) => {
    const where = { part: wall.part, opening }
    const they = (predicate: string): string => says(row, opening, wall.part, predicate)
    if (row.height < 0 || row.height > wall.height)
      return [
        stop(
          'spacing.off-the-wall',
          where,
          they(
            `have their middle ${level(row.height)} the bottom edge; the wall is ${long(wall.height)} high.`,
          ),
          'Give a height between the two edges.',
        ),
      ]
    const web = webOfWallHole(row.hole, wall.sheet)
    return SORTS.flatMap((why) => {
      const found = worstOf(
        wall.zones
          .filter((zone) => zone.why === why)
          .map((zone) => told(row, zone, web, wall.sheet))
          .filter((one) => one !== null),
      )
      if (found === null) return []
      const say = SAY[found.severity]
      return [say(`spacing.${why}`, where, they(found.sentence), heightRemedy(row, wall, web, shelf))]
    })
  })

/** Tin left between a row and the edges, seams and beads of its wall. */
export const rowEdges: Check = (context) => wallsOf(context).flatMap((wall) => onWall(wall, context.shelf))
