import { type DBSchema, openDB } from 'idb'
import type { Match } from '#proof/logger/align.ts'
import type { Mapping } from '#proof/logger/mapping.ts'

/** A logger's file beside a trial. It stays in this browser: what is taken from it goes into the trial. */
export interface KeptFile {
  readonly trial: string
  readonly name: string
  readonly text: string
  readonly mapping: Mapping | null
  /** Which start of its clock. */
  readonly part: number
  readonly matches: readonly Match[]
  /** Time after lighting of its first reading, where nothing is matched [s]. */
  readonly offset: number
}

interface Tables extends DBSchema {
  files: { key: string; value: KeptFile }
}

const base = () =>
  openDB<Tables>('tinwright-loggers', 1, {
    upgrade: (db) => void db.createObjectStore('files', { keyPath: 'trial' }),
  })

export const keptFile = async (trial: string): Promise<KeptFile | null> => {
  try {
    return (await (await base()).get('files', trial)) ?? null
  } catch {
    return null
  }
}

/** Whether it could be kept: a browser may have no room. */
export const keepFile = async (file: KeptFile): Promise<boolean> => {
  try {
    await (await base()).put('files', file)
    return true
  } catch {
    return false
  }
}

export const dropFile = async (trial: string): Promise<void> => {
  try {
    await (await base()).delete('files', trial)
  } catch {
    // Nothing was kept.
  }
}
