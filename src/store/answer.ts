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
  /** The database server does not answer. */
  | 'unreachable'
  /** No document, revision or draft of that name. */
  | 'unknown'
  /** There is nothing to undo, or nothing to redo. */
  | 'nothing left'
  /** What was handed in cannot be kept as it is. */
  | 'bad input'
  | 'too large'

export interface Refusal {
  readonly code: RefusalCode
  readonly sentence: string
}

/** What was asked for, or the reason why not. A refusal changes nothing. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: Refusal }

export const given = <T>(value: T): Answer<T> => ({ ok: true, value })
export const refused = (code: RefusalCode, sentence: string): Answer<never> => ({
  ok: false,
  refusal: { code, sentence },
})

/** Carries a refusal out of the middle of a transaction, which it undoes. Never leaves this folder. */
export class Refused extends Error {
  readonly refusal: Refusal
  constructor(refusal: Refusal) {
    super(refusal.sentence)
    this.name = 'Refused'
    this.refusal = refusal
  }
}

export const refuse = (code: RefusalCode, sentence: string): never => {
  throw new Refused({ code, sentence })
}
