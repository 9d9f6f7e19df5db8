/** Punctuation that a drawing of 1992 has no letter for, in letters that it has. */
const PLAIN: Readonly<Record<string, string>> = {
  '\u00a0': ' ',
  '‘': "'",
  '’': "'",
  '“': '"',
  '”': '"',
  '–': '-',
  '—': '-',
  '−': '-',
  '…': '...',
  '×': 'x',
  '·': '-',
  π: 'pi',
  '⁄': '/',
  '′': "'",
  '″': '"',
}

/** Signs that R12 has its own code for (AutoCAD Release 12 reference, control codes; from memory). */
const CODED: Readonly<Record<string, string>> = { Ø: '%%c', '°': '%%d', '±': '%%p' }

/** A letter beyond ASCII as `\U+00E9`, which readers since Release 13 understand; controls become a space. */
const escapedLetter = (letter: string): string => {
  const code = letter.codePointAt(0) ?? 0
  if (code < 0x20 || code === 0x7f) return ' '
  if (code < 0x7f) return letter
  // By 16 bits each, as the code has four digits.
  return Array.from(
    { length: letter.length },
    (_, index) => `\\U+${letter.charCodeAt(index).toString(16).toUpperCase().padStart(4, '0')}`,
  ).join('')
}

/** Text as R12 writes it, all of it ASCII and on one line. `%%` begins a code there, so a `%` of ours stands alone. */
export const plainText = (text: string): string =>
  [...text.replaceAll(/%(?=%)/g, '% ')]
    .map((letter) => CODED[letter] ?? PLAIN[letter] ?? escapedLetter(letter))
    .join('')

/** The same for a comment, where codes would only be read by eye. */
export const plainComment = (text: string): string =>
  plainText(text).replaceAll('%%c', 'dia.').replaceAll('%%d', ' deg').replaceAll('%%p', '+/-')
