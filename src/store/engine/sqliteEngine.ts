import { closeSync, existsSync, fsyncSync, linkSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { Kysely } from 'kysely'
import { refuse } from '../answer.ts'
import type { Migration } from '../migrations/migration.ts'
import { type Beginning, migrate } from '../migrations/run.ts'
import type { Tables } from '../tables.ts'
import type { Engine } from './engine.ts'
import { nodeSqliteDialect } from './sqliteDialect.ts'
import { damagedSentence, sqliteRefusal } from './sqliteFaults.ts'
import { APPLICATION_ID, lookAtFile, lookAtPlace, type Surroundings } from './sqliteLook.ts'

export interface SqliteOptions extends Surroundings {
  readonly migrations: readonly Migration[]
  /** How a workshop begins that is not there yet; null: it has to be there. */
  readonly beginning: Beginning | null
  /** How long a write waits for another program's [ms]. */
  readonly patience: number
}

/** One spell of waiting inside SQLite, during which the process stands still [ms]. */
const SPELL = 50

const connect = (path: string): DatabaseSync => {
  const database = new DatabaseSync(path, { timeout: SPELL, enableForeignKeyConstraints: true })
  // Every acknowledged write survives a power cut: the log is synced at each commit. [bib:sqlite-synchronous]
  database.exec('pragma synchronous = full; pragma trusted_schema = off')
  return database
}

const syncFile = (path: string): void => {
  const file = openSync(path, 'r')
  try {
    fsyncSync(file)
  } finally {
    closeSync(file)
  }
}

/** A folder keeps its list of names in itself; Windows gives no handle on one and needs none. */
const syncFolder = (path: string): void => {
  if (process.platform !== 'win32') syncFile(dirname(path))
}

/** Gives a file its name if nothing has that name. */
const nameUnlessTaken = (from: string, to: string): void => {
  try {
    linkSync(from, to)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST' || existsSync(to)) return
    // A drive without hard links: a memory card, say.
    renameSync(from, to)
  }
  syncFolder(to)
}

/** Makes a workshop under another name first, so that one that is there is a whole one, and never goes over another. */
const create = async (path: string, migrations: readonly Migration[], beginning: Beginning) => {
  const half = `${path}.${beginning.id}.part`
  try {
    const database = new DatabaseSync(half)
    // Set before the first table, or another program could not read on while one writes.
    const mode = database.prepare('pragma journal_mode = wal').get()?.journal_mode
    if (mode !== 'wal')
      refuse(
        'network drive',
        `The drive of ${path} keeps no write-ahead log, so a workshop there would not be safe. Nothing was made. Name a place on a drive of this machine.`,
      )
    database.exec(`pragma application_id = ${APPLICATION_ID}`)
    const db = new Kysely<Tables>({ dialect: nodeSqliteDialect({ database, patience: 0 }) })
    await migrate(db, 'sqlite', migrations, beginning)
    await db.destroy()
    syncFile(half)
    nameUnlessTaken(half, path)
  } finally {
    for (const end of ['', '-wal', '-shm']) rmSync(half + end, { force: true })
  }
}

/** A copy of an older workshop, of one moment, beside it. Never goes over another file. */
const backUp = (path: string, database: DatabaseSync, format: number, stamp: string): string => {
  const name = `${path}.format-${format}.${stamp.replace(/[^0-9A-Za-z]/g, '')}.backup`
  if (existsSync(name)) return name
  const half = `${name}.part`
  rmSync(half, { force: true })
  database.prepare('vacuum into ?').run(half)
  syncFile(half)
  nameUnlessTaken(half, name)
  rmSync(half, { force: true })
  return name
}

/** Opens the workshop in a file, or begins it. Throws refusals, having changed nothing. */
export const sqliteEngine = async (path: string, stamp: string, options: SqliteOptions): Promise<Engine> => {
  const { migrations, beginning, patience } = options
  const known = migrations.length
  if (!existsSync(path)) {
    if (beginning === null)
      return refuse('missing', `There is no workshop at ${path}. Look at the name and the folder.`)
    mkdirSync(dirname(path), { recursive: true })
    lookAtPlace(path, options)
    await create(path, migrations, beginning)
  }
  lookAtFile(path, known, options)
  const database = connect(path)
  const db = new Kysely<Tables>({ dialect: nodeSqliteDialect({ database, patience }) })
  try {
    const format = (await db.selectFrom('workshop').select('format').executeTakeFirst())?.format
    if (format === undefined) refuse('damaged', damagedSentence(path, 'it does not say its format'))
    else if (format < known) {
      backUp(path, database, format, stamp)
      await migrate(db, 'sqlite', migrations, null)
    }
  } catch (error) {
    await db.destroy()
    throw error
  }
  return {
    kind: 'sqlite',
    db,
    format: known,
    place: path,
    refusalOf: (error) => sqliteRefusal(path, error),
    close: () => db.destroy(),
  }
}
