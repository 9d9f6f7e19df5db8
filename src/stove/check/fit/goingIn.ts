import { long, onRuleAtLeast, onRuleAtMost } from '#basis/text/bothUnits.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import { isSeamed, seamAt } from '#stove/can/ends.ts'
import { widestBody } from '#stove/can/taper.ts'
import { FIT_THRESHOLDS } from '#stove/fit/thresholds.ts'
import type { Finding, Measured, PlaceKind } from '#stove/model.ts'
import { type Check, placedNamed } from '../context.ts'
import { note, stop, warn } from '../finding.ts'
import { called } from '../phrase.ts'
import { FIT } from '../rules.ts'
import { insideOf, ledgeOn, mouthAt, outerAt, playIn, widestOf } from './mouth.ts'

const what = ({ part }: PlacedPart): string => (part.form === 'disc' ? 'disc' : 'can')

const closed = (guest: PlacedPart, host: PlacedPart, end: string): Finding =>
  stop(
    'fit.closed',
    { part: guest.name },
    `${called(guest.name)} cannot go into ${called(host.name)}: its ${end} is closed.`,
    `Cut the ${end} of ${called(host.name)} out, or bore it.`,
  )

/** Whether something passes an opening, at its widest and at the worst of both tolerances. */
const passes = (
  guest: PlacedPart,
  host: PlacedPart,
  width: Measured,
  opening: Measured,
  through: string,
): readonly Finding[] => {
  const where = { part: guest.name }
  const play = playIn(width, opening)
  const sizes = `the ${what(guest)} is ${long(width.value)} at its widest and ${through} of ${called(host.name)} ${long(opening.value)}`
  if (play.nominal < 0)
    return [
      stop(
        'fit.does-not-go',
        where,
        `${called(guest.name)} cannot be put in or lifted out: ${sizes}, ${long(-play.nominal)} too narrow.`,
        `Use a ${what(guest)} of at most ${onRuleAtMost(opening.value - opening.tolerance)}, or open ${called(host.name)} wider.`,
      ),
    ]
  if (play.worst < 0)
    return [
      warn(
        'fit.may-not-go',
        where,
        `${called(guest.name)} may not go in: ${sizes}, ${long(play.nominal)} of play; at the worst of the tolerances it is ${long(-play.worst)} too wide.`,
        'Try the two parts in each other before drilling anything, or measure both closer.',
      ),
    ]
  return []
}

const tighter = (one: Measured | null, other: Measured | null): Measured | null =>
  one === null || other === null ? (one ?? other) : one.value <= other.value ? one : other

const stands = (guest: PlacedPart, host: PlacedPart): readonly Finding[] => {
  const width = widestOf(guest.part)
  if (width === null || host.part.form !== 'can') return []
  const top = mouthAt(host.part, 'top')
  // Raised on screws, it may as well have come from below.
  const bottom = guest.placement.raised > 0 ? mouthAt(host.part, 'bottom') : null
  const mouth = bottom !== null && (top === null || bottom.value > top.value) ? bottom : top
  if (mouth === null) return [closed(guest, host, 'top')]
  return passes(guest, host, width, mouth, 'the opening')
}

const hasFixing = ({ part }: PlacedPart): boolean =>
  [...part.openings.values()].some(({ duty }) => duty === 'fixing')

const held = (guest: PlacedPart, host: PlacedPart, width: Measured, inside: Measured): readonly Finding[] => {
  const gap = (inside.value - width.value) / 2
  if (gap <= FIT.slack.value || hasFixing(guest) || hasFixing(host)) return []
  return [
    note(
      'fit.not-held',
      { part: guest.name },
      `${called(guest.name)} has ${long(gap)} of room all round in ${called(host.name)} and nothing that holds it at its height.`,
      'Add fixing holes for three screws or a wire, or let it rest on something.',
    ),
  ]
}

const slipsInto = (guest: PlacedPart, host: PlacedPart): readonly Finding[] => {
  const width = widestOf(guest.part)
  if (width === null || host.part.form !== 'can') return []
  const mouths = [mouthAt(host.part, 'top'), mouthAt(host.part, 'bottom')].filter((mouth) => mouth !== null)
  const widest = mouths.sort((one, other) => other.value - one.value)[0]
  const mouth = tighter(widest ?? null, insideOf(host.part))
  if (widest === undefined || mouth === null) return [closed(guest, host, 'top')]
  const found = passes(guest, host, width, mouth, 'the opening')
  return found.length > 0 ? found : held(guest, host, width, insideOf(host.part) ?? mouth)
}

