import { long } from '#basis/text/bothUnits.ts'
import type { Profile } from '#stove/assembly/profile.ts'
import { type FuelBed, fuelBedOf, fuelCanOf } from '#stove/measure/fuelBed.ts'
import { type OpeningPlace, placedOpenings } from '#stove/measure/openingPlace.ts'
import type { Finding } from '#stove/model.ts'
import { type Check, concentratorOf } from '../context.ts'
import { note, warn } from '../finding.ts'
import { called, says } from '../phrase.ts'

const middleOf = ({ bottom, top }: OpeningPlace): number => (bottom + top) / 2

/** The narrowest wall of another part that stands round a part at a height; null where the open air is outside it. */
const wallRound = (profile: Profile, part: string, height: number): string | null => {
  const own = profile.walls.find((wall) => wall.part === part)
  if (own === undefined) return null
  const round = profile.walls
    .filter(
      (wall) =>
        wall.part !== part &&
        wall.innerRadius >= own.outerRadius &&
        wall.bottom < height &&
        height < wall.top,
    )
    .sort((one, other) => one.innerRadius - other.innerRadius)
  return round[0]?.part ?? null
}

const misplaced = (
  place: OpeningPlace,
  where: string,
  fix: string,
  severity: typeof warn = warn,
): Finding => {
  const { duty } = place.opening
  return severity(
    `duty.${duty}`,
    { part: place.part.name, opening: place.name },
    says(place.opening, place.name, place.part.name, `are called ${duty}, but ${where}`),
    fix,
  )
}

/** Openings of the fuel can's own wall. */
const onFuelCan = (place: OpeningPlace, bed: FuelBed | null, outer: string | null): Finding | null => {
  const { duty } = place.opening
  const fuelCan = called(place.part.name)
  const side = bed !== null && middleOf(place) > bed.top ? 'secondary' : 'primary'
  if (duty === 'intake')
    return outer === null
      ? misplaced(
          place,
          `${fuelCan} has no other can round it: the air goes straight in as ${side} air.`,
          `Call them ${side}.`,
          note,
        )
      : misplaced(
          place,
          `lie inside ${called(outer)}; intake is what lets air in from outside.`,
          `Call them ${side}, or put them in ${called(outer)}.`,
        )
  if (duty === 'outlet' || duty === 'tertiary') {
    if (bed === null || middleOf(place) > bed.top) return null
    return misplaced(
      place,
      'lie below the fuel line: air goes in there.',
      'Call them primary, or put them above the flame.',
    )
  }
  return null
}

/** Openings of a wall that stands round the fuel can. */
const roundFuelCan = (place: OpeningPlace, fuelCan: string): Finding | null => {
  const { duty } = place.opening
  if (duty !== 'primary' && duty !== 'secondary') return null
  return misplaced(
    place,
    `${called(place.part.name)} stands round ${called(fuelCan)}: they let air into the gap between the cans.`,
    `Call them intake, or put them in ${called(fuelCan)}.`,
  )
}

/** Openings that want to be over the concentrator. */
const underConcentrator = (place: OpeningPlace, disc: string, height: number): Finding | null => {
  const { duty } = place.opening
  if ((duty !== 'tertiary' && duty !== 'outlet') || middleOf(place) >= height) return null
  return misplaced(
    place,
    `lie ${long(height - middleOf(place))} below ${called(disc)}, where gas still has to go up through it.`,
    duty === 'tertiary'
      ? `Put them above ${called(disc)}, or call them secondary or intake.`
      : `Put them above ${called(disc)}.`,
  )
}

/** An intake above the secondary row: its air never passes along the hot wall below. */
const aboveSecondary = (place: OpeningPlace, secondaryTop: number | null): Finding | null =>
  place.opening.duty === 'intake' && secondaryTop !== null && place.bottom > secondaryTop
    ? misplaced(
        place,
        `lie ${long(place.bottom - secondaryTop)} above the secondary row: the air comes in cold and has to go down for the primary holes.`,
        'Put the intake near the bottom of the outer can, so that the air warms on its way up.',
        note,
      )
    : null

/** What each opening is called against where it lies. */
export const dutyPlace: Check = (context) => {
  const fuelCan = fuelCanOf(context.placed)
  if (fuelCan === null) return []
  const bed = fuelBedOf(context.stove, context.placed)
  const concentrator = concentratorOf(context)
  const places = placedOpenings(context.placed)
  const secondaries = places.filter(
    ({ part, opening }) => part.name === fuelCan.name && opening.duty === 'secondary',
  )
  const secondaryTop = secondaries.length === 0 ? null : Math.max(...secondaries.map(({ top }) => top))
  return places.flatMap((place) => {
    if (place.opening.kind !== 'row') return []
    const height = middleOf(place)
    const found: (Finding | null)[] = []
    if (place.part.name === fuelCan.name)
      found.push(onFuelCan(place, bed, wallRound(context.profile, fuelCan.name, height)))
    else if (wallRound(context.profile, fuelCan.name, height) === place.part.name)
      found.push(roundFuelCan(place, fuelCan.name))
    if (concentrator !== null) found.push(underConcentrator(place, concentrator.name, concentrator.base))
    found.push(aboveSecondary(place, secondaryTop))
    return found.filter((finding) => finding !== null)
  })
}
