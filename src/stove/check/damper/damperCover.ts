import type { Metres } from '#basis/units.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import type { BandPart, RowOpening, WallHole } from '#stove/model.ts'
import { holeArea } from '#stove/opening/area.ts'
import { openingOverlap } from '#stove/opening/overlap.ts'
import { placeRow, wallHoleSize } from '#stove/opening/row.ts'
import type { PlacedCan } from '../context.ts'
import { wrappedAlong } from '../spacing/wallOutline.ts'

/** A hole of the can or a window of its band: middle round the can and up from the band's lower edge [m]. */
interface Cut {
  readonly hole: WallHole
  readonly x: number
  readonly y: number
  readonly reach: number
}

/** A band as it lies on its can. */
export interface Damper {
  readonly band: PlacedPart & { readonly part: BandPart }
  readonly can: PlacedCan
  readonly circumference: number
}

const cutsOf = (row: RowOpening, circumference: number, turned: number, rise: number): readonly Cut[] =>
  placeRow(row, circumference as Metres).map(({ along, height }) => ({
    hole: row.hole,
    x: along + (turned / 360) * circumference,
    y: height + rise,
    reach: wallHoleSize(row.hole).round / 2,
  }))

/** The rows of windows in a damper’s band. */
export const windowsOf = ({ band }: Damper): readonly RowOpening[] =>
  [...band.part.openings.values()].filter((opening) => opening.kind === 'row')

/** A window as wide as can be and as high as the band: what of a hole lies under the band at all. */
const blankBand = (height: Metres): WallHole => ({
  shape: 'window',
  width: 1e3 as Metres,
  height,
  foot: 'square',
  bit: null,
})

/**
 * Share of a row's area that stays open with the band turned by an angle from the can's front mark: what
 * lies above or below the band, and what lies under its windows [1]. Exact, on the unrolled wall.
 */
const openShare = (damper: Damper, row: RowOpening): ((angle: number) => number) => {
  const { band, can, circumference } = damper
  const height = band.part.height
  const holes = cutsOf(row, circumference, 0, can.base - band.base)
  const windows = windowsOf(damper).flatMap((window) => cutsOf(window, circumference, 0, 0))
  const total = holes.length * holeArea(row)
  const blank = blankBand(height)
  const uncovered = holes.reduce(
    (sum, { hole, y }) => sum + holeArea(row) - openingOverlap(hole, blank, 0, height / 2 - y),
    0,
  )
  return (angle) => {
    const turn = (angle / 360) * circumference
    let free = uncovered
    for (const hole of holes) {
      for (const window of windows) {
        const along = wrappedAlong(window.x + turn - hole.x, circumference)
        if (Math.abs(along) < window.reach + hole.reach)
          free += openingOverlap(hole.hole, window.hole, along, window.y - hole.y)
      }
    }
    return Math.min(1, free / total)
  }
}

const commonDivisor = (one: number, other: number): number =>
  other === 0 ? one : commonDivisor(other, one % other)

/** A row without left-out positions looks the same after one pitch; another only after a full turn. */
const symmetry = ({ count, leftOut }: RowOpening): number => (leftOut.length === 0 ? count : 1)

/**
 * After this turn of the band everything looks as before [deg]. Turning by a pitch of the windows changes
 * nothing, nor does a pitch of the holes, so neither does their greatest common measure.
 */
const period = (damper: Damper, row: RowOpening): number => {
  const windows = windowsOf(damper).map(symmetry).reduce(commonDivisor, 0)
  const holes = symmetry(row)
  const both = windows === 0 ? holes : (windows * holes) / commonDivisor(windows, holes)
  return 360 / both
}

/**
 * Turns worth trying [deg]: where some window stands middle over some hole, and steps of a degree or
 * finer between. The former come first, for that is where a maker turns it to.
 */
const turns = (damper: Damper, row: RowOpening): readonly number[] => {
  const full = period(damper, row)
  const bearings = (one: RowOpening): readonly number[] =>
    placeRow(one, damper.circumference as Metres).map(({ bearing }) => bearing)
  const holes = bearings(row)
  const over = windowsOf(damper).flatMap((window) =>
    bearings(window).flatMap((to) => holes.map((from) => (((from - to) % full) + full) % full)),
  )
  const steps = Math.max(24, Math.ceil(full))
  const all = [...over, ...Array.from({ length: steps }, (_, step) => (step * full) / steps)]
  // Alignments that differ by rounding are one.
  const seen = new Set<number>()
  return all.filter((angle) => {
    const mark = Math.round(angle * 1e6)
    return !seen.has(mark) && seen.add(mark)
  })
}

/** How far a row can be opened and shut by turning its band. */
export interface DamperRange {
  readonly most: number
  readonly least: number
  /** As the stove file places the band. */
  readonly asDrawn: number
  /** A turn from there, clockwise positive, that opens the row as far as it goes [deg]. */
  readonly turnToOpen: number
}

/** How far a damper opens and shuts a row: shares of the row’s own area over one pitch of turning [1]. */
export const damperRange = (damper: Damper, row: RowOpening): DamperRange => {
  const share = openShare(damper, row)
  const tried = turns(damper, row).map((angle) => ({ angle, open: share(angle) }))
  const opens = tried.map(({ open }) => open)
  const most = Math.max(...opens)
  const drawn = damper.band.turned - damper.can.turned
  const full = period(damper, row)
  const open = tried.find((one) => one.open > most - 1e-9)
  return {
    most,
    least: Math.min(...opens),
    asDrawn: share(drawn),
    turnToOpen: wrappedAlong((open?.angle ?? drawn) - drawn, full),
  }
}
