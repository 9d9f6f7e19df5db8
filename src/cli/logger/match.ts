import { BadInput, orThrow } from '#basis/problem.ts'
import { readQuantity } from '#basis/text/read.ts'
import { type Alignment, align, type Match } from '#proof/logger/align.ts'
import type { Mapping, TimeMapping } from '#proof/logger/mapping.ts'
import type { LogPart } from '#proof/logger/readLog.ts'
import type { Trial } from '#proof/trial/model.ts'
import { problemOf } from '../input.ts'

const DAY = 86_400

/** A moment on both clocks, and how it was found. */
export interface Matched extends Match {
  /** Whether the boil that the readings show was taken for the trial's, rather than a moment that the maker named. */
  readonly found: boolean
}

export interface Aligned {
  readonly matches: readonly Matched[]
  readonly alignment: Alignment
}

const wrong = (value: string, allowed: string, fix: string): BadInput =>
  new BadInput([problemOf('logger.match', '--match', value, allowed, fix)])

/** The event of the trial that is meant, and when it was, after lighting [s]. */
const eventOf = ({ events, lit }: Trial, name: string, written: string): number => {
  const timed = events.filter(({ after }) => after !== null)
  const names = [...new Set(timed.map(({ event }) => event))]
  if (lit === null || timed.length === 0)
    throw wrong(written, 'an event of the trial', 'Nobody noted in the trial when the stove was lit.')
  const found = timed.filter(({ event }) => event === name)
  const [first] = found
  if (found.length === 1 && first !== undefined) return first.after as number
  throw wrong(
    written,
    `an event that the trial has once: ${names.join(', ')}`,
    found.length === 0 ? 'Choose one of these.' : `The trial has "${name}" ${found.length} times.`,
  )
}

const CLOCK = /^(\d{1,3}):(\d{2})(?::(\d{2}(?:\.\d+)?))?$/

/** A moment as the logger's clock shows it [s]. */
const momentOf = (text: string, { form }: TimeMapping, { time }: LogPart, written: string): number => {
  const from = time[0] ?? 0
  if (form === 'elapsed') return orThrow(readQuantity(text, '--match', 'timeAfterLighting'))
  const found = CLOCK.exec(text)
  if (found === null || Number(found[2]) > 59)
    throw wrong(written, 'a moment as the logger’s clock shows it: "boil=9:12:04"', 'Look at the preview.')
  const [, first = '', second = '', third] = found
  const short = third === undefined && form === 'elapsed clock'
  const seconds = short
    ? Number(first) * 60 + Number(second)
    : Number(first) * 3600 + Number(second) * 60 + Number(third ?? 0)
  if (form === 'elapsed clock') return seconds
  const today = Math.floor(from / DAY) * DAY + seconds
  return today < from - 3600 ? today + DAY : today
}

/**
 * Brings the logger's clock onto the trial's. Moments are the maker's; the boil of the water is the readings' own, where
 * the maker names none. Null where there is nothing to go by.
 */
export const alignedWith = (
  trial: Trial,
  mapping: Mapping,
  part: LogPart,
  written: readonly string[],
  boil: number | null,
): Aligned | null => {
  const named = written.map((one): Matched => {
    const at = one.indexOf('=')
    if (at < 1)
      throw wrong(one, 'an event of the trial, =, and when it was by the logger: "lit=12 s"', 'Write both.')
    const what = one.slice(0, at).trim()
    const log = eventOf(trial, what, one)
    return { what, log, logger: momentOf(one.slice(at + 1).trim(), mapping.time, part, one), found: false }
  })
  const boiled = trial.events.filter(({ event, after }) => event === 'boil' && after !== null)
  const own: readonly Matched[] =
    boil !== null && boiled.length === 1 && !named.some(({ what }) => what === 'boil')
      ? [{ what: 'boil', log: boiled[0]?.after as number, logger: boil, found: true }]
      : []
  const matches = [...named, ...own].sort((a, b) => a.logger - b.logger)
  if (matches.length === 0) return null
  const alignment = align(matches)
  if (alignment === null)
    throw wrong(written.join(', '), 'moments in the same order on both clocks', 'Were two of them mixed up?')
  return { matches, alignment }
}
