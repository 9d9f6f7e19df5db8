import { MAX_CHARACTERS } from '#stove/document/json.ts'
import { refuse } from './answer.ts'
import type { Act } from './workshop.ts'

/** As many characters as a stove file may have. */
export const MAX_TEXT = MAX_CHARACTERS
export const MAX_NOTE = 4000
export const MAX_NAME = 120
export const MAX_LABEL = 200
export const MAX_EVENT = 10_000
/** Events in one batch: a phone that was away for a whole burn. */
export const MAX_EVENTS = 5000
/** A photo of a phone has three to eight. [bytes] */
export const MAX_PHOTO = 16_000_000

const ID = /^[A-Za-z0-9][A-Za-z0-9_.-]{0,79}$/
const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d{1,3})?Z$/

const refuseField = (field: string, allowed: string): never =>
  refuse('bad input', `${field} will not do; allowed is ${allowed}. Nothing was changed.`)

export const checkId = (id: string, field: string): void => {
  if (!ID.test(id))
    refuseField(field, 'an id of up to 80 letters, digits, - _ and dots that begins with a letter or a digit')
}

export const checkInstant = (at: string, field: string): void => {
  if (!INSTANT.test(at) || Number.isNaN(Date.parse(at)))
    refuseField(field, 'a time such as 2031-05-17T14:05:00Z')
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
