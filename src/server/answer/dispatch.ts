import type * as z from 'zod'
import type { Workshop } from '#store/workshop.ts'
import type { Answer } from '#wire/answer.ts'
import type { ValueOf, WORKSHOP_CALLS, WorkshopCallName } from '#wire/calls.ts'
import type { UploadName } from '#wire/uploads.ts'

type Read<N extends WorkshopCallName> = z.output<(typeof WORKSHOP_CALLS)[N]['request']>

/** How a call reaches the workshop. That both mean the same is for the compiler to see. */
export type Handlers = {
  readonly [N in WorkshopCallName]: (workshop: Workshop, request: Read<N>) => Promise<Answer<ValueOf<N>>>
}

export const HANDLERS = {
  about: (shop) => shop.about(),
  list: (shop, wish) => shop.list(wish),
  open: (shop, { document }) => shop.open(document),
  revision: (shop, { id }) => shop.revision(id),
  history: (shop, { document }) => shop.history(document),
  family: (shop, { document }) => shop.family(document),
  create: (shop, { act, wanted }) => shop.create(act, wanted),
  save: (shop, { act, wanted }) => shop.save(act, wanted),
  rename: (shop, { act, document, version, name }) => shop.rename(act, document, version, name),
  remove: (shop, { act, document, version }) => shop.remove(act, document, version),
  restore: (shop, { act, document, version }) => shop.restore(act, document, version),
  undo: (shop, { act }) => shop.undo(act),
  redo: (shop, { act }) => shop.redo(act),
  undoState: (shop, { client }) => shop.undoState(client),
  autosave: (shop, wanted) => shop.autosave(wanted),
  undoEdit: (shop, edit) => shop.undoEdit(edit),
  redoEdit: (shop, edit) => shop.redoEdit(edit),
  closeDraft: (shop, edit) => shop.closeDraft(edit),
  draft: (shop, { document, client }) => shop.draft(document, client),
  drafts: (shop, { document }) => shop.drafts(document),
  logEvents: (shop, batch) => shop.logEvents(batch),
  events: (shop, { trial, since }) => shop.events(trial, since),
  setting: (shop, { key }) => shop.setting(key),
  setSetting: (shop, { act, key, base, text }) => shop.setSetting(act, key, base, text),
  changesSince: (shop, { sequence }) => shop.changesSince(sequence),
  verify: (shop) => shop.verify(),
  importFile: (shop, { act, file, stove }) => shop.importFile(act, file, stove),
  exportFile: (shop, { document }) => shop.exportFile(document),
  exportShelf: (shop) => shop.exportShelf(),
} as const satisfies Handlers

/** Asked for in other ways, or by nobody but this program. */
type Elsewhere = UploadName | 'photo' | 'exportArchive' | 'watch' | 'loadDemo' | 'close'

/** Names a function of the workshop that no page can reach, if there is one: then this does not compile. */
export const NOTHING_LEFT_OUT: Exclude<keyof Workshop, WorkshopCallName | Elsewhere> extends never
  ? true
  : Exclude<keyof Workshop, WorkshopCallName | Elsewhere> = true

/** Does a call whose request has been read by its schema. */
export const dispatch = (
  workshop: Workshop,
  name: WorkshopCallName,
  request: unknown,
): Promise<Answer<unknown>> =>
  (HANDLERS[name] as (workshop: Workshop, request: unknown) => Promise<Answer<unknown>>)(workshop, request)
