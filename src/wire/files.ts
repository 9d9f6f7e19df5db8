import type { DocumentHead } from './documents.ts'

/** A file by its name and what it says. */
export interface NamedText {
  readonly name: string
  readonly text: string
}

export interface ImportReport {
  readonly added: readonly DocumentHead[]
  /** Were here under that name and got a revision. */
  readonly renewed: readonly DocumentHead[]
  /** Are here already, word for word. */
  readonly known: readonly DocumentHead[]
  /** What the maker should know of it, a sentence each. */
  readonly remarks: readonly string[]
}

export interface ArchiveReport {
  /** Documents that were not here. */
  readonly added: number
  /** Documents that were here and go on to the archive's newer revision, or come back. */
  readonly renewed: number
  /** Documents that were here and stay as they are. */
  readonly kept: number
  readonly revisions: number
  readonly events: number
  readonly photos: number
  /** Names of those that went two ways since: this workshop's revision counts, the other one is in the family. */
  readonly apart: readonly string[]
  /** Files in the archive that belong to nothing in it. */
  readonly strange: readonly string[]
}

/** A photo but for its bytes. */
export interface PhotoWords {
  readonly id: string
  readonly revision: string
  readonly name: string
  readonly aboutDocument: string
  readonly note?: string
}
