import { long, onRuleAtLeast, onRuleAtMost } from '#basis/text/bothUnits.ts'
import { vaneRise } from '#stove/fit/partMass.ts'
import { type FuelBed, fuelBedOf, fuelCanOf } from '#stove/measure/fuelBed.ts'
import { type OpeningPlace, placedOpenings } from '#stove/measure/openingPlace.ts'
import type { Finding } from '#stove/model.ts'
import type { Check, CheckContext } from '../context.ts'
import { stop, warn } from '../finding.ts'
import { called, says } from '../phrase.ts'
import { HEIGHTS } from '../rules.ts'
import { HAIR } from '../spacing/web.ts'

const MARGIN = HEIGHTS.fuelBelowSecondary.value

const told = ({ opening, name, part }: OpeningPlace, predicate: string): string =>
  says(opening, name, part.name, predicate)

/** Nearer than this they are level as far as anyone can measure in a heap of fuel [m]. */
const LEVEL = 0.0005

const distance = (free: number): string =>
  free > LEVEL ? `only ${long(free)} above` : free < -LEVEL ? `${long(-free)} below` : 'level with'

/** Secondary air has to find gas, not fuel. */
const secondary = (place: OpeningPlace, bed: FuelBed): readonly Finding[] => {
  const free = place.bottom - bed.top
  if (free >= MARGIN - HAIR) return []
  const where = { part: place.part.name, opening: place.name }
  const most = place.bottom - MARGIN - bed.floor
  const lift = bed.top + MARGIN - place.bottom
  const fill = most > 0 ? `Fill to ${onRuleAtMost(most)} at most, or p` : 'P'
  const fix = `${fill}ut the row ${onRuleAtLeast(lift)} higher.`
  const middle = (place.bottom + place.top) / 2
  if (middle <= bed.top)
    return [
      stop(
        'fuel.over-secondary',
        where,
        told(
          place,
          `are buried: the fuel line is ${long(bed.top - place.bottom)} above their lower edge, so their air feeds the fuel and not the gas.`,
        ),
        fix,
      ),
    ]
  return [
    warn(
      'fuel.near-secondary',
      where,
      told(
        place,
        `begin ${distance(free)} the fuel line; leave ${onRuleAtLeast(MARGIN)} of free wall above the fuel.`,
      ),
      fix,
    ),
  ]
}

const primary = (place: OpeningPlace, bed: FuelBed): readonly Finding[] => {
  if (place.opening.kind !== 'row' || place.bottom < bed.top - HAIR) return []
  return [
    warn(
      'fuel.primary-above',
      { part: place.part.name, opening: place.name },
      told(
        place,
        `are called primary but lie above the fuel line, by ${long(place.bottom - bed.top)}: their air meets the gas, not the fuel.`,
      ),
      'Put them below the fuel line, or call them secondary.',
    ),
  ]
}

const rim = (bed: FuelBed): readonly Finding[] => {
  const over = bed.top - bed.can.top
  if (over <= HAIR) return []
  return [
    stop(
      'fuel.over-rim',
      { part: bed.can.name },
      `The fuel line is ${long(over)} above the rim of ${called(bed.can.name)}.`,
      `Fill to ${onRuleAtMost(bed.can.top - bed.floor)} at most, or use a taller can.`,
    ),
  ]
}

/** Discs over the fuel, and what hangs from them. */
const discs = (context: CheckContext, bed: FuelBed): readonly Finding[] =>
  context.placed.flatMap(({ name, part, base }) => {
    if (part.form !== 'disc' || part.role !== 'concentrator') return []
    const hanging = [...part.openings.values()]
      .filter((opening) => opening.kind === 'vanes' && opening.bend === 'down')
      .map(vaneRise)
    const lowest = base - Math.max(0, ...hanging)
    if (lowest >= bed.top - HAIR || base < bed.floor) return []
    return [
      warn(
        'fuel.at-concentrator',
        { part: name },
        `The fuel line is ${long(bed.top - lowest)} above the lowest edge of ${called(name)}: the gas has no room to burn.`,
        `Fill to ${onRuleAtMost(Math.max(0, lowest - bed.floor))} at most, or put the disc higher.`,
      ),
    ]
  })

/** The fuel line against the openings of the fuel can, its rim and what lies over it. */
export const fuelLine: Check = (context) => {
  const can = fuelCanOf(context.placed)
  if (can === null) return []
  const bed = fuelBedOf(context.stove, context.placed)
  if (bed === null)
    return [
      stop(
        'fuel.no-floor',
        { part: can.name },
        `Nothing carries the fuel: the bottom of ${called(can.name)} is open and there is no grate in it.`,
        'Leave the bottom whole and drill it, or lay a grate in the can.',
      ),
    ]
  const rows = placedOpenings(context.placed)
    .filter(({ part }) => part.name === can.name)
    .flatMap((place) =>
      place.opening.duty === 'secondary' && place.opening.kind === 'row'
        ? secondary(place, bed)
        : place.opening.duty === 'primary'
          ? primary(place, bed)
          : [],
    )
  return [...rim(bed), ...rows, ...discs(context, bed)]
}
