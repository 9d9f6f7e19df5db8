import { orThrow } from '#basis/problem.ts'
import type { Metres } from '#basis/units.ts'
import { type PlacedPart, placeParts } from '#stove/assembly/place.ts'
import { type Profile, profileOf } from '#stove/assembly/profile.ts'
import type { PlacedCan } from '#stove/measure/fuelBed.ts'
import type { DiscPart, Finding, Shelf, Stove } from '#stove/model.ts'

export interface PlacedDisc extends PlacedPart {
  readonly part: DiscPart
}

export type { PlacedCan } from '#stove/measure/fuelBed.ts'

/** What every check looks at. */
export interface CheckContext {
  readonly stove: Stove
  readonly placed: readonly PlacedPart[]
  readonly profile: Profile
  readonly shelf: Shelf | null
}

/** One question put to a stove. Pure: the same stove and shelf give the same findings. */
export type Check = (context: CheckContext) => readonly Finding[]

/** Places the parts; throws `BadInput` for a stove whose assembly names parts that are not there. */
export const contextOf = (stove: Stove, shelf: Shelf | null): CheckContext => {
  const placed = orThrow(placeParts(stove))
  return { stove, placed, profile: profileOf(placed), shelf }
}

export const isCan = (placed: PlacedPart): placed is PlacedCan => placed.part.form === 'can'
const isDisc = (placed: PlacedPart): placed is PlacedDisc => placed.part.form === 'disc'

export const placedNamed = (context: CheckContext, name: string | null): PlacedPart | null =>
  context.placed.find((placed) => placed.name === name) ?? null

/** The disc over the fuel: the lowest of that role above the fuel can's floor. */
export const concentratorOf = (context: CheckContext): PlacedDisc | null =>
  context.placed
    .filter(isDisc)
    .filter(({ part }) => part.role === 'concentrator')
    .sort((one, other) => one.base - other.base)[0] ?? null

/** Circumference of a can's body, outside, where the maker marks out [m]. */
export const circumferenceOf = ({ part }: PlacedCan): Metres =>
  (Math.PI * part.can.bodyDiameter.value) as Metres
