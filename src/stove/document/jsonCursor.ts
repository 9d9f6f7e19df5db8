import type { Problem } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import { notJsonValue } from './jsonFaults.ts'

/** Stops the reading of a JSON text at the first fault of grammar; `readJson` catches it. */
export class Fault extends Error {
  readonly problem: Problem
  constructor(problem: Problem) {
    super(problem.code)
    this.problem = problem
  }
}

const SPACE = /[ \t\r\n]*/y
const WORD = /[^\s,:[\]{}"]+/y

/** A place in a JSON text that moves on as the text is understood, and can say where it is. */
export interface Cursor {
  readonly text: string
  /** Index of the next character. */
  at: number
}

/** Line and column of a character, both from 1, as an editor counts them. */
export const place = ({ text }: Cursor, at: number): string => {
  const before = text.slice(0, at).split(/\r\n|\r|\n/)
  return `line ${before.length}, column ${(before.at(-1) ?? '').length + 1}`
}

/** Takes what a sticky pattern matches here; nothing where it does not match. */
export const take = (cursor: Cursor, pattern: RegExp): string => {
  pattern.lastIndex = cursor.at
  const found = pattern.exec(cursor.text)?.[0] ?? ''
  cursor.at += found.length
  return found
}

const takeSpace = (cursor: Cursor): void => {
  take(cursor, SPACE)
}

export const takeWord = (cursor: Cursor): string => take(cursor, WORD)

/** The next character that is no space, not taken; empty at the end. */
export const next = (cursor: Cursor): string => {
  takeSpace(cursor)
  return cursor.text[cursor.at] ?? ''
}

/** The word or the character that stands here, not taken. */
export const here = (cursor: Cursor): string => {
  const word = takeWord({ ...cursor })
  const code = cursor.text.codePointAt(cursor.at)
  return word !== '' || code === undefined ? word : String.fromCodePoint(code)
}

/** For a message: by number where nobody could see it. */
const visible = (text: string): string =>
  /^[\p{C}\p{Z}]/u.test(text)
    ? `an invisible character (U+${(text.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')})`
    : text

export const fail = (
  cursor: Cursor,
  code: string,
  value: string,
  allowed: string,
  fix: string,
  at = cursor.at,
): never => {
  throw new Fault({ code: `json.${code}`, field: place(cursor, at), value: shown(value), allowed, fix })
}

export const cutShort = (cursor: Cursor, allowed: string): never =>
  fail(
    cursor,
    'cut-short',
    'the end of the file',
    allowed,
    'The file stops in the middle: part of it is missing. Take a whole copy, or close what is still open.',
  )

/** Something stands here that may not; tells the usual slips by their name. */
export const unexpected = (
  cursor: Cursor,
  allowed: string,
  code = 'unexpected',
  fix = `Put ${allowed} here.`,
): never => {
  if (cursor.at >= cursor.text.length) return cutShort(cursor, allowed)
  const found = here(cursor)
  const slip = notJsonValue(
    found.trim() === '' ? '' : shown(found),
    cursor.text.slice(cursor.at, cursor.at + 2),
  )
  return fail(cursor, slip?.code ?? code, slip?.value ?? visible(found), allowed, slip?.fix ?? fix)
}
