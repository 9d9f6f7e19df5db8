import { long, onRule } from '#basis/text/bothUnits.ts'
import type { BandPlace, BundleStep, Rattle } from './bundle.ts'
import { type PackedPlay, RATTLE_THRESHOLDS } from './rattle.ts'

const stepSentence = (step: BundleStep, before: readonly BundleStep[]): string => {
  const { part, inside, restsOn } = step
  const wayUp = step.wayUp === 'upside down' ? 'upside down' : 'right way up'
  const isThere = (name: string | null): name is string =>
    name !== null && before.some((earlier) => earlier.part === name)
  if (isThere(inside)) {
    const on = restsOn === null || restsOn === inside ? '' : `; it comes to rest on the ${restsOn}`
    return `Lower the ${part}, ${wayUp}, into the ${inside}${on}.`
  }
  const guests = before.filter((earlier) => earlier.inside === part).map((guest) => guest.part)
  if (guests.length > 0) return `Put the ${part}, ${wayUp}, over the ${guests.join(' and the ')}.`
  return restsOn === null
    ? `Stand the ${part}, ${wayUp}, on the table.`
    : `Set the ${part}, ${wayUp}, on the ${restsOn}.`
}

const bandSentence = ({ band, where, can }: BandPlace): string | null => {
  if (can === null) return null
  return where === 'round'
    ? `Clasp the ${band} round the ${can}.`
    : `Curl the ${band} up and let it spring against the inside of the ${can}.`
}

/** The steps that make the bundle, said for people; bands first, while the cans are still apart. */
export const bundleSentences = (
  steps: readonly BundleStep[],
  bands: readonly BandPlace[],
): readonly string[] => [
  ...bands.map(bandSentence).filter((sentence) => sentence !== null),
  ...steps.map((step, index) => stepSentence(step, steps.slice(0, index))),
]

/** A gap up to this is for a wrap; a wider one is room to fill [m]. */
const WIDEST_WRAP = 0.006

const sidewaysFix = (part: string, gap: number): string =>
  gap <= WIDEST_WRAP
    ? `wrap the ${part} in cloth or paper about ${onRule(gap)} thick`
    : `fill the ${onRule(gap)} round the ${part} with cloth, tinder or fuel`

const lengthwaysFix = (part: string, room: number): string =>
  `fill the ${onRule(room)} above the ${part} with cloth, tinder or fuel`

const sentenceCase = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`

/** What a packed part’s play comes to: nothing, or what is heard and how to stop it. */
export const rattleOf = (play: PackedPlay, steps: readonly BundleStep[]): readonly Rattle[] => {
  const step = steps[play.place]
  if (step === undefined) return []
  const { part, inside, restsOn } = step
  const { sideways, lengthways } = play
  // What stands on the ground with nothing round it is the bundle’s own outside.
  if (inside === null && restsOn !== null)
    return [
      {
        part,
        sideways: null,
        lengthways,
        sentence: `The ${part} stands on the ${restsOn} with nothing round it to hold it.`,
        fix: 'Tie the bundle together, or pack it in a bag that is no wider than the bundle.',
      },
    ]
  const isSideways = sideways !== null && sideways > RATTLE_THRESHOLDS.sideways.value
  const isLengthways = inside !== null && lengthways > RATTLE_THRESHOLDS.lengthways.value
  if (!isSideways && !isLengthways) return []
  const moves = [
    ...(isSideways ? [`${long(sideways)} from side to side`] : []),
    ...(isLengthways ? [`${long(lengthways)} up and down`] : []),
  ]
  const fixes = [
    ...(isSideways ? [sidewaysFix(part, sideways / 2)] : []),
    ...(isLengthways ? [lengthwaysFix(part, lengthways)] : []),
  ]
  return [
    {
      part,
      sideways,
      lengthways,
      sentence: `The ${part} moves ${moves.join(' and ')} in the ${inside ?? 'bundle'}.`,
      fix: sentenceCase(fixes.join(', and ')),
    },
  ]
}
