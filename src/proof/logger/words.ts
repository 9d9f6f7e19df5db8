import type { ChannelMapping, TimeUnit } from './mapping.ts'

/** What makers and loggers write over a column, in a few languages. */
const TEMPERATURE =
  /temp|thermo|^t\d*$|^tc ?\d*$|^ch(annel)? ?\d+ ?°|\btc\d|wasser|water|eau|flue|abgas|ambient/i
const MASS = /weight|mass|gewicht|poids|peso|waage|scale|balance/i
const TIME = /time|zeit|heure|hora|tempo|elapsed|stamp|clock|uhr|^t ?\[|^s$|sec|minutes?$|laufzeit/i
const DATE = /^(date|datum|fecha|data|jour|tag|day)\b/i
/** Columns that are nobody's reading. */
const NUMBERING =
  /^(no\.?|nr\.?|#|index|idx|record|sample|rec|row|line|n|id|mark|marker|event|status|battery|alarm)\b|^#$/i

/** Counted from the start, by what stands over it. */
export const saysElapsed = (header: string): boolean =>
  /elapsed|since|run ?time|duration|laufzeit|dauer|écoulé|transcurrido/i.test(header)

export type Role = 'temperature' | 'mass' | 'time' | 'date' | 'number' | null

export const roleOf = (header: string): Role => {
  const words = withoutUnit(header)
  if (NUMBERING.test(words)) return 'number'
  if (DATE.test(words) && !/time|zeit|heure/i.test(words)) return 'date'
  if (MASS.test(words)) return 'mass'
  if (TIME.test(words) || TIME.test(header)) return 'time'
  if (TEMPERATURE.test(words)) return 'temperature'
  const unit = unitIn(header)
  if (unit === null) return null
  return unit.quantity
}

type Found =
  | { readonly quantity: 'temperature'; readonly unit: '°C' | '°F' | 'K' }
  | { readonly quantity: 'mass'; readonly unit: 'g' | 'kg' | 'oz' | 'lb' }
  | { readonly quantity: 'time'; readonly unit: TimeUnit }

const UNITS: readonly (readonly [RegExp, Found])[] = [
  [/^(°|º|deg\.? ?|grad ?)?c(elsius)?$/i, { quantity: 'temperature', unit: '°C' }],
  [/^(°|º|deg\.? ?)?f(ahrenheit)?$/i, { quantity: 'temperature', unit: '°F' }],
  [/^(k|kelvin)$/i, { quantity: 'temperature', unit: 'K' }],
  [/^(g|gr|gram(s|me|mes)?|gramm)$/i, { quantity: 'mass', unit: 'g' }],
  [/^(kg|kilo(s|gram|grams|gramm)?)$/i, { quantity: 'mass', unit: 'kg' }],
  [/^(oz|ounces?)$/i, { quantity: 'mass', unit: 'oz' }],
  [/^(lbs?|pounds?)$/i, { quantity: 'mass', unit: 'lb' }],
  [/^(s|secs?|seconds?|sek(unden)?)$/i, { quantity: 'time', unit: 's' }],
  [/^(ms|msec|milliseconds?)$/i, { quantity: 'time', unit: 'ms' }],
  [/^(min|mins|minutes?|minuten)$/i, { quantity: 'time', unit: 'min' }],
  [/^(h|hrs?|hours?|stunden)$/i, { quantity: 'time', unit: 'h' }],
]

const BRACKETED = /[([{]\s*([^)\]}]*?)\s*[)\]}]\s*$/
const TRAILING = /(?:^|[\s_/,.-])(°?[A-Za-z°º]+)\.?$/

export const unitNamedSo = (text: string): Found | null =>
  UNITS.find(([form]) => form.test(text.trim().replace(/^[([](.*)[)\]]$/, '$1')))?.[1] ?? null

/**
 * A letter by itself after a blank says no unit: probes are called A, B, C, and thermocouples are of type K. Nor does a
 * K in brackets beside them.
 */
const isOnlyALetter = (header: string, unit: string, bracketed: boolean): boolean =>
  bracketed
    ? /^k$/i.test(unit) && /\b(?:type|typ|tc|thermo)/i.test(header)
    : /^[cfk]$/i.test(unit) && !header.trim().replace(/\.$/, '').endsWith(`_${unit}`)

/** The unit that a header names: in brackets, or as its last word. */
export const unitIn = (header: string): Found | null => {
  const bracketed = BRACKETED.exec(header)?.[1]
  const unit = bracketed ?? TRAILING.exec(header.trim())?.[1]
  return unit === undefined || isOnlyALetter(header, unit, bracketed !== undefined) ? null : unitNamedSo(unit)
}

const withoutUnit = (header: string): string => header.replace(BRACKETED, '').replaceAll('_', ' ').trim()

export const belongsTo = (quantity: ChannelMapping['quantity'], found: Found | null): found is Found =>
  found !== null && found.quantity === quantity
