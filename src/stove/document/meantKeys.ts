import { nearest } from './nearest.ts'

/** How makers shorten the keys of a stove file, and the other words they have for them: common practice, no source. */
const OTHER_WORDS: Readonly<Record<string, string>> = {
  d: 'diameter',
  dia: 'diameter',
  diam: 'diameter',
  ø: 'diameter',
  h: 'height',
  ht: 'height',
  hgt: 'height',
  w: 'width',
  wd: 'width',
  l: 'length',
  len: 'length',
  lg: 'length',
  r: 'radius',
  thk: 'thickness',
  gauge: 'thickness',
  n: 'count',
  no: 'count',
  num: 'count',
  number: 'count',
  qty: 'count',
  quantity: 'count',
  brg: 'bearing',
  azimuth: 'bearing',
  type: 'kind',
  drill: 'bit',
  title: 'name',
  comment: 'about',
  comments: 'about',
  description: 'about',
  note: 'about',
  notes: 'about',
  remarks: 'about',
}

/** A unit that was put into the key: `heightMm`, `height_in`. */
const WITH_UNIT = /^(.{3,}?)[ _-]?(?:mm|cm|in|inch|inches|deg|degrees)$/i

/** The words of `seamDiameter`: seam, diameter. */
const wordsOf = (key: string): readonly string[] =>
  key
    .replace(/(?<=\p{Ll})(?=\p{Lu})/gu, ' ')
    .toLowerCase()
    .split(' ')

const fullWord = (key: string): string => {
  const lower = key.toLowerCase()
  return Object.hasOwn(OTHER_WORDS, lower) ? (OTHER_WORDS[lower] as string) : lower
}

/** Known keys that are the word, or have it as one of their words. */
const withWord = (word: string, known: readonly string[]): readonly string[] => {
  const same = known.filter((key) => key.toLowerCase() === word)
  return same.length > 0 ? same : known.filter((key) => wordsOf(key).includes(word))
}

/**
 * The known keys that an unknown one was most likely meant to be: `dia` is `diameter` where there is one, else
 * `seamDiameter` or `bodyDiameter`. Empty where nothing is near.
 */
export const meantKeys = (key: string, known: readonly string[]): readonly string[] => {
  const full = withWord(fullWord(key), known)
  if (full.length > 0) return full
  const bare = WITH_UNIT.exec(key)?.[1]
  const withoutUnit = bare === undefined ? [] : withWord(fullWord(bare), known)
  if (withoutUnit.length > 0) return withoutUnit
  const near = nearest(key, known)
  return near === null ? [] : [near]
}
