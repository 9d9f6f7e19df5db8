import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { fieldPath } from '#basis/text/fieldPath.ts'
import {
  type Cursor,
  cutShort,
  Fault,
  fail,
  here,
  next,
  place,
  take,
  takeWord,
  unexpected,
} from './jsonCursor.ts'

/**
 * A strict reader of JSON (RFC 8259) for files that people write by hand. `JSON.parse` keeps the
 * last of two equal keys, turns `1e999` into infinity and says neither line nor column, so a maker
 * could lose a row of holes without a word: hence a small parser of our own.
 */
export type JsonValue =
  | null
  | boolean
  | number
  | string
  | readonly JsonValue[]
  | { readonly [key: string]: JsonValue }

/** A stove file is a few kilobytes; a megabyte is some other file. */
export const MAX_CHARACTERS = 1_000_000
/** A stove file nests nine deep at most. */
export const MAX_DEPTH = 32

/** Keys that would reach behind a JavaScript object instead of into it. */
const POISONED = new Set(['__proto__', 'constructor', 'prototype'])

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
// biome-ignore lint/suspicious/noControlCharactersInRegex: a text may hold any character but just these (RFC 8259, section 7)
const PLAIN_TEXT = /[^"\\\u0000-\u001f]*/y

const ESCAPES: Readonly<Record<string, string>> = {
  '"': '"',
  '\\': '\\',
  '/': '/',
  b: '\b',
  f: '\f',
  n: '\n',
  r: '\r',
  t: '\t',
}

const WORDS: ReadonlyMap<string, JsonValue> = new Map<string, JsonValue>([
  ['true', true],
  ['false', false],
  ['null', null],
])

interface Reading extends Cursor {
  /** Where in the document the cursor is. */
  readonly path: PropertyKey[]
  /** Faults that do not end the reading. */
  readonly problems: Problem[]
}

const REST_OF_TEXT = 'the rest of the text and a closing quotation mark'

const readEscape = (cursor: Cursor): string => {
  const start = cursor.at - 1
  const letter = cursor.text[cursor.at] ?? cutShort(cursor, REST_OF_TEXT)
  cursor.at += 1
  const plain = ESCAPES[letter]
  if (plain !== undefined) return plain
  const digits = letter === 'u' ? cursor.text.slice(cursor.at, cursor.at + 4) : ''
  if (!/^[0-9a-fA-F]{4}$/.test(digits))
    fail(
      cursor,
      'escape',
      `\\${letter}${digits}`,
      '\\" \\\\ \\/ \\b \\f \\n \\r \\t or \\u with four digits',
      'Write a backslash twice (\\\\) where you want one.',
      start,
    )
  cursor.at += 4
  return String.fromCharCode(Number.parseInt(digits, 16))
}

const readText = (cursor: Cursor): string => {
  const start = cursor.at
  cursor.at += 1
  let text = ''
  for (;;) {
    text += take(cursor, PLAIN_TEXT)
    const stop = cursor.text[cursor.at] ?? cutShort(cursor, REST_OF_TEXT)
    cursor.at += 1
    if (stop === '"') break
    if (stop === '\\') text += readEscape(cursor)
    else
      fail(
        cursor,
        'line-break',
        stop === '\n' || stop === '\r' ? 'a line break inside a text' : 'a control character inside a text',
        'text on one line between quotation marks',
        'Close the text with a quotation mark on the same line; write \\n for a line break inside it.',
        cursor.at - 1,
      )
  }
  // Half of a surrogate pair cannot be saved as UTF-8.
  if (!text.isWellFormed())
    fail(
      cursor,
      'escape',
      'half a character',
      'whole Unicode characters',
      'Type the character itself.',
      start,
    )
  return text
}

const readNumber = (cursor: Cursor): number => {
  const start = cursor.at
  const digits = take(cursor, NUMBER)
  const rest = takeWord(cursor)
  if (digits === '' || rest !== '') {
    cursor.at = start
    return unexpected(cursor, 'a whole number such as 8, or a text in quotation marks such as "16 mm"')
  }
  const value = Number(digits)
  if (!Number.isFinite(value))
    fail(cursor, 'too-large', digits, 'a number a computer can hold', 'Is an exponent mistyped?', start)
  return value
}

/** Takes the comma before another entry, or the bracket that closes; says whether it was the bracket. */
const closes = (cursor: Cursor, bracket: ']' | '}', named: string): boolean => {
  const found = next(cursor)
  if (found !== ',' && found !== bracket) unexpected(cursor, `a comma or a closing ${named} ${bracket}`)
  cursor.at += 1
  if (found === bracket) return true
  if (next(cursor) === bracket)
    fail(
      cursor,
      'trailing-comma',
      'a comma after the last entry',
      'a comma only between entries',
      'Delete that comma.',
    )
  return false
}

const readList = (reading: Reading, depth: number): JsonValue[] => {
  const list: JsonValue[] = []
  reading.at += 1
  if (next(reading) === ']') {
    reading.at += 1
    return list
  }
  do {
    reading.path.push(list.length)
    list.push(readValue(reading, depth + 1))
    reading.path.pop()
  } while (!closes(reading, ']', 'bracket'))
  return list
}

/** Reads a key; `seen` holds where each one of this object first stood. */
const readKey = (reading: Reading, seen: Map<string, number>): string => {
  if (next(reading) !== '"') unexpected(reading, 'a key in quotation marks')
  const start = reading.at
  const key = readText(reading)
  const first = seen.get(key)
  const field = fieldPath([...reading.path, key])
  if (POISONED.has(key))
    reading.problems.push({
      code: 'json.refused-key',
      field,
      value: `"${key}" (${place(reading, start)})`,
      allowed: 'any other name',
      fix: 'This name is reserved by the language Tinwright is written in; choose another.',
    })
  else if (first === undefined) seen.set(key, start)
  else
    reading.problems.push({
      code: 'json.duplicate-key',
      field,
      value: `"${key}" twice (${place(reading, first)} and ${place(reading, start)})`,
      allowed: 'each name once in the same braces',
      fix: 'Rename or delete one of the two: only one could count.',
    })
  return key
}

const readObject = (reading: Reading, depth: number): { [key: string]: JsonValue } => {
  const entries: [string, JsonValue][] = []
  const seen = new Map<string, number>()
  reading.at += 1
  if (next(reading) === '}') {
    reading.at += 1
    return {}
  }
  do {
    const key = readKey(reading, seen)
    if (next(reading) !== ':') unexpected(reading, 'a colon between the name and its value')
    reading.at += 1
    reading.path.push(key)
    entries.push([key, readValue(reading, depth + 1)])
    reading.path.pop()
  } while (!closes(reading, '}', 'brace'))
  // fromEntries defines properties, it does not assign them: `__proto__` stays a plain key.
  return Object.fromEntries(entries)
}

const readValue = (reading: Reading, depth: number): JsonValue => {
  const first = next(reading)
  if (depth === MAX_DEPTH && (first === '{' || first === '['))
    fail(
      reading,
      'too-deep',
      `${depth + 1} brackets deep`,
      `at most ${MAX_DEPTH} deep`,
      'No Tinwright file is that deep; is it the right one?',
    )
  if (first === '{') return readObject(reading, depth)
  if (first === '[') return readList(reading, depth)
  if (first === '"') return readText(reading)
  if (first === '-' || (first >= '0' && first <= '9')) return readNumber(reading)
  const word = here(reading)
  const value = WORDS.get(word)
  if (value === undefined)
    return unexpected(reading, 'a value: a text in quotation marks, a whole number, true, false, [ or {')
  reading.at += word.length
  return value
}

/**
 * Reads JSON text. The first fault of grammar ends the reading; repeated and refused keys are all
 * collected. Problems: `json.*`, their field is `line …, column …` or the path of the key.
 */
export const readJson = (source: string): Outcome<JsonValue> => {
  if (source.length > MAX_CHARACTERS)
    return bad({
      code: 'json.too-long',
      field: 'file',
      value: `${source.length} characters`,
      allowed: `at most ${MAX_CHARACTERS} characters`,
      fix: 'This is too long for a Tinwright file; is it the right one?',
    })
  // Some editors put a byte order mark in front; it says nothing about the content.
  const text = source.startsWith('\ufeff') ? source.slice(1) : source
  const reading: Reading = { text, at: 0, path: [], problems: [] }
  const { problems } = reading
  try {
    const value = readValue(reading, 0)
    if (next(reading) !== '')
      unexpected(
        reading,
        'nothing after the last closing brace',
        'after-the-end',
        'Delete what follows, or look for a brace that closes too early.',
      )
    return problems.length === 0 ? good(value) : bad(...problems)
  } catch (fault) {
    if (fault instanceof Fault) return bad(...problems, fault.problem)
    throw fault
  }
}
