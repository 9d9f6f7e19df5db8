import { long, onRuleAtLeast, wide } from '#basis/text/bothUnits.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import { placeOpening } from '#stove/measure/openingPlace.ts'
import type { Finding, Opening } from '#stove/model.ts'
import { openingArea } from '#stove/opening/area.ts'
import { type Check, type CheckContext, placedNamed } from '../context.ts'
import { stop, warn } from '../finding.ts'
import { outerAt } from '../fit/mouth.ts'
import { called, list, openingsOf } from '../phrase.ts'
import { AREAS } from '../rules.ts'

/** Openings in the underside of a part that are there to let air up. */
const floorOpenings = ({ part }: PlacedPart): readonly (readonly [string, Opening])[] =>
  [...part.openings].filter(
    ([, opening]) =>
      opening.kind !== 'row' &&
      (opening.duty === 'primary' || opening.duty === 'intake') &&
      (part.form === 'disc' ? part.role === 'grate' : opening.face === 'bottom'),
  )

interface Ground {
  /** What is under the part, null for the ground itself. */
  readonly part: PlacedPart | null
  readonly height: number
}

/** The highest plate under a part's middle. A ring that leaves the middle open blocks nothing. */
const under = (context: CheckContext, placed: PlacedPart, radius: number): Ground => {
  const plates = context.profile.plates
    .filter(
      (plate) =>
        plate.part !== placed.name && plate.height <= placed.base + 1e-6 && plate.innerRadius < radius / 2,
    )
    .sort((one, other) => other.height - one.height)
  const plate = plates[0]
  return plate === undefined
    ? { part: null, height: 0 }
    : { part: placedNamed(context, plate.part), height: plate.height }
}

/** A floor that is itself open feeds what stands on it from below. */
const isOpen = ({ part: placed, height }: Ground): boolean =>
  placed !== null &&
  [...placed.part.openings.values()].some(
    (opening) =>
      opening.kind !== 'row' &&
      opening.duty !== 'fixing' &&
      openingArea(opening) > 0 &&
      Math.abs(placeOpening(placed, '', opening).bottom - height) < 1e-6,
  )

/** A tenth of a millimetre is no gap [m]. */
const SHUT = 1e-4

/** Perforated floors and grates that stand flat on something closed, or so low that their air is throttled. */
export const floorBlocked: Check = (context) => {
  const findings: Finding[] = []
  for (const placed of context.placed) {
    const openings = floorOpenings(placed)
    const outer = outerAt(placed.part, 'bottom')
    if (openings.length === 0 || outer === null) continue
    const radius = outer.value / 2
    const ground = under(context, placed, radius)
    if (isOpen(ground)) continue
    const on = ground.part === null ? 'the ground' : `the closed floor of ${called(ground.part.name)}`
    const gap = placed.base - ground.height
    const holes = openings.reduce((sum, [, opening]) => sum + openingArea(opening), 0)
    const rim = 2 * Math.PI * radius
    const wanted = (AREAS.underFloor.low * holes) / rim
    // Half millimetres are what a maker can set.
    const raise = Math.ceil((wanted - Math.max(0, gap)) / 0.0005) * 0.0005
    const first = openings[0]?.[0] ?? null
    const where = { part: placed.name, opening: openings.length === 1 ? first : null }
    const what = list(openings.map(([name, opening]) => `${openingsOf(opening)} in ${called(name)}`))
    const fix =
      placed.placement.place === 'hangs in'
        ? `Use a can at least ${onRuleAtLeast(raise)} shorter, so that the gap round its rim is twice as large as the holes.`
        : `Raise ${called(placed.name)} by ${onRuleAtLeast(raise)} or more on feet or screws: then the gap round its rim is twice as large as the holes.`
    if (gap < SHUT)
      findings.push(
        stop(
          'air.floor-blocked',
          where,
          `${called(placed.name)} stands flat on ${on}: no air reaches the ${what}.`,
          fix,
        ),
      )
    else if (gap * rim < AREAS.underFloor.low * holes)
      findings.push(
        warn(
          'air.floor-throttled',
          where,
          `${called(placed.name)} stands ${long(gap)} above ${on}: the gap round its rim is ${wide(gap * rim)} and the ${what} come to ${wide(holes)}, so much of the draught is spent there.`,
          fix,
        ),
      )
  }
  return findings
}
