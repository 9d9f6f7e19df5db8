/** Vulgar fractions of Unicode, as `numerator/denominator`. */
const VULGAR: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅐': '1/7',
  '⅑': '1/9',
  '⅒': '1/10',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
}

const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹'
const LOWERED = '₀₁₂₃₄₅₆₇₈₉'

const plainDigits = (digits: string, from: string): string =>
  [...digits].map((digit) => from.indexOf(digit)).join('')

/** 1/2 after a 6 is 6 1/2, never 61/2. */
const apart = (before: string | undefined, fraction: string): string =>
  before === undefined ? fraction : `${before} ${fraction}`

/**
 * Brings the many ways a keyboard or a typesetter writes the same thing to one: spaces, minus and hyphen, inch
 * and foot marks, fractions as single characters or with a fraction slash, `+/-`.
 *
 * Not Unicode's own compatibility form, which would turn 6½ into 61/2.
 */
export const plainlyWritten = (text: string): string =>
  text
    .replace(/[\s\u00a0\u2000-\u200b\u202f\u205f\u3000\ufeff]+/g, ' ')
    .replace(/(\d)?([¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/g, (_, before: string | undefined, one: string) =>
      apart(before, VULGAR[one] as string),
    )
    .replace(
      /(\d)?([⁰¹²³⁴-⁹]+)\u2044([₀-₉]+)/g,
      (_, before: string | undefined, top: string, under: string) =>
        apart(before, `${plainDigits(top, RAISED)}/${plainDigits(under, LOWERED)}`),
    )
    .replace(/[\u2044\u2215]/g, '/')
    .replace(/[\u2212\u2010\u2011]/g, '-')
    .replace(/[″”“]|''/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/\+ ?\/ ?-|\+-/g, '±')
    .trim()
