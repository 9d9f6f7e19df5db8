import type { Answer } from './answer.ts'
import type { ArchiveReport } from './archive/merge.ts'
import type { ExportedArchive } from './archive/write.ts'
import type { DemoReport } from './demo.ts'
import type { ImportReport } from './files/importFile.ts'
import type { NamedText } from './files/namedText.ts'
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

/** An undone or undoable thing, for the buttons. */
export interface StepView {
  readonly id: string
  readonly label: string
  readonly created: string
}

export interface UndoState {
  /** What undo would take back, or null. */
  readonly undo: StepView | null
  readonly redo: StepView | null
}

export interface UndoReport {
  readonly step: StepView
  /** What it touched, as it stands now. */
  readonly documents: readonly DocumentHead[]
}

/** An edit in progress in one window. */
export interface Draft {
  readonly document: string
  readonly client: string
  readonly base: string | null
  /** Hand it back with the next write. */
  readonly number: number
  readonly text: string
  /** What the edit undo would take back, in words; null: nothing. */
  readonly undo: string | null
  readonly redo: string | null
  /** It says something else than the revision it began from. */
  readonly unsaved: boolean
  readonly closed: boolean
  readonly updated: string
}

export interface Autosave {
  readonly document: string
  readonly client: string
  readonly at: string
  /** The draft's number as last seen; 0 for a new draft. */
  readonly number: number
  /** Revision the edit began from; null where the document is not saved yet. Read when the draft begins. */
  readonly base: string | null
  readonly text: string
  /** What was edited, for the undo button: `move the upper row`. */
  readonly label: string
}

export interface EditMove {
  readonly document: string
  readonly client: string
  readonly at: string
  readonly number: number
}

export interface NewEvent {
  /** Made by the phone; handed in twice, it is kept once. */
  readonly id: string
  readonly at: string
  /** JSON text. */
  readonly body: string
  /** The event that this one corrects. */
  readonly replaces?: string
  /** Takes the replaced one back without a successor. Undo of that: an event that replaces this one. */
  readonly withdrawn?: boolean
}

export interface TrialEvent {
  readonly id: string
  readonly trial: string
  readonly at: string
  readonly body: string
  readonly replaces: string | null
  readonly withdrawn: boolean
  readonly client: string
  readonly created: string
  readonly sequence: number
}

export interface EventBatch {
  readonly trial: string
  readonly client: string
  readonly at: string
  readonly events: readonly NewEvent[]
}

export interface NewPhoto {
  readonly id: string
  readonly revision: string
  readonly name: string
  readonly aboutDocument: string
  readonly bytes: Uint8Array
  readonly note?: string
}

export interface Photo {
  readonly document: DocumentHead
  readonly mediaType: string
  readonly bytes: Uint8Array
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

export interface Changes {
  /** Ask from here next time. */
  readonly sequence: number
  /** Touched since. */
  readonly documents: readonly DocumentHead[]
  readonly drafts: readonly Pick<Draft, 'document' | 'client' | 'number' | 'closed'>[]
}

export interface ListWish {
  readonly kinds?: readonly Kind[]
  /** Those taken away too. */
  readonly deleted?: boolean
  readonly aboutDocument?: string
}

export interface WatchWish {
  readonly since: number
  /** Time between two looks [ms]. */
  readonly every: number
  readonly signal: AbortSignal
}

/**
 * Everything a maker keeps. Every function answers with what was asked for or with the reason why not, and
 * a refusal changes nothing. Errors thrown are faults of the program.
 */
export interface Workshop {
  readonly about: () => Promise<Answer<WorkshopAbout>>

