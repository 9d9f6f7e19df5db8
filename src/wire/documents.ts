import type { Kind } from './kinds.ts'

/**
 * Who does something, and when. The id is made by whoever asks, fresh for each thing done: asked again
 * with the same id (after a lost answer, say), the thing is not done twice.
 */
export interface Act {
  readonly id: string
  /** The window, phone or command that asks. Each has its own undo. */
  readonly client: string
  /** `2031-05-17T14:05:00Z` */
  readonly at: string
}

/** What stands in a list. */
export interface DocumentHead {
  readonly id: string
  readonly kind: Kind
  readonly name: string
  /** Id of the revision that counts. */
  readonly head: string
  readonly deleted: boolean
  /** Changes whenever name, head or deleted does; hand it back to say what you saw. */
  readonly version: number
  /** What a photo or a trial belongs to. */
  readonly aboutDocument: string | null
  /** The revision of the stove that a trial burned. */
  readonly aboutRevision: string | null
  readonly created: string
  /** Workshop's sequence number of the last write to it, its trial events included. */
  readonly touched: number
}

export interface RevisionHead {
  readonly id: string
  readonly document: string
  /** None: the first. Several: it joins them. A parent may belong to another document: a variant's first. */
  readonly parents: readonly string[]
  /** What was changed and why. */
  readonly note: string
  /** SHA-256 of the text in UTF-8, hexadecimal. */
  readonly hash: string
  readonly created: string
}

export interface Revision extends RevisionHead {
  /** Exactly as written. */
  readonly text: string
}

export interface OpenDocument {
  readonly document: DocumentHead
  readonly revision: Revision
}

export interface NewDocument {
  readonly id: string
  readonly kind: Kind
  readonly name: string
  readonly revision: string
  readonly text: string
  readonly note: string
  /** Of a variant: the revision it was made from. */
  readonly parents?: readonly string[]
  readonly aboutDocument?: string
  readonly aboutRevision?: string
  /** The window's draft whose text this is. */
  readonly draft?: { readonly number: number }
}

export interface NewRevision {
  readonly document: string
  /** Id of the new revision. */
  readonly revision: string
  /** The head that the edit began from: another one by now is a conflict. */
  readonly base: string
  readonly text: string
  readonly note: string
  /** `base` when left out. */
  readonly parents?: readonly string[]
  /** The window's draft whose text this is: it goes on from the new revision, with all its undo. */
  readonly draft?: { readonly number: number }
}

export interface WorkshopAbout {
  readonly id: string
  readonly format: number
  readonly created: string
  /** When the demo stoves were laid in, or null. */
  readonly demo: string | null
  /** Number of the last write. */
  readonly sequence: number
  /** Where it is: a path, or a server without user and password. */
  readonly place: string
}

export interface ListWish {
  readonly kinds?: readonly Kind[]
  /** Those taken away too. */
  readonly deleted?: boolean
  readonly aboutDocument?: string
}
