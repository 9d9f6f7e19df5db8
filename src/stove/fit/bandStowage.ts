import { insideHeight, isSeamed, isWhole, seamAt } from '#stove/can/ends.ts'
import { narrowestInside, widestBody } from '#stove/can/taper.ts'
import type { BandPart, CanPart } from '#stove/model.ts'
import type { Solid, SolidRing } from './solid.ts'

/** Where a band goes in the bundle: clasped round a can, curled inside one, or as a hoop of its own. */
export type BandStowage =
  | OnCan
  | { readonly band: string; readonly where: 'alone'; readonly can: null; readonly hoop: Solid }

interface OnCan {
  readonly band: string
  readonly where: 'round' | 'inside'
  readonly can: string
  /** The stretch of wall it may slide along, as thick as it is there. */
  readonly ring: SolidRing
}

export interface LaidBand {
  readonly name: string
  readonly part: BandPart
  /** The can it belongs on, or null where nobody says. */
  readonly wornOn: string | null
  /** Laid flat [m]. */
  readonly length: number
}

/** Turns a strip makes at a radius; an overlap too short to see does not count. */
const turnsAt = (length: number, radius: number): number =>
  Math.max(1, Math.ceil(length / (2 * Math.PI * radius) - 1e-6))

const round = (band: LaidBand, name: string, { can }: CanPart): readonly BandStowage[] => {
  const from = isSeamed(can.bottom) ? can.seamHeight : 0
  const to = can.height.value - (isSeamed(can.top) ? can.seamHeight : 0)
  if (to - from < band.part.height) return []
  const { thickness } = band.part
  const body = widestBody(can)
  const inner = (body.value + body.tolerance) / 2
  const outer = inner + thickness * turnsAt(band.length, inner + thickness / 2)
  // It may slide up and down, so its room is the whole stretch between the seams.
  return [{ band: band.name, where: 'round', can: name, ring: { inner, outer, bottom: from, top: to } }]
}

const inside = (band: LaidBand, name: string, { can }: CanPart): readonly BandStowage[] => {
  if ((isWhole(can.bottom) && isWhole(can.top)) || insideHeight(can) < band.part.height) return []
  const { thickness } = band.part
  const wall = narrowestInside(can)
  const outer = (wall.value - wall.tolerance) / 2
  const inner = outer - thickness * turnsAt(band.length, outer - thickness / 2)
  if (inner <= 0) return []
  const bottom = can.bottom.kind === 'plain' ? can.bottom.countersink : 0
  const top = can.height.value - (can.top.kind === 'plain' ? can.top.countersink : 0)
  return [{ band: band.name, where: 'inside', can: name, ring: { inner, outer, bottom, top } }]
}

const alone = (band: LaidBand): BandStowage => {
  const { thickness, height } = band.part
  const inner = Math.max(0, band.length / (2 * Math.PI) - thickness / 2)
  return {
    band: band.name,
    where: 'alone',
    can: null,
    hoop: { rings: [{ inner, outer: inner + thickness, bottom: 0, top: height }], height },
  }
}

/** Half over the narrower of a can's two seams [m]. */
const narrowerSeam = (can: CanPart['can']): number => {
  const [bottom, top] = [seamAt(can, 'bottom'), seamAt(can, 'top')]
  return Math.min(bottom.value + bottom.tolerance, top.value + top.tolerance) / 2
}

/**
 * Whether a band takes no room where it is: clasped between two seams that stand out further than it does,
 * nothing can touch it that does not touch a seam first.
 */
const takesNoRoom = (stowage: BandStowage, cans: ReadonlyMap<string, CanPart>): boolean => {
  if (stowage.where !== 'round') return false
  const can = cans.get(stowage.can)?.can
  return (
    can !== undefined && isSeamed(can.bottom) && isSeamed(can.top) && stowage.ring.outer <= narrowerSeam(can)
  )
}

const stretchOf = ({ ring }: OnCan): number => ring.top - ring.bottom

/** Everywhere a band can go, the likeliest first: on its own can, on another, inside one, by itself. */
const placesOf = (band: LaidBand, cans: ReadonlyMap<string, CanPart>): readonly BandStowage[] => {
  const named = [...cans].sort(
    ([one], [other]) => Number(other === band.wornOn) - Number(one === band.wornOn),
  )
  return [
    ...named.flatMap(([name, can]) => round(band, name, can)),
    ...named.flatMap(([name, can]) => inside(band, name, can)),
    alone(band),
  ]
}

/** Whether bands that share a can fit one above the other on its wall. */
const fitTogether = (stowed: readonly BandStowage[], bands: readonly LaidBand[]): boolean =>
  stowed.every((place) => {
    if (place.where === 'alone') return true
    const sharing = stowed.filter(({ can, where }) => can === place.can && where === place.where)
    const height = bands
      .filter(({ name }) => sharing.some(({ band }) => band === name))
      .reduce((sum, { part }) => sum + part.height, 0)
    return height <= stretchOf(place)
  })

/**
 * Every way to stow all bands together. Where one takes no room, and would not even beside all the others,
 * nothing can be better, and its other places are left out.
 */
export const allStowages = (
  bands: readonly LaidBand[],
  cans: ReadonlyMap<string, CanPart>,
): readonly (readonly BandStowage[])[] => {
  const together = bands.reduce((sum, { part }) => sum + part.height, 0)
  const ways = bands.reduce<readonly (readonly BandStowage[])[]>(
    (sofar, band) => {
      const places = placesOf(band, cans)
      const free = places.find(
        (place) => place.where === 'round' && stretchOf(place) >= together && takesNoRoom(place, cans),
      )
      return sofar.flatMap((stowed) =>
        (free === undefined ? places : [free]).map((place) => [...stowed, place]),
      )
    },
    [[]],
  )
  return ways.filter((stowed) => fitTogether(stowed, bands))
}
