/** Units as they are read aloud. */
const WORDS: readonly (readonly [sign: RegExp, word: string])[] = [
  [/(?<=\d )mm\b/g, 'millimetres'],
  [/(?<=\d )kW\b/g, 'kilowatts'],
  [/(?<=\d )Btu\/h/g, 'Btu an hour'],
  [/(?<=\d )g\b/g, 'grams'],
  [/(?<=\d )kg\b/g, 'kilograms'],
  [/(?<=\d )oz\b/g, 'ounces'],
  [/(?<=\d )lb\b/g, 'pounds'],
  [/(?<=\d )min\b/g, 'minutes'],
  [/(?<=\d )h\b/g, 'hours'],
  [/(?<=\d )s\b/g, 'seconds'],
  [/(?<=\d )L\b/g, 'litres'],
  [/(?<=\d)°(?! ?[CF])/g, ' degrees'],
]

/** A whole inch and its fraction are two numbers that run together when read: an "and" parts them. */
const INCHES = /(\d+ )?(\d+\/\d+|\d+(?:\.\d+)?) in\b/g

/** One of a unit, no more. */
const ONE = /(?<![\d.,/])1 (millimetre|litre|hour|minute|second|kilogram|gram|ounce|pound)s\b/g

/**
 * A text with its signs in words, so that it is read aloud in one way only: `3 15/16 in` becomes `3 and 15/16 inches`,
 * `15/32 in` becomes `15/32 inch`.
 */
export const spoken = (text: string): string =>
  WORDS.reduce(
    (said, [sign, word]) => said.replace(sign, word),
    text
      .replaceAll('\u00a0', ' ')
      .replace(INCHES, (_, whole: string | undefined, part: string) =>
        whole === undefined
          ? `${part} ${part.includes('/') || Number(part) <= 1 ? 'inch' : 'inches'}`
          : `${whole}and ${part} inches`,
      ),
  ).replace(ONE, '1 $1')