const slipsOver = (guest: PlacedPart, host: PlacedPart): readonly Finding[] => {
  if (guest.part.form === 'band') return []
  const width = outerAt(host.part, 'top')
  if (width === null) return []
  const mouth = mouthAt(guest.part, 'bottom')
  if (mouth === null) return [closed(host, guest, 'bottom')]
  const play = playIn(width, mouth)
  if (play.worst >= 0) return []
  const sentence = `${called(guest.name)} cannot slip over ${called(host.name)}: that is ${long(width.value)} at its top and the opening ${long(mouth.value)}`
  return play.nominal < 0
    ? [
        stop(
          'fit.does-not-go',
          { part: guest.name },
          `${sentence}.`,
          `Use a part with an opening of at least ${onRuleAtLeast(width.value + width.tolerance)}, or cut the seam off ${called(host.name)}.`,
        ),
      ]
    : [
        warn(
          'fit.may-not-go',
          { part: guest.name },
          `${sentence.replace('cannot', 'may not')}; at the worst of the tolerances it is ${long(-play.worst)} too narrow.`,
          'Try the two parts on each other before drilling anything, or measure both closer.',
        ),
      ]
}

const hangs = (guest: PlacedPart, host: PlacedPart): readonly Finding[] => {
  const where = { part: guest.name }
  const rim = outerAt(guest.part, 'top')
  if (rim === null) return []
  const mouth = mouthAt(host.part, 'top')
  if (mouth === null) return [closed(guest, host, 'top')]
  const ledge = ledgeOn(rim, mouth)
  if (ledge.nominal <= 0)
    return [
      stop(
        'fit.falls-through',
        where,
        `${called(guest.name)} cannot hang in ${called(host.name)}: its rim is ${long(rim.value)} wide and the opening ${long(mouth.value)}, so it falls through.`,
        'Use a can with a wider seam or an opening less wide, or put a ring under the rim.',
      ),
    ]
  const findings: Finding[] = []
  if (ledge.worst <= 0)
    findings.push(
      warn(
        'fit.may-fall-through',
        where,
        `${called(guest.name)} hangs in ${called(host.name)} by ${long(ledge.nominal)} of rim all round as measured, but by none at the worst end of the tolerances.`,
        'Measure both closer, or put a ring under the rim.',
      ),
    )
  if (guest.part.form !== 'can') return findings
  const { can } = guest.part
  const seam = isSeamed(can.bottom) ? playIn(seamAt(can, 'bottom'), mouth) : null
  if (seam !== null && seam.nominal < 0) {
    const sentence = `The bottom seam of ${called(guest.name)} is ${long(seamAt(can, 'bottom').value)} wide and has to pass the opening of ${called(host.name)}, ${long(mouth.value)}`
    // What the tin gives: see the threshold's own source.
    if (-seam.nominal <= FIT_THRESHOLDS.snap.value * mouth.value)
      return [
        ...findings,
        note(
          'fit.snaps',
          where,
          `${sentence}: it has to be pressed past.`,
          'Warm the outer part, or file the opening a little.',
        ),
      ]
    return [
      ...findings,
      stop(
        'fit.does-not-go',
        where,
        `${sentence}: it does not go.`,
        'Use a drawn can without a bottom seam, cut the bottom seam off, or let the can sit on a ring.',
      ),
    ]
  }
  return [...findings, ...passes(guest, host, widestBody(can), mouth, 'the opening')]
}

const FITS: Readonly<Record<PlaceKind, (guest: PlacedPart, host: PlacedPart) => readonly Finding[]>> = {
  'stands in': stands,
  'hangs in': hangs,
  'slips into': slipsInto,
  'slips over': slipsOver,
  // Whether these rest where they should is a question of their ledge.
  'on ground': () => [],
  'sits on': () => [],
}

/** Parts that cannot be put in place or lifted out, at the worst of their tolerances. */
export const goingIn: Check = (context) =>
  context.placed.flatMap((guest) => {
    const host = placedNamed(context, guest.placement.host)
    return host === null ? [] : FITS[guest.placement.place](guest, host)
  })
