import * as z from 'zod'
import type { Changes } from './changes.ts'
import type { DocumentHead, OpenDocument, Revision, RevisionHead, WorkshopAbout } from './documents.ts'
import type { Device, Door, Invitation } from './door.ts'
import type { Draft } from './drafts.ts'
import {
  act,
  autosave,
  count,
  editMove,
  eventBatch,
  id,
  listWish,
  name,
  newDocument,
  newRevision,
  seen,
  settingKey,
  text,
} from './fields.ts'
import type { ImportReport, NamedText } from './files.ts'
import { EVENTS_BODY, SMALL_BODY, TEXT_BODY } from './limits.ts'
import type { Setting } from './settings.ts'
import type { TrialEvent } from './trials.ts'
import type { UndoReport, UndoState } from './undo.ts'

/** One thing that a page may ask the server for. */
export interface Call<Schema extends z.ZodType = z.ZodType, T = unknown> {
  readonly request: Schema
  readonly writes: boolean
  /** The request as JSON in UTF-8 [bytes] */
  readonly mostBytes: number
  /** What it answers; a type only, nobody ever sets it. */
  readonly answers?: T
}

/** The answer's type is named first, the schema tells its own: hence two pairs of brackets. */
const asks =
  <T>() =>
  <S extends z.ZodType>(request: S): Call<S, T> => ({ request, writes: false, mostBytes: SMALL_BODY })

const writes =
  <T>() =>
  <S extends z.ZodType>(request: S, mostBytes: number = SMALL_BODY): Call<S, T> => ({
    request,
    writes: true,
    mostBytes,
  })

const nothing = z.strictObject({})

/** The workshop, call by call. Words and meaning are those of `Workshop` in the store; arguments have names here. */
export const WORKSHOP_CALLS = {
  about: asks<WorkshopAbout>()(nothing),
  list: asks<readonly DocumentHead[]>()(listWish),
  open: asks<OpenDocument>()(z.strictObject({ document: id })),
  revision: asks<Revision>()(z.strictObject({ id })),
  history: asks<readonly RevisionHead[]>()(z.strictObject({ document: id })),
  family: asks<readonly RevisionHead[]>()(z.strictObject({ document: id })),

  create: writes<DocumentHead>()(z.strictObject({ act, wanted: newDocument }), TEXT_BODY),
  save: writes<DocumentHead>()(z.strictObject({ act, wanted: newRevision }), TEXT_BODY),
  rename: writes<DocumentHead>()(z.strictObject({ ...seen, name })),
  remove: writes<DocumentHead>()(z.strictObject(seen)),
  restore: writes<DocumentHead>()(z.strictObject(seen)),

  undo: writes<UndoReport>()(z.strictObject({ act })),
  redo: writes<UndoReport>()(z.strictObject({ act })),
  undoState: asks<UndoState>()(z.strictObject({ client: id })),

  autosave: writes<Draft>()(autosave, TEXT_BODY),
  undoEdit: writes<Draft>()(editMove),
  redoEdit: writes<Draft>()(editMove),
  closeDraft: writes<Draft>()(editMove),
  draft: asks<Draft | null>()(z.strictObject({ document: id, client: id })),
  drafts: asks<readonly Draft[]>()(z.strictObject({ document: id.exactOptional() })),

  logEvents: writes<readonly TrialEvent[]>()(eventBatch, EVENTS_BODY),
  events: asks<readonly TrialEvent[]>()(z.strictObject({ trial: id, since: count.exactOptional() })),

  setting: asks<Setting | null>()(z.strictObject({ key: settingKey })),
  setSetting: writes<DocumentHead>()(
    z.strictObject({ act, key: settingKey, base: id.nullable(), text }),
    TEXT_BODY,
  ),

  changesSince: asks<Changes>()(z.strictObject({ sequence: count })),
  verify: asks<readonly string[]>()(nothing),

  importFile: writes<ImportReport>()(
    z.strictObject({
      act,
      file: z.strictObject({ name: z.string().min(1).max(255), text }),
      stove: id.exactOptional(),
    }),
    TEXT_BODY,
  ),
  exportFile: asks<NamedText>()(z.strictObject({ document: id })),
  exportShelf: asks<NamedText>()(nothing),
} as const

/** Who may come in. `door` and `pair` are all that a stranger may ask. */
export const DOOR_CALLS = {
  door: asks<Door>()(nothing),
  /** Lets this device in by the code of an invitation. */
  pair: writes<Device>()(z.strictObject({ code: z.string().max(40), name: z.string().min(1).max(60) })),
  /** This device goes. */
  leave: writes<null>()(nothing),
  /** A code for one device; an earlier one ends. At this machine only, as the next two. */
  invite: writes<Invitation>()(nothing),
  devices: asks<readonly Device[]>()(nothing),
  revoke: writes<readonly Device[]>()(z.strictObject({ device: id })),
} as const

export const CALLS = { ...WORKSHOP_CALLS, ...DOOR_CALLS } as const

export type CallName = keyof typeof CALLS
export type WorkshopCallName = keyof typeof WORKSHOP_CALLS
export type DoorCallName = keyof typeof DOOR_CALLS

/** What is sent with a call. */
export type RequestOf<N extends CallName> = z.input<(typeof CALLS)[N]['request']>
/** What it is answered with when it is not refused. */
export type ValueOf<N extends CallName> = (typeof CALLS)[N] extends Call<z.ZodType, infer T> ? T : never

export const isCallName = (word: string): word is CallName => Object.hasOwn(CALLS, word)
