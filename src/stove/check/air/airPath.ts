import { wide } from '#basis/text/bothUnits.ts'
import { isWhole } from '#stove/can/ends.ts'
import { type FuelBed, fuelBedOf, fuelCanOf } from '#stove/measure/fuelBed.ts'
import { type OpeningPlace, placedOpenings } from '#stove/measure/openingPlace.ts'
import { ringGaps } from '#stove/measure/ringGap.ts'
import type { Finding } from '#stove/model.ts'
import { openingArea } from '#stove/opening/area.ts'
import { type Check, type CheckContext, placedNamed } from '../context.ts'
import { stop, warn } from '../finding.ts'
import { mouthAt } from '../fit/mouth.ts'
import { called, list } from '../phrase.ts'

const lets = ({ opening }: OpeningPlace): boolean => opening.duty !== 'fixing' && openingArea(opening) > 0

/** Whether some opening brings air in under or beside the fuel. */
const isFed = (bed: FuelBed, places: readonly OpeningPlace[]): boolean => {
  const inCan = places.filter(({ part }) => part.name === bed.can.name)
  const beside = inCan.some(
    ({ opening, bottom, top }) => opening.kind === 'row' && bottom < bed.top && top > bed.floor,
  )
  const floor = places.some(({ part, opening }) => part.name === bed.carrier.name && opening.kind !== 'row')
  if (bed.carrier.name === bed.can.name) return beside || floor
  const below =
    !isWhole(bed.can.part.can.bottom) ||
    inCan.some(
      ({ opening, bottom }) => (opening.kind === 'row' || opening.face === 'bottom') && bottom < bed.floor,
    )
  return beside || (floor && below)
}

const intake = (
  context: CheckContext,
  fuelCan: string,
  places: readonly OpeningPlace[],
): readonly Finding[] => {
  const gap = ringGaps(context.profile, context.placed).find(({ inner }) => inner === fuelCan)
  const outer = placedNamed(context, gap?.outer ?? null)
  if (gap === undefined || outer === null) return []
  const fromBelow = outer.base > 0 && mouthAt(outer.part, 'bottom') !== null
  if (fromBelow || gap.atTop > 0 || places.some(({ part }) => part.name === outer.name)) return []
  return [
    stop(
      'air.no-intake',
      { part: outer.name },
      `No air gets into ${called(outer.name)}: it has no intake holes, and the gap to ${called(fuelCan)} is closed at the top.`,
      `Drill an intake row near the bottom of ${called(outer.name)}.`,
    ),
  ]
}

const secondary = (
  context: CheckContext,
  fuelCan: string,
  places: readonly OpeningPlace[],
): readonly Finding[] => {
  if (places.some(({ opening }) => opening.duty === 'secondary')) return []
  const gap = ringGaps(context.profile, context.placed).find(({ inner }) => inner === fuelCan)
  const rim =
    gap === undefined || gap.atTop <= 0
      ? ''
      : ` The gap round the can, open ${wide(gap.atTop)} at its rim, brings air only there.`
  return [
    warn(
      'air.no-secondary',
      { part: fuelCan },
      `There are no secondary openings: gas rises from the fuel and finds no air to burn in.${rim}`,
      `Drill a row above the fuel line in ${called(fuelCan)}.`,
    ),
  ]
}

/** A pot that closes the top, with no other way out for flue gas than, at best, holes that were to let air in. */
const outlet = (
  { stove, placed }: CheckContext,
  bed: FuelBed,
  places: readonly OpeningPlace[],
): readonly Finding[] => {
  if (stove.potDiameter === null || (stove.potGap ?? 0) > 0) return []
  const carrier = [...placed]
    .filter(({ part }) => part.form !== 'band')
    .sort((one, other) => other.top - one.top)[0]
  const mouth = carrier === undefined ? null : mouthAt(carrier.part, 'top')
  if (carrier === undefined || mouth === null || mouth.value >= stove.potDiameter) return []
  const over = places.filter(({ opening, top }) => opening.kind === 'row' && top > bed.top)
  if (over.some(({ opening }) => opening.duty === 'outlet')) return []
  const closes = `The pot closes the top of ${called(carrier.name)}`
  const where = { part: carrier.name }
  const fix = `Cut windows in ${called(carrier.name)} close under its rim.`
  const left = over.filter(({ part }) => part.name === carrier.name)
  if (left.length === 0)
    return [
      stop(
        'air.no-outlet',
        where,
        `${closes} and there is no outlet under it: flue gas cannot leave and the fire goes out.`,
        fix,
      ),
    ]
  const rows = list(left.map(({ name, opening }) => `the ${opening.duty} openings ${called(name)}`))
  return [
    warn(
      'air.no-outlet',
      where,
      `${closes} and no openings under it are called outlet: flue gas can leave only by ${rows}, which then let no air in.`,
      `${fix} If that is what ${called(left[0]?.name ?? '')} are for, call them outlet.`,
    ),
  ]
}

/** Whether there is a way for air in and for flue gas out at all. */
export const airPath: Check = (context) => {
  const fuelCan = fuelCanOf(context.placed)
  if (fuelCan === null) {
    const part = context.placed[0]?.name ?? ''
    return [
      stop(
        'parts.no-fuel-can',
        { part },
        'No part holds the fuel: none is called fuel can.',
        'Give one can the role “fuel can”.',
      ),
    ]
  }
  const places = placedOpenings(context.placed).filter(lets)
  const bed = fuelBedOf(context.stove, context.placed)
  if (bed === null) return []
  const fed = isFed(bed, places)
    ? []
    : [
        stop(
          'air.no-primary',
          { part: bed.can.name },
          `No opening in ${called(bed.can.name)} lets air to the fuel, neither in its floor nor beside it.`,
          'Drill a pattern in the floor or a row low in the wall.',
        ),
      ]
  return [
    ...fed,
    ...intake(context, fuelCan.name, places),
    ...secondary(context, fuelCan.name, places),
    ...outlet(context, bed, places),
  ]
}
