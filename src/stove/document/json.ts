import type { Outcome, Problem } from '#basis/problem.ts'
import { bad, good } from '#basis/problem.ts'
import { notJsonValue } from './jsonFaults.ts'

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
const SPACE = /[ \t\r\n]*/y
const WORD = /[^\s,:[\]{}"]+/y

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

/** Stops the reading at the first fault of grammar; never leaves this file. */
class Fault extends Error {
  readonly problem: Problem
  constructor(problem: Problem) {
    super(problem.code)
    this.problem = problem
  }
}

/** `a.b[2].c`, as a maker would point at it. */
export const fieldPath = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`
    return text === '' ? String(step) : `${text}.${String(step)}`
  }, '')

/** Line and column of a character, both from 1, as an editor counts them. */
const place = (text: string, at: number): string => {
  const before = text.slice(0, at).split(/\r\n|\r|\n/)
  return `line ${before.length}, column ${(before.at(-1) ?? '').length + 1}`
}

/**
 * Reads JSON text. The first fault of grammar ends the reading; repeated and refused keys are all
 * collected. Problems: `json.*`, their field is `line …, column …` or the path of the key.
 */
export const readJson = (source: string): Outcome<JsonValue> => {
  if (source.length > MAX_CHARACTERS) {
    return bad({
      code: 'json.too-long',
      field: 'file',
      value: `${source.length} characters`,
      allowed: `at most ${MAX_CHARACTERS} characters`,
      fix: 'This is too long for a Tinwright file; is it the right one?',
    })
  }
  // Some editors put a byte order mark in front; it says nothing about the content.
  const text = source.startsWith('\ufeff') ? source.slice(1) : source
  const problems: Problem[] = []
  const path: PropertyKey[] = []
  let at = 0

  const match = (pattern: RegExp): string => {
    pattern.lastIndex = at
    const found = pattern.exec(text)?.[0] ?? ''
    at += found.length
    return found
  }
  const fail = (code: string, value: string, allowed: string, fix: string, where = at): never => {
    throw new Fault({ code: `json.${code}`, field: place(text, where), value, allowed, fix })
  }
  const ended = (what: string): never =>
    fail(
      'cut-short',
      'the end of the file',
      what,
      'The file stops in the middle: part of it is missing. Take a whole copy, or close what is still open.',
    )
  /** What stands here, as one word, for the message. */
  const here = (): string => {
    const start = at
    const word = match(WORD)
    at = start
    return word === '' ? (text[at] ?? '') : word.slice(0, 40)
  }
  const unexpected = (allowed: string): never => {
    if (at >= text.length) ended(allowed)
    const found = notJsonValue(here(), text.slice(at, at + 2))
    return fail(
      found?.code ?? 'unexpected',
      found?.value ?? here(),
      allowed,
      found?.fix ?? `Put ${allowed} here.`,
    )
  }
  const space = (): void => {
    match(SPACE)
  }

  const readEscape = (start: number): string => {
    const letter = text[at] ?? ended('the rest of the text and a closing quotation mark')
    at += 1
    const plain = ESCAPES[letter]
    if (plain !== undefined) return plain
    const digits = text.slice(at, at + 4)
    if (letter !== 'u' || !/^[0-9a-fA-F]{4}$/.test(digits)) {
      fail(
        'escape',
        text.slice(start, at + (letter === 'u' ? 4 : 0)),
        '\\" \\\\ \\/ \\b \\f \\n \\r \\t or \\u with four digits',
        'Write a backslash twice (\\\\) where you want one.',
        start,
      )
    }
    at += 4
    return String.fromCharCode(Number.parseInt(digits, 16))
  }

  const readText = (): string => {
    const start = at
    at += 1
    let result = ''
    for (;;) {
      result += match(PLAIN_TEXT)
      const stop = text[at]
      if (stop === undefined) ended('the rest of the text and a closing quotation mark')
      at += 1
      if (stop === '"') break
      if (stop === '\\') {
        result += readEscape(at - 1)
        continue
      }
      fail(
        'line-break',
        stop === '\n' || stop === '\r' ? 'a line break inside a text' : 'a control character inside a text',
        'text on one line between quotation marks',
        'Close the text with a quotation mark on the same line; write \\n for a line break inside it.',
        at - 1,
      )
    }
    // Half of a surrogate pair cannot be saved as UTF-8.
    if (!result.isWellFormed()) {
      fail('escape', 'half a character', 'whole Unicode characters', 'Type the character itself.', start)
    }
    return result
  }

  const readNumber = (): number => {
    const start = at
    const digits = match(NUMBER)
    const rest = match(WORD)
    if (digits === '' || rest !== '') {
      at = start
      return unexpected('a whole number such as 8, or a text in quotation marks such as "16 mm"')
    }
    const value = Number(digits)
    if (!Number.isFinite(value)) {
      fail('too-large', digits, 'a number a computer can hold', 'Is an exponent mistyped?', start)
    }
    return value
  }

  const readList = (depth: number): JsonValue[] => {
    const list: JsonValue[] = []
    at += 1
    space()
    if (text[at] === ']') {
      at += 1
      return list
    }
    for (;;) {
      path.push(list.length)
      list.push(readValue(depth + 1))
      path.pop()
      space()
      const next = text[at]
      if (next !== ',' && next !== ']') unexpected('a comma or a closing bracket ]')
      at += 1
      if (next === ']') return list
      space()
      if (text[at] === ']') trailingComma()
    }
  }

  const trailingComma = (): never =>
    fail(
      'trailing-comma',
      'a comma after the last entry',
      'a comma only between entries',
      'Delete that comma.',
    )

  const readKey = (firstLines: Map<string, number>): string => {
    if (text[at] !== '"') unexpected('a key in quotation marks')
    const start = at
    const key = readText()
    const first = firstLines.get(key)
    if (POISONED.has(key)) {
      problems.push({
        code: 'json.refused-key',
        field: fieldPath([...path, key]),
        value: `"${key}" (${place(text, start)})`,
        allowed: 'any other name',
        fix: 'This name is reserved by the language Tinwright is written in; choose another.',
      })
    } else if (first !== undefined) {
      problems.push({
        code: 'json.duplicate-key',
        field: fieldPath([...path, key]),
        value: `"${key}" twice (${place(text, first)} and ${place(text, start)})`,
        allowed: 'each name once in the same braces',
        fix: 'Rename or delete one of the two: only one could count.',
      })
    } else {
      firstLines.set(key, start)
    }
    return key
  }

  const readObject = (depth: number): { [key: string]: JsonValue } => {
    const entries: [string, JsonValue][] = []
    const firstLines = new Map<string, number>()
    at += 1
    space()
    if (text[at] === '}') {
      at += 1
      return {}
    }
    for (;;) {
      const key = readKey(firstLines)
      space()
      if (text[at] !== ':') unexpected('a colon between the name and its value')
      at += 1
      path.push(key)
      entries.push([key, readValue(depth + 1)])
      path.pop()
      space()
      const next = text[at]
      if (next !== ',' && next !== '}') unexpected('a comma or a closing brace }')
      at += 1
      // fromEntries defines properties, it does not assign them: `__proto__` stays a plain key.
      if (next === '}') return Object.fromEntries(entries)
      space()
      if (text[at] === '}') trailingComma()
    }
  }

  const readValue = (depth: number): JsonValue => {
    space()
    const first = text[at] ?? ''
    if (depth === MAX_DEPTH && (first === '{' || first === '[')) {
      fail(
        'too-deep',
        `${depth + 1} brackets deep`,
        `at most ${MAX_DEPTH} deep`,
        'No Tinwright file is that deep; is it the right one?',
      )
    }
    if (first === '{') return readObject(depth)
    if (first === '[') return readList(depth)
    if (first === '"') return readText()
    if (first === '-' || (first >= '0' && first <= '9')) return readNumber()
    for (const [word, value] of [
      ['true', true],
      ['false', false],
      ['null', null],
    ] as const) {
      if (here() !== word) continue
      at += word.length
      return value
    }
    return unexpected('a value: a text in quotation marks, a whole number, true, false, [ or {')
  }

  try {
    const value = readValue(0)
    space()
    if (at < text.length) {
      const found = notJsonValue(here(), text.slice(at, at + 2))
      fail(
        found?.code ?? 'after-the-end',
        found?.value ?? here(),
        'nothing after the last closing brace',
        found?.fix ?? 'Delete what follows, or look for a brace that closes too early.',
      )
    }
    return problems.length === 0 ? good(value) : bad(...problems)
  } catch (fault) {
    if (fault instanceof Fault) return bad(...problems, fault.problem)
    throw fault
  }
}
