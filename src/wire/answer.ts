import type { Problem } from '#basis/problem.ts'

/** Why something was not done. Programs look at the code; a maker reads the sentence. */
export type RefusalCode =
  /** There is no workshop there. */
  | 'missing'
  /** What is there is something else: a folder, a text, a database of another program. */
  | 'not a workshop'
  /** Written by a newer program. */
  | 'newer'
  | 'damaged'
  /** Another program holds it, longer than we wait. */
  | 'busy'
  /** Somebody else changed the same thing since. */
  | 'conflict'
  /** May be read, not written. */
  | 'read-only'
  /** A network drive, where the write-ahead log does not work. */
  | 'network drive'
  | 'full'
  /** The database server, or the bench's own server, does not answer. */
  | 'unreachable'
  /** No document, revision, draft, device or call of that name. */
  | 'unknown'
  /** There is nothing to undo, or nothing to redo. */
  | 'nothing left'
  /** What was handed in cannot be kept as it is. */
  | 'bad input'
  | 'too large'
  /** Of the server: a guest asks in a way that only this very page may. */
  | 'not allowed'
  /** Of the server: this device has not been let in, or no longer. */
  | 'not paired'
  /** Of the server: so many attempts were wrong that it waits. */
  | 'too often'
  /** Of the server: the program itself broke. Whether it was done is not known; ask again with the same id. */
  | 'broken'

export interface Refusal {
  readonly code: RefusalCode
  readonly sentence: string
}

/** What was asked for, or the reason why not. A refusal changes nothing. */
export type Answer<T> = { readonly ok: true; readonly value: T } | NoAnswer

export interface NoAnswer {
  readonly ok: false
  readonly refusal: Refusal
  /** Field by field, where the request itself would not do. */
  readonly problems?: readonly Problem[]
}

/** What was asked for. */
export const given = <T>(value: T): Answer<T> => ({ ok: true, value })
/** A refusal, with a sentence for whoever asked; nothing was changed. */
export const refused = (code: RefusalCode, sentence: string): NoAnswer => ({
  ok: false,
  refusal: { code, sentence },
})
