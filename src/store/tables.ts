/** The tables as the queries see them. `schema.json` holds what the databases say of them; a test compares. */

/** One row: the workshop itself. */
export interface WorkshopTable {
  readonly id: string
  /** Of the tables. A program writes only into the format it knows. */
  readonly format: number
  readonly created: string
  /** When the demo stoves were laid in, or null. */
  readonly demo: string | null
  /** Counts every write; the first statement of each takes this row, so that writes come one by one. */
  readonly sequence: number
}

/** Whatever has a name and revisions: stoves, cans, bits, fuels, pots, trials, photos, settings. */
export interface DocumentTable {
  readonly id: string
  readonly kind: string
  readonly name: string
  /** The revision that counts. No foreign key: a document and its first revision point at each other. */
  readonly head: string
  /** 1: taken away. The row stays. */
  readonly deleted: number
  /** Goes up by one whenever name, head or deleted changes. */
  readonly version: number
  /** The document a photo or a trial belongs to. */
  readonly about_document: string | null
  /** The revision of the stove that a trial burned. */
  readonly about_revision: string | null
  readonly created: string
  /** Sequence of the last write to it or to what hangs on it. */
  readonly touched: number
  /** Order in which documents were made. */
  readonly place: number
}

/** Added, never changed. */
export interface RevisionTable {
  readonly id: string
  readonly document: string
  /** Exactly as written. */
  readonly text: string
  /** What was changed and why. */
  readonly note: string
  /** SHA-256 of the text in UTF-8, hexadecimal. */
  readonly hash: string
  readonly created: string
  /** Order in which revisions were added: parents before children. */
  readonly place: number
}

export interface ParentTable {
  readonly revision: string
  readonly parent: string
  readonly place: number
}

/** One thing that someone did: what undo and redo take back and do again. */
export interface StepTable {
  /** Made by whoever asks: asked twice, it is done once. */
  readonly id: string
  readonly sequence: number
  readonly client: string
  readonly kind: 'do' | 'undo' | 'redo'
  /** What was done, for the button: `save “Redshank”`. */
  readonly label: string
  /** SHA-256 of what was asked, so that an id used twice for different things is noticed. */
  readonly fingerprint: string
  /** The step that this one undoes or redoes. */
  readonly of: string | null
  /** The step that took this one back, while it is taken back. */
  readonly undone_by: string | null
  readonly created: string
}

/** What a step did to one document. */
export interface ChangeTable {
  readonly step: string
  readonly place: number
  readonly document: string
  readonly name_before: string
  readonly name_after: string
  readonly head_before: string
  readonly head_after: string
  readonly deleted_before: number
  readonly deleted_after: number
}

/** An edit in progress: one for each document and each window. */
export interface DraftTable {
  readonly document: string
  readonly client: string
  /** The revision it started from; null for a document that is not saved yet. */
  readonly base: string | null
  /** Goes up by one with every write; whoever writes says which one they saw last. */
  readonly number: number
  /** The entry that counts: undo and redo move it. */
  readonly position: number
  /** 1: put away. */
  readonly closed: number
  readonly updated: string
  readonly touched: number
}

export interface DraftEntryTable {
  readonly document: string
  readonly client: string
  readonly place: number
  readonly text: string
  readonly label: string
}

/** Something seen at the stove. Added, never changed: a correction is an event that replaces another. */
export interface EventTable {
  /** Made by the phone that saw it. */
  readonly id: string
  readonly trial: string
  readonly at: string
  readonly body: string
  readonly replaces: string | null
  readonly withdrawn: number
  readonly client: string
  readonly created: string
  readonly sequence: number
}

/** Bytes of photos, by their hash. */
export interface BlobTable {
  readonly hash: string
  readonly size: number
  readonly bytes: Uint8Array
}

export interface Tables {
  workshop: WorkshopTable
  documents: DocumentTable
  revisions: RevisionTable
  parents: ParentTable
  steps: StepTable
  changes: ChangeTable
  drafts: DraftTable
  draft_entries: DraftEntryTable
  events: EventTable
  blobs: BlobTable
}

export const TABLE_NAMES = [
  'workshop',
  'documents',
  'revisions',
  'parents',
  'steps',
  'changes',
  'drafts',
  'draft_entries',
  'events',
  'blobs',
] as const satisfies readonly (keyof Tables)[]