  /** In the order in which they were first written. */
  readonly list: (wish?: ListWish) => Promise<Answer<readonly DocumentHead[]>>
  readonly open: (document: string) => Promise<Answer<OpenDocument>>
  readonly revision: (id: string) => Promise<Answer<Revision>>
  /** All revisions of one document, the oldest first, those that undo left aside too. */
  readonly history: (document: string) => Promise<Answer<readonly RevisionHead[]>>
  /** All revisions that a document descends from or shares an ancestor with, the oldest first. */
  readonly family: (document: string) => Promise<Answer<readonly RevisionHead[]>>

  readonly create: (act: Act, wanted: NewDocument) => Promise<Answer<DocumentHead>>
  readonly save: (act: Act, wanted: NewRevision) => Promise<Answer<DocumentHead>>
  readonly rename: (
    act: Act,
    document: string,
    version: number,
    name: string,
  ) => Promise<Answer<DocumentHead>>
  /** Takes it away; nothing is lost. */
  readonly remove: (act: Act, document: string, version: number) => Promise<Answer<DocumentHead>>
  readonly restore: (act: Act, document: string, version: number) => Promise<Answer<DocumentHead>>

  /** Takes back the last thing this client did. */
  readonly undo: (act: Act) => Promise<Answer<UndoReport>>
  readonly redo: (act: Act) => Promise<Answer<UndoReport>>
  readonly undoState: (client: string) => Promise<Answer<UndoState>>

  readonly autosave: (wanted: Autosave) => Promise<Answer<Draft>>
  readonly undoEdit: (move: EditMove) => Promise<Answer<Draft>>
  readonly redoEdit: (move: EditMove) => Promise<Answer<Draft>>
  /** Puts a draft away. Its text stays: the next autosave takes it up again. */
  readonly closeDraft: (move: EditMove) => Promise<Answer<Draft>>
  readonly draft: (document: string, client: string) => Promise<Answer<Draft | null>>
  /** Drafts that are not put away: of one document, or all. */
  readonly drafts: (document?: string) => Promise<Answer<readonly Draft[]>>

  /** Keeps what is new of a batch and answers with all of it as it is kept. */
  readonly logEvents: (batch: EventBatch) => Promise<Answer<readonly TrialEvent[]>>
  /** Events of a trial that were written after a sequence number, in that order; replaced ones too. */
  readonly events: (trial: string, since?: number) => Promise<Answer<readonly TrialEvent[]>>

  readonly attach: (act: Act, photo: NewPhoto) => Promise<Answer<DocumentHead>>
  readonly photo: (document: string) => Promise<Answer<Photo>>

  /** Text kept under a key, or null. */
  readonly setting: (key: string) => Promise<Answer<{ readonly text: string; readonly head: string } | null>>
  /** `base`: the head as last seen, null for a key that is not set yet. */
  readonly setSetting: (
    act: Act,
    key: string,
    base: string | null,
    text: string,
  ) => Promise<Answer<DocumentHead>>

  readonly changesSince: (sequence: number) => Promise<Answer<Changes>>
  /** Gives changes as they come, by this program or another. Ends with the signal or after a refusal. */
  readonly watch: (wish: WatchWish) => AsyncGenerator<Answer<Changes>, void>

  /** Reads every revision and photo and compares it with its hash. */
  readonly verify: () => Promise<Answer<readonly string[]>>

  readonly exportArchive: (at: string) => Promise<Answer<ExportedArchive>>
  readonly importArchive: (act: Act, bytes: Uint8Array) => Promise<Answer<ArchiveReport>>
  /** A stove file or a shelf file. */
  readonly importFile: (act: Act, file: NamedText) => Promise<Answer<ImportReport>>
  /** One document as it counts now, as a plain file. */
  readonly exportFile: (document: string) => Promise<Answer<NamedText>>
  /** Bits and cans as a shelf file. */
  readonly exportShelf: () => Promise<Answer<NamedText>>
  /** Lays the demo in, once, and only into a workshop in which nothing was ever made. */
  readonly loadDemo: (act: Act, files: readonly NamedText[]) => Promise<Answer<DemoReport>>

  readonly close: () => Promise<void>
}
