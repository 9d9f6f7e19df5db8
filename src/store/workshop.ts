import type { Answer } from '#wire/answer.ts'
import type { Changes } from '#wire/changes.ts'
import type {
  Act,
  DocumentHead,
  ListWish,
  NewDocument,
  NewRevision,
  OpenDocument,
  Revision,
  RevisionHead,
  WorkshopAbout,
} from '#wire/documents.ts'
import type { Autosave, Draft, EditMove } from '#wire/drafts.ts'
import type { ArchiveReport, ImportReport, NamedText, PhotoWords } from '#wire/files.ts'
import type { Setting } from '#wire/settings.ts'
import type { EventBatch, TrialEvent } from '#wire/trials.ts'
import type { UndoReport, UndoState } from '#wire/undo.ts'
import type { ExportedArchive } from './archive/write.ts'
import type { DemoFile, DemoReport } from './demo.ts'

export type { Changes } from '#wire/changes.ts'
// What travels between browser and server is written down once, in wire.
export type {
  Act,
  DocumentHead,
  ListWish,
  NewDocument,
  NewRevision,
  OpenDocument,
  Revision,
  RevisionHead,
  WorkshopAbout,
} from '#wire/documents.ts'
export type { Autosave, Draft, EditMove } from '#wire/drafts.ts'
export type { EventBatch, NewEvent, TrialEvent } from '#wire/trials.ts'
export type { StepView, UndoReport, UndoState } from '#wire/undo.ts'

export interface NewPhoto extends PhotoWords {
  readonly bytes: Uint8Array
}

export interface Photo {
  readonly document: DocumentHead
  readonly mediaType: string
  readonly bytes: Uint8Array
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
  readonly setting: (key: string) => Promise<Answer<Setting | null>>
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
  /** A file of a stove, a shelf or of trials. `stove`: where a trial belongs whose own words fit no stove here. */
  readonly importFile: (act: Act, file: NamedText, stove?: string) => Promise<Answer<ImportReport>>
  /** One document as it counts now, as a plain file; a trial with all its log. */
  readonly exportFile: (document: string) => Promise<Answer<NamedText>>
  /** Bits and cans as a shelf file. */
  readonly exportShelf: () => Promise<Answer<NamedText>>
  /** Lays the demo in, once, and only into a workshop in which nothing was ever made. */
  readonly loadDemo: (act: Act, files: readonly DemoFile[]) => Promise<Answer<DemoReport>>

  readonly close: () => Promise<void>
}
