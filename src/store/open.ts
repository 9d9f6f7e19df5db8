import { type Answer, given, Refused } from './answer.ts'
import { importArchive } from './archive/merge.ts'
import { exportArchive } from './archive/write.ts'
import { about, changesSince, watch } from './changes.ts'
import { loadDemo } from './demo.ts'
import { family, history, list, open, revision } from './documents/look.ts'
import { setSetting, setting } from './documents/settings.ts'
import { redo, undo, undoState } from './documents/undo.ts'
import { create, remove, rename, restore, save } from './documents/write.ts'
import { autosave, closeDraft, draft, drafts, redoEdit, undoEdit } from './drafts/drafts.ts'
import type { Engine } from './engine/engine.ts'
import { postgresEngine } from './engine/postgresEngine.ts'
import { sqliteEngine } from './engine/sqliteEngine.ts'
import { sqliteRefusal } from './engine/sqliteFaults.ts'
import type { Surroundings } from './engine/sqliteLook.ts'
import { exportFile, exportShelf } from './files/exportFile.ts'
import { importFile } from './files/importFile.ts'
import { MIGRATIONS } from './migrations/list.ts'
import type { Migration } from './migrations/migration.ts'
import { attach, photo } from './photos/photos.ts'
import { events, logEvents } from './trials/events.ts'
import { verify } from './verify.ts'
import type { Workshop } from './workshop.ts'

/** A file, or a PostgreSQL server for a club. */
export type Place = { readonly file: string } | { readonly server: string }

export interface Opening extends Surroundings {
  /** Now, `2031-05-17T14:05:00Z`: when a new workshop begins, or an older one is brought up to date. */
  readonly at: string
  /** Id for a workshop that is not there yet; null: it has to be there. */
  readonly beginAs: string | null
  /** How long a write waits for another program's [ms]. */
  readonly patience?: number
  /** Formats of the tables; other ones for tests of what comes later. */
  readonly migrations?: readonly Migration[]
}

/** Long for a person, ample for a write of another program. [ms] */
const PATIENCE = 5000

const engineAt = (place: Place, opening: Opening): Promise<Engine> => {
  const { at, beginAs, patience = PATIENCE, migrations = MIGRATIONS } = opening
  const beginning = beginAs === null ? null : { id: beginAs, at }
  const options = { ...opening, beginning, patience, migrations }
  return 'file' in place ? sqliteEngine(place.file, at, options) : postgresEngine(place.server, options)
}

/**
 * Opens a workshop, or begins one where there is none. What is damaged, newer, of another program, on a
 * network drive or not to be written to is refused, and stays byte for byte as it is. An older workshop in
 * a file is copied beside itself before it is brought up to date.
 */
export const openWorkshop = async (place: Place, opening: Opening): Promise<Answer<Workshop>> => {
  try {
    return given(workshopOn(await engineAt(place, opening)))
  } catch (error) {
    if (error instanceof Refused) return { ok: false, refusal: error.refusal }
    const refusal = 'file' in place ? fileRefusal(place.file, error) : null
    if (refusal !== null) return { ok: false, refusal }
    throw error
  }
}

const FOLDER_FAULTS: Readonly<Record<string, string>> = {
  EACCES: 'it may not be read or written',
  EPERM: 'it may not be read or written',
  EROFS: 'nothing can be written there',
  ENOENT: 'its folder cannot be made',
  ENOTDIR: 'a file stands where its folder should be',
  EEXIST: 'a file stands where its folder should be',
  ENOSPC: 'there is no room left there',
  EDQUOT: 'there is no room left there',
}

const fileRefusal = (file: string, error: unknown) => {
  const fault = FOLDER_FAULTS[String((error as { readonly code?: unknown } | null)?.code)]
  if (fault === undefined) return sqliteRefusal(file, error)
  return {
    code: fault.startsWith('there is no room') ? ('full' as const) : ('read-only' as const),
    sentence: `The workshop ${file} cannot be opened: ${fault}. Nothing was changed. Name another place.`,
  }
}

const workshopOn = (engine: Engine): Workshop => ({
  about: () => about(engine),
  list: (wish) => list(engine, wish),
  open: (document) => open(engine, document),
  revision: (id) => revision(engine, id),
  history: (document) => history(engine, document),
  family: (document) => family(engine, document),
  create: (act, wanted) => create(engine, act, wanted),
  save: (act, wanted) => save(engine, act, wanted),
  rename: (act, document, version, name) => rename(engine, act, document, version, name),
  remove: (act, document, version) => remove(engine, act, document, version),
  restore: (act, document, version) => restore(engine, act, document, version),
  undo: (act) => undo(engine, act),
  redo: (act) => redo(engine, act),
  undoState: (client) => undoState(engine, client),
  autosave: (wanted) => autosave(engine, wanted),
  undoEdit: (edit) => undoEdit(engine, edit),
  redoEdit: (edit) => redoEdit(engine, edit),
  closeDraft: (edit) => closeDraft(engine, edit),
  draft: (document, client) => draft(engine, document, client),
  drafts: (document) => drafts(engine, document),
  logEvents: (batch) => logEvents(engine, batch),
  events: (trial, since) => events(engine, trial, since),
  attach: (act, wanted) => attach(engine, act, wanted),
  photo: (document) => photo(engine, document),
  setting: (key) => setting(engine, key),
  setSetting: (act, key, base, text) => setSetting(engine, act, key, base, text),
  changesSince: (sequence) => changesSince(engine, sequence),
  watch: (wish) => watch(engine, wish),
  verify: () => verify(engine),
  exportArchive: (at) => exportArchive(engine, at),
  importArchive: (act, bytes) => importArchive(engine, act, bytes),
  importFile: (act, file, stove) => importFile(engine, act, file, stove),
  exportFile: (document) => exportFile(engine, document),
  exportShelf: () => exportShelf(engine),
  loadDemo: (act, files) => loadDemo(engine, act, files),
  close: () => engine.close(),
})
