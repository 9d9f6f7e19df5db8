import { accessSync, closeSync, constants, existsSync, openSync, readSync, statSync } from 'node:fs'
import { dirname } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { pathToFileURL } from 'node:url'
import { refuse } from '../answer.ts'
import { type FileSystemType, networkDrive } from './networkDrive.ts'
import { damagedSentence, isDamage, readOnlySentence } from './sqliteFaults.ts'
import { newerSentence } from './transaction.ts'

/** First bytes of every SQLite file, and where two of our marks stand in the header. [bib:sqlite-format] */
const MAGIC = 'SQLite format 3\0'
const HEADER = 100
const USER_VERSION_AT = 60
const APPLICATION_ID_AT = 68

/** Says in the header that the file is a workshop: "Tinw" in ASCII. */
export const APPLICATION_ID = 0x54696e77

/** What the looking itself needs from outside; tests bring their own. */
export interface Surroundings {
  readonly typeOf?: FileSystemType
}

const headerOf = (path: string): Buffer => {
  const file = openSync(path, 'r')
  try {
    const header = Buffer.alloc(HEADER)
    return header.subarray(0, readSync(file, header, 0, HEADER, 0))
  } finally {
    closeSync(file)
  }
}

const isWritable = (path: string): boolean => {
  try {
    accessSync(path, constants.W_OK)
    return true
  } catch {
    return false
  }
}

/**
 * Opens for looking only. Without a log beside it the file is opened as one that nobody changes, which
 * makes no file beside it either. With a log it has to be read through the log.
 */
const openForLooking = (path: string): { readonly database: DatabaseSync; readonly alone: boolean } => {
  const alone = !existsSync(`${path}-wal`)
  const url = pathToFileURL(path)
  if (alone) url.searchParams.set('immutable', '1')
  return { database: new DatabaseSync(url, { readOnly: true, timeout: 1000 }), alone }
}

const quickCheck = (path: string): { readonly faults: readonly string[]; readonly alone: boolean } => {
  const { database, alone } = openForLooking(path)
  try {
    const rows = database.prepare('pragma quick_check').all()
    return { faults: rows.map((row) => String(row.quick_check)).filter((said) => said !== 'ok'), alone }
  } catch (error) {
    if (!isDamage(error)) throw error
    return { faults: [(error as Error).message], alone }
  } finally {
    database.close()
  }
}

/** Looks once more where another program began to write while we looked at a file that nobody changes. */
const damageOf = (path: string): string | null => {
  const first = quickCheck(path)
  const { faults } = first.alone && first.faults.length > 0 ? quickCheck(path) : first
  return faults[0] ?? null
}

const refuseOther = (path: string, what: string): never =>
  refuse('not a workshop', `${path} is no workshop: ${what}. Nothing was changed. Name another file.`)

/** Asked by opening it, which changes nothing: what a list of permissions says is not always what holds. */
const opensForWriting = (path: string): boolean => {
  try {
    closeSync(openSync(path, 'r+'))
    return true
  } catch {
    return false
  }
}

const refuseUnwritable = (path: string, folder: string): void => {
  if (!opensForWriting(path) || !isWritable(folder)) refuse('read-only', readOnlySentence(path))
}

const refuseNetwork = (path: string, folder: string, { typeOf }: Surroundings): void => {
  const name = networkDrive(folder, typeOf)
  if (name === null) return
  refuse(
    'network drive',
    `${path} lies on a network drive (${name}), where two programs can spoil each other's writes. Nothing was changed. Keep the workshop on a drive of this machine, or use a PostgreSQL server (TINWRIGHT_DB).`,
  )
}

/** Where a new workshop may be made. The folder is there. Throws refusals. */
export const lookAtPlace = (path: string, surroundings: Surroundings = {}): void => {
  const folder = dirname(path)
  if (!isWritable(folder)) refuse('read-only', readOnlySentence(path))
  refuseNetwork(path, folder, surroundings)
}

/**
 * Makes sure, without changing anything, that a file is a whole workshop that this program knows. Returns
 * the format its header states. Throws refusals.
 */
export const lookAtFile = (path: string, known: number, surroundings: Surroundings = {}): number => {
  const found = statSync(path)
  if (found.isDirectory()) refuseOther(path, 'it is a folder')
  if (!found.isFile()) refuseOther(path, 'it is no file')
  if (found.size === 0) refuseOther(path, 'it is empty')
  const header = headerOf(path)
  if (header.subarray(0, MAGIC.length).toString('latin1') !== MAGIC)
    refuseOther(path, 'its first bytes are not those of a database')
  if (header.length < HEADER) refuse('damaged', damagedSentence(path, 'it was cut short'))
  if (header.readUInt32BE(APPLICATION_ID_AT) !== APPLICATION_ID)
    refuseOther(path, 'it is a database of another program')
  const format = header.readUInt32BE(USER_VERSION_AT)
  if (format > known) refuse('newer', newerSentence(path, format, known))
  const folder = dirname(path)
  refuseUnwritable(path, folder)
  refuseNetwork(path, folder, surroundings)
  const damage = damageOf(path)
  if (damage !== null) refuse('damaged', damagedSentence(path, damage))
  return format
}
