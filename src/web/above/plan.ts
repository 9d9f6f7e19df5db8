import type { PlacedPart } from '#stove/assembly/place.ts'
import type { RowOpening } from '#stove/model.ts'
import type { OpeningRef } from '#stove/moves/move.ts'
import { wallHoleSize, wrapBearing } from '#stove/opening/row.ts'

/**
 * The stove from above. Its front mark is at the bottom, towards whoever looks at the section; bearings run clockwise, so
 * 90° is on the left, as in the section.
 */
export interface PlanPoint {
  readonly x: number
  readonly y: number
}

/** A place from the middle, x to the right and y down the page [unit of the radius]. */
export const planPoint = (radius: number, bearing: number): PlanPoint => {
  const angle = (bearing * Math.PI) / 180
  return { x: -radius * Math.sin(angle), y: radius * Math.cos(angle) }
}

/** The bearing of a place from the middle [deg]. */
export const bearingOf = ({ x, y }: PlanPoint): number => wrapBearing((Math.atan2(-x, y) * 180) / Math.PI)

/** A ring of holes as it is seen from above. */
export interface PlanRow {
  readonly ref: OpeningRef
  readonly row: RowOpening
  /** Of the wall it is cut in, outside [m]. */
  readonly radius: number
  /** Turn of the part's front mark [deg]. */
  readonly turned: number
}

/** A wall as a ring [m]. */
export interface PlanWall {
  readonly part: string
  readonly radius: number
}

/** Walls from the outside in. */
export const planWalls = (placed: readonly PlacedPart[]): readonly PlanWall[] =>
  placed
    .flatMap(({ name, part }) =>
      part.form === 'can' ? [{ part: name, radius: part.can.bodyDiameter.value / 2 }] : [],
    )
    .sort((a, b) => b.radius - a.radius)

/** Rows that let air through, of cans and not of bands, from the outside in. */
export const planRows = (placed: readonly PlacedPart[]): readonly PlanRow[] =>
  placed
    .flatMap(({ name, part, turned }) =>
      part.form !== 'can'
        ? []
        : [...part.openings].flatMap(([opening, row]) =>
            row.kind !== 'row' || row.duty === 'fixing'
              ? []
              : [
                  {
                    ref: { part: name, opening },
                    row,
                    radius: part.can.bodyDiameter.value / 2,
                    turned: turned as number,
                  },
                ],
          ),
    )
    .sort((a, b) => b.radius - a.radius)

export interface PlanHole {
  readonly place: number
  /** From the stove's front [deg]. */
  readonly bearing: number
  readonly drilled: boolean
  /** Half the angle the hole takes up round the can [deg]. */
  readonly half: number
}

/** Every place of a row, left-out ones too. */
export const planHoles = ({ row, radius, turned }: PlanRow): readonly PlanHole[] => {
  const half = (wallHoleSize(row.hole).round / 2 / radius) * (180 / Math.PI)
  return Array.from({ length: row.count }, (_, i) => ({
    place: i + 1,
    bearing: wrapBearing(row.bearing + turned + (i * 360) / row.count),
    drilled: !row.leftOut.includes(i + 1),
    half,
  }))
}

/** The damper, if there is one, with its windows as they stand. */
export interface PlanDamper {
  readonly part: string
  readonly turned: number
  readonly windows: readonly PlanHole[]
  /** Of the can it goes round [m]. */
  readonly radius: number
}

export const planDamper = (placed: readonly PlacedPart[]): PlanDamper | null => {
  const band = placed.find(({ part }) => part.form === 'band')
  const host = placed.find(({ name }) => name === band?.placement.host)
  if (band === undefined || host?.part.form !== 'can') return null
  const radius = host.part.can.bodyDiameter.value / 2
  const windows = [...band.part.openings].flatMap(([opening, row]) =>
    row.kind === 'row'
      ? planHoles({ ref: { part: band.name, opening }, row, radius, turned: band.turned }).filter(
          ({ drilled }) => drilled,
        )
      : [],
  )
  return { part: band.name, turned: band.turned, windows, radius }
}

/** An arc of a ring from one bearing to another, as the data of a path about a middle [px]. */
export const arcPath = (middle: PlanPoint, radius: number, from: number, to: number): string => {
  const [a, b] = [planPoint(radius, from), planPoint(radius, to)]
  const far = to - from > 180 ? 1 : 0
  const at = ({ x, y }: PlanPoint): string => `${(middle.x + x).toFixed(2)} ${(middle.y + y).toFixed(2)}`
  return `M${at(a)}A${radius.toFixed(2)} ${radius.toFixed(2)} 0 ${far} 1 ${at(b)}`
}
