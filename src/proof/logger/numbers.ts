import type { Mapping } from './mapping.ts'

/** What loggers write where they have nothing to say: an open thermocouple, an overload. */
const NOTHING = new Set([
  '',
  '-',
  '--',
  '---',
  '----',
  'nan',
  'n/a',
  'na',
  '#n/a',
  'null',
  'none',
  'ol',
  'o.l',
  'open',
  'err',
  'error',
  'overload',
  'underload',
  'inf',
  '-inf',
  'nc',
])

export const saysNothing = (field: string): boolean => NOTHING.has(field.toLowerCase())

const escaped = (mark: string): string => `\\${mark}`

/**
 * Reads a field strictly by the marks that the mapping names; null for whatever is not exactly such a number. A group
 * mark must stand before every three digits or nowhere: `1,23` is no number where the comma groups.
 */
export const numberReader = ({
  decimal,
  thousands,
}: Pick<Mapping, 'decimal' | 'thousands'>): ((field: string) => number | null) => {
  const point = escaped(decimal)
  const tail = `(?:${point}\\d*)?(?:[eE][+-]?\\d{1,3})?`
  const plain = new RegExp(`^[+-]?(?:\\d+${tail}|${point}\\d+(?:[eE][+-]?\\d{1,3})?)$`)
  const grouped =
    thousands === '' ? null : new RegExp(`^[+-]?\\d{1,3}(?:${escaped(thousands)}\\d{3})+(?:${point}\\d*)?$`)
  return (field) => {
    const text = field.charCodeAt(0) === 0x2212 ? `-${field.slice(1)}` : field
    if (plain.test(text)) return Number(decimal === '.' ? text : text.replace(',', '.'))
    if (grouped?.test(text) !== true) return null
    return Number(text.replaceAll(thousands, '').replace(decimal, '.'))
  }
}

/** A number in somebody's marks, or nothing: enough to see that a line is one of readings. */
export const numberish = (field: string): boolean =>
  saysNothing(field) || /^[+\-\u2212]?(?:\d[\d.,' ]*|[.,]\d+)(?:[eE][+-]?\d+)?$/.test(field)

/** Date, time of day, or both. */
export const timeish = (field: string): boolean =>
  /^\d{1,4}[-/.]\d{1,2}[-/.]\d{1,4}(?:[T ]\d{1,2}:\d{2}.*)?$/.test(field) ||
  /^\d{1,3}:\d{2}(?::\d{2}(?:[.,]\d+)?)?(?: ?[AaPp]\.?[Mm]\.?)?$/.test(field)
