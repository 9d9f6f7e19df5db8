import * as z from 'zod'
import { KINDS } from './kinds.ts'
import {
  ID_ALLOWED,
  INSTANT_ALLOWED,
  isId,
  isInstant,
  MAX_EVENT,
  MAX_EVENTS,
  MAX_LABEL,
  MAX_NAME,
  MAX_NOTE,
  MAX_PARENTS,
  MAX_TEXT,
} from './limits.ts'

// What the requests are made of. Shape and size are settled here; whether a thing is there, and what a text
// may say, is the workshop's own business.

export const id = z.string().refine(isId, ID_ALLOWED)
const instant = z.string().refine(isInstant, INSTANT_ALLOWED)
/** Anything that counts up: a version, a draft's number, a sequence. */
export const count = z.int().nonnegative()
const kind = z.enum(KINDS)
export const name = z.string().max(MAX_NAME)
const note = z.string().max(MAX_NOTE)
export const text = z.string().max(MAX_TEXT)
const label = z.string().max(MAX_LABEL)
const parents = z.array(id).max(MAX_PARENTS).readonly()

export const act = z.strictObject({ id, client: id, at: instant })

const draftNumber = z.strictObject({ number: count })

export const newDocument = z.strictObject({
  id,
  kind,
  name,
  revision: id,
  text,
  note,
  parents: parents.exactOptional(),
  aboutDocument: id.exactOptional(),
  aboutRevision: id.exactOptional(),
  draft: draftNumber.exactOptional(),
})

export const newRevision = z.strictObject({
  document: id,
  revision: id,
  base: id,
  text,
  note,
  parents: parents.exactOptional(),
  draft: draftNumber.exactOptional(),
})

/** A document as it was seen. */
export const seen = { act, document: id, version: count }

export const autosave = z.strictObject({
  document: id,
  client: id,
  at: instant,
  number: count,
  base: id.nullable(),
  text,
  label,
})

export const editMove = z.strictObject({ document: id, client: id, at: instant, number: count })

const newEvent = z.strictObject({
  id,
  at: instant,
  body: z.string().max(MAX_EVENT),
  replaces: id.exactOptional(),
  withdrawn: z.boolean().exactOptional(),
})

export const eventBatch = z.strictObject({
  trial: id,
  client: id,
  at: instant,
  events: z.array(newEvent).max(MAX_EVENTS).readonly(),
})

export const listWish = z.strictObject({
  kinds: z.array(kind).max(KINDS.length).readonly().exactOptional(),
  deleted: z.boolean().exactOptional(),
  aboutDocument: id.exactOptional(),
})

/** The key of a setting; the store puts `setting.` before it and wants an id. */
export const settingKey = z.string().refine((key) => isId(`setting.${key}`), 'letters, digits, - _ and dots')

export const photoWords = z.strictObject({
  id,
  revision: id,
  name,
  aboutDocument: id,
  note: note.exactOptional(),
})
