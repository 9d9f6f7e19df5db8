import { long, onRuleAtLeast } from '#basis/text/bothUnits.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import type { Finding, Measured } from '#stove/model.ts'
import { type Check, placedNamed } from '../context.ts'
import { note, stop, warn } from '../finding.ts'
import { called } from '../phrase.ts'
import { FIT } from '../rules.ts'
import { ledgeOn, mouthAt, outerAt, type Play } from './mouth.ts'

const CLOSED: Measured = { value: 0, tolerance: 0 } as unknown as Measured

const lesser = (one: Play, other: Play): Play => (one.worst < other.worst ? one : other)

/** How a part rests on its ledge; `how` tells what happens where there is none. */
const judge = (
  guest: PlacedPart,
  host: PlacedPart,
  ledge: Play,
  how: string,
  fix: string,
): readonly Finding[] => {
  const where = { part: guest.name }
  const pair = `${called(guest.name)} on ${called(host.name)}`
  if (ledge.nominal <= 0) return [stop('fit.falls-through', where, how, fix)]
  if (ledge.worst <= 0)
    return [
      warn(
        'fit.may-fall-through',
        where,
        `${pair} has a ledge of ${long(ledge.nominal)} all round as measured, but none at the worst end of the tolerances.`,
        'Measure both parts closer, or choose parts further apart in size.',
      ),
    ]
  if (ledge.nominal < FIT.landing.value)
    return [
      note(
        'fit.narrow-ledge',
        where,
        `${pair} rests on a ledge of only ${long(ledge.nominal)} all round.`,
        'Fasten it with screws or clips, or choose parts further apart in size.',
      ),
    ]
  return []
}

const sits = (guest: PlacedPart, host: PlacedPart): readonly Finding[] => {
  const [guestOuter, hostOuter] = [outerAt(guest.part, 'bottom'), outerAt(host.part, 'top')]
  if (guestOuter === null || hostOuter === null) return []
  const guestInner = mouthAt(guest.part, 'bottom') ?? CLOSED
  const hostInner = mouthAt(host.part, 'top') ?? CLOSED
  const inside = ledgeOn(guestOuter, hostInner)
  const outside = ledgeOn(hostOuter, guestInner)
  if (inside.nominal <= 0)
    return judge(
      guest,
      host,
      inside,
      `${called(guest.name)} falls through ${called(host.name)}: it is ${long(guestOuter.value)} wide, and the opening under it ${long(hostInner.value)}.`,
      `Use a part at least ${onRuleAtLeast(hostInner.value + 2 * FIT.landing.value)} wide there, or put a ring between them.`,
    )
  return judge(
    guest,
    host,
    lesser(inside, outside),
    `${called(guest.name)} drops over the outside of ${called(host.name)}: it is open ${long(guestInner.value)}, and what it should sit on is only ${long(hostOuter.value)} wide.`,
    'Put a ring between them, or place it as one that slips over.',
  )
}

/** What stands on a floor must not be narrower than a hole in that floor. */
const stands = (guest: PlacedPart, host: PlacedPart): readonly Finding[] => {
  const outer = outerAt(guest.part, 'bottom')
  const hole = mouthAt(host.part, 'bottom')
  if (outer === null || hole === null) return []
  return judge(
    guest,
    host,
    ledgeOn(outer, hole),
    `${called(guest.name)} falls through the floor of ${called(host.name)}: it is ${long(outer.value)} wide, and the opening in that floor ${long(hole.value)}.`,
    'Leave the floor whole, put a ring or grate under it, or hang it by its rim.',
  )
}

/** Parts that would fall through or over what they rest on, at the worst of their tolerances. */
export const sitting: Check = (context) =>
  context.placed.flatMap((guest) => {
    const { place, host: hostName, raised } = guest.placement
    const host = placedNamed(context, hostName)
    // What is raised rests on feet or screws that a stove file does not describe.
    if (host === null || guest.part.form === 'band' || raised > 0) return []
    if (place === 'sits on') return sits(guest, host)
    if (place === 'stands in') return stands(guest, host)
    return []
  })
