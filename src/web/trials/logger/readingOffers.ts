import { readQuantity } from '#basis/text/read.ts'
import { type Alignment, aligned } from '#proof/logger/align.ts'
import type { Channel } from '#proof/logger/readLog.ts'
import { at, type Draft, type Path } from '../draft.ts'
import { loggerTime, nearestReading } from './curves.ts'

/** A reading that fits a blank of a phase. Nothing is put there until somebody says so. */
export interface Offer {
  readonly path: Path
  /** `High power, water at the start` */
  readonly label: string
  /** As it would be written: `99.1 °C`. */
  readonly text: string
  /** What it was worked out from, where it is not the reading itself, and what to mind. */
  readonly how: readonly string[]
  /** When it was read, after lighting and by the logger's clock [s]. */
  readonly after: number
  readonly logger: number
  /** What stands in the blank now. */
  readonly now: string | null
}

export interface Offers {
  readonly offers: readonly Offer[]
  /** Why there are no more of them; sentences. */
  readonly said: readonly string[]
}

/** What stood on a scale. */
export type Stood = 'fuel' | 'pot' | 'stove'

const SIDES = ['from', 'to'] as const
type Side = (typeof SIDES)[number]
const SIDE_WORDS: Readonly<Record<Side, string>> = { from: 'at the start', to: 'at the end' }

const NO_TIMES =
  'No phase has a time that the logger covers. Say when the phases began and ended first; “Take from the log” does it from what was noted.'

const celsius = (kelvin: number): string => `${(kelvin - 273.15).toFixed(1)} °C`
const grams = (kilograms: number): string => `${(kilograms * 1000).toFixed(1)} g`

interface Moment {
  readonly phase: number
  readonly kind: string
  readonly side: Side
  readonly reading: { readonly time: number; readonly value: number; readonly line: number }
}

const shown = (draft: Draft, path: Path): string | null => {
  const value = at(draft, path)
  return typeof value === 'string' && value !== '' ? value : null
}

/** Readings of a channel at both ends of every phase whose times are told. */
const momentsOf = (channel: Channel, alignment: Alignment, draft: Draft): readonly Moment[] => {
  const phases = at(draft, ['phases'])
  const count = Array.isArray(phases) ? phases.length : 0
  return Array.from({ length: count }, (_, phase) => phase).flatMap((phase) =>
    SIDES.flatMap((side): readonly Moment[] => {
      const time = readQuantity(at(draft, ['phases', phase, side, 'at']), '', 'timeAfterLighting')
      const reading = time.ok ? nearestReading(channel, loggerTime(alignment, time.value)) : null
      const kind = at(draft, ['phases', phase, 'phase']) === 'simmer' ? 'Simmer' : 'High power'
      return reading === null ? [] : [{ phase, kind, side, reading }]
    }),
  )
}

const offerOf = (
  { phase, kind, side, reading }: Moment,
  key: 'water' | 'fuel' | 'pot',
  what: string,
  text: string,
  how: readonly string[],
  alignment: Alignment,
  draft: Draft,
): Offer => {
  const path = ['phases', phase, side, key]
  return {
    path,
    label: `${kind}, ${what} ${SIDE_WORDS[side]}`,
    text,
    how,
    after: aligned(alignment, reading.time),
    logger: reading.time,
    now: shown(draft, path),
  }
}

const outlierWords = (line: number, outliers: ReadonlySet<number>): readonly string[] =>
  outliers.has(line) ? [`Line ${line} stands out from its neighbours: look twice.`] : []

/** Temperatures of the water at the ends of the phases. `outliers`: lines that stand out. */
export const waterOffers = (
  channel: Channel,
  alignment: Alignment,
  draft: Draft,
  outliers: ReadonlySet<number> = new Set(),
): Offers => {
  const moments = momentsOf(channel, alignment, draft)
  return {
    offers: moments.map((moment) => {
      const { value, line } = moment.reading
      return offerOf(moment, 'water', 'water', celsius(value), outlierWords(line, outliers), alignment, draft)
    }),
    said: moments.length === 0 ? [NO_TIMES] : [],
  }
}

/**
 * Fuel left at the end of a phase from the whole stove's weight: what was there at the start less what the scale lost.
 * The char stays on the scale and is no fuel any more.
 */
const fuelLeft = (
  from: Moment,
  to: Moment,
  alignment: Alignment,
  draft: Draft,
  outliers: ReadonlySet<number>,
): Offers => {
  const { phase, kind } = to
  const start = readQuantity(at(draft, ['phases', phase, 'from', 'fuel']), '', 'mass')
  if (!start.ok)
    return {
      offers: [],
      said: [`${kind}: say how much fuel there was at the start; the scale tells only what went since.`],
    }
  const lost = from.reading.value - to.reading.value
  const char = readQuantity(at(draft, ['phases', phase, 'char']), '', 'mass')
  const left = start.value - lost - (char.ok ? char.value : 0)
  if (left < 0)
    return {
      offers: [],
      said: [
        `${kind}: the scale lost ${grams(lost)}${char.ok ? ` and ${grams(char.value)} of char was made` : ''}, more than the ${grams(start.value)} of fuel that was there. Was the pot on it, or fuel put in on the way?`,
      ],
    }
  const how = [
    `${grams(start.value)} at the start, less the ${grams(lost)} that the scale lost${char.ok ? `, less ${grams(char.value)} of char` : ''}.`,
    ...(char.ok ? [] : ['The char is in it still: weigh that first, and it is taken off.']),
    ...outlierWords(from.reading.line, outliers),
    ...outlierWords(to.reading.line, outliers),
  ]
  return {
    offers: [offerOf(to, 'fuel', 'fuel not yet burnt', grams(left), how, alignment, draft)],
    said: [],
  }
}

/** Weights at the ends of the phases, by what stood on the scale. */
export const massOffers = (
  channel: Channel,
  stood: Stood,
  alignment: Alignment,
  draft: Draft,
  outliers: ReadonlySet<number> = new Set(),
): Offers => {
  const moments = momentsOf(channel, alignment, draft)
  if (moments.length === 0) return { offers: [], said: [NO_TIMES] }
  if (stood !== 'stove') {
    const what = stood === 'pot' ? 'pot with water' : 'fuel not yet burnt'
    return {
      offers: moments.map((moment) => {
        const { value, line } = moment.reading
        return offerOf(moment, stood, what, grams(value), outlierWords(line, outliers), alignment, draft)
      }),
      said: [],
    }
  }
  const all = moments.flatMap((to) => {
    const from = moments.find(({ phase, side }) => phase === to.phase && side === 'from')
    if (to.side !== 'to') return []
    return from === undefined
      ? [{ offers: [], said: [`${to.kind}: the logger does not cover its start.`] }]
      : [fuelLeft(from, to, alignment, draft, outliers)]
  })
  return all.length === 0
    ? { offers: [], said: ['The logger covers the end of no phase.'] }
    : { offers: all.flatMap(({ offers }) => offers), said: all.flatMap(({ said }) => said) }
}
