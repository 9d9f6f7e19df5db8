import type { MAX_CHARACTERS } from '#stove/document/json.ts'
import {
  ID_ALLOWED,
  INSTANT_ALLOWED,
  isId,
  isInstant,
  MAX_NAME,
  MAX_TEXT as WIRE_TEXT,
} from '#wire/limits.ts'
import { refuse } from './answer.ts'
import type { Act } from './workshop.ts'

export { MAX_EVENT, MAX_EVENTS, MAX_LABEL, MAX_NAME, MAX_NOTE, MAX_PHOTO } from '#wire/limits.ts'

/** As many characters as a stove file may have: the compiler sees to it that both say the same. */
export const MAX_TEXT: typeof MAX_CHARACTERS = WIRE_TEXT

const refuseField = (field: string, allowed: string): never =>
  refuse('bad input', `${field} will not do; allowed is ${allowed}. Nothing was changed.`)

export const checkId = (id: string, field: string): void => {
  if (!isId(id)) refuseField(field, ID_ALLOWED)
}

export const checkInstant = (at: string, field: string): void => {
  if (!isInstant(at)) refuseField(field, INSTANT_ALLOWED)
}

/**
 * Text that both databases give back exactly as it came: half a surrogate pair has no UTF-8, and PostgreSQL
 * keeps no NUL.
 */
export const checkText = (text: string, field: string, most: number): void => {
  if (text.length > most)
    refuse(
      'too large',
      `${field} has ${text.length} characters; allowed are ${most}. Nothing was changed. Shorten it.`,
    )
  if (text.includes('\0') || !text.isWellFormed())
    refuseField(field, 'text without NUL characters and without halves of characters')
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it looks for
const CONTROL = /[\u0000-\u001f\u007f]/

/** A name stands in one line. */
export const checkName = (name: string, field: string): void => {
  checkText(name, field, MAX_NAME)
  if (name.trim() === '' || CONTROL.test(name))
    refuseField(field, `a name of one line, up to ${MAX_NAME} characters`)
}

export const checkAct = ({ id, client, at }: Act): void => {
  checkId(id, 'the id of the step')
  checkId(client, 'the id of the client')
  checkInstant(at, 'the time of the step')
}
