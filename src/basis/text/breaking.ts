import { DUAL_VALUE } from './dualValue.ts'

const NO_BREAK = '\u00a0'

const UNITS =
  'mm²?|cm³?|m[²³]?|in[²³]?|ft³?|US (?:fl oz|qt|pt|gal)|[mk]?g|oz|lb|mL|L|kWh|k?W|[kM]J|Btu|K|°C|°F|°|%|h?Pa|inHg|mph|km/h|min|h|s'

/** Between a figure and its unit, hours and minutes, at either side of a sign, between a metric screw and its inch one. */
const WITHIN_VALUE = new RegExp(
  [
    `(?<=\\d) (?=(?:[±×Ø]|\\d+/\\d+|${UNITS})(?![\\p{L}\\p{N}]))`,
    '(?<=\\d h) (?=\\d+ min)',
    '(?<=\\bat) (?=[\\d.]+°)',
    '(?<=[±×Ø]) (?=[\\dØM])',
    '(?<=M\\d(?:\\.5)?) (?=\\(#)',
  ].join('|'),
  'gu',
)

/**
 * Text whose values stay whole: number, unit and the same in the other system in brackets, `± 0.3 mm (1/64 in)`. A line may end
 * before the bracket of a range, `1.2 to 2.0 kW (4000 to 6800 Btu/h)`, which is long.
 */
export const tied = (text: string): string =>
  !/\d/.test(text)
    ? text
    : text
        .replace(DUAL_VALUE, (value) => value.replaceAll(/\sto\s/.test(value) ? / (?!\()/g : ' ', NO_BREAK))
        .replace(WITHIN_VALUE, NO_BREAK)

/**
 * Breaks text into lines that fit, at its spaces and not inside a value; a value too wide for any line is parted before its
 * bracket, then between several numbers; what is too wide still stands alone. `fits` is told the number of the line, from 0.
 */
export const brokenLines = (
  text: string,
  fits: (line: string, index: number) => boolean,
): readonly string[] => {
  const lines: string[] = []
  let line: string | null = null
  const push = (word: string, ways: readonly RegExp[]): void => {
    const longer: string = line === null ? word : `${line} ${word}`
    if (fits(longer, lines.length)) {
      line = longer
      return
    }
    if (line !== null) lines.push(line)
    line = null
    const [way, ...rest] = ways
    if (way === undefined || !word.includes(NO_BREAK) || fits(word, lines.length)) line = word
    else for (const part of word.split(way)) push(part, rest)
  }
  for (const word of tied(text).split(' ')) push(word, [/\u00a0(?=\()/, /\u00a0(?=×|to\b)/])
  const all = line === null || line === '' ? lines : [...lines, line]
  return all.map((one) => one.replaceAll(NO_BREAK, ' '))
}
