import { type Cell, createCell } from '../../cell/cell.ts'
import { isZip } from '../../workshop/files.ts'
import { askLogger } from './askLogger.ts'
import { keepFile } from './keptFiles.ts'

/** A logger's file that came in where trials are taken in: which burn it belongs to, only its maker knows. */
export interface CameIn {
  readonly name: string
  readonly text: string
}

/** So long a file is not a burn's [bytes]. */
export const MOST_LOGGER = 60_000_000

const cell = createCell<readonly CameIn[]>([])

/** Files that wait for a burn to lie beside, for as long as the page lives. */
export const cameIn: Cell<readonly CameIn[]> = cell

/** Puts it by. */
export const forget = (file: CameIn): void => cell.update((all) => all.filter((one) => one !== file))

/** Whether a file is a logger's; then it waits for its burn. */
export const takeLogger = async (file: File): Promise<boolean> => {
  if (file.size > MOST_LOGGER || (await isZip(file))) return false
  const text = await file.text()
  if (!(await askLogger({ kind: 'looks', text }))) return false
  cell.update((all) => [...all.filter(({ name }) => name !== file.name), { name: file.name, text }])
  return true
}

let opened: string | null = null

/** Lays a waiting file beside a burn, in place of what lies there; its desk begins at the mapping. Whether it could be kept. */
export const layBeside = async (file: CameIn, trial: string): Promise<boolean> => {
  const { name, text } = file
  const kept = await keepFile({ trial, name, text, mapping: null, part: 0, matches: [], offset: 0 })
  if (!kept) return false
  forget(file)
  opened = trial
  return true
}

/** Whether the desk of this burn was opened for a file just laid beside it; said once. */
export const wasJustLaid = (trial: string): boolean => {
  const just = opened === trial
  if (just) opened = null
  return just
}
