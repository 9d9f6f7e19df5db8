import { strToU8, type ZipOptions, type Zippable, zipSync } from 'fflate'
import type { Answer } from '../answer.ts'
import { refuse } from '../answer.ts'
import { damagedRevision, headOf, parentsOf, type Trx } from '../documents/rows.ts'
import type { Engine } from '../engine/engine.ts'
import { read } from '../engine/transaction.ts'
import { sha256 } from '../hash.ts'
import { checkInstant } from '../limits.ts'
import { photoKind } from '../photos/kind.ts'
import { blobOf } from '../photos/photos.ts'
import type { DocumentHead } from '../workshop.ts'
import { ARCHIVE, ARCHIVE_VERSION, type ArchivedEvent, MANIFEST, type Manifest } from './manifest.ts'
import { folderNames } from './names.ts'

export interface ExportedArchive {
  readonly bytes: Uint8Array
  readonly documents: number
  readonly revisions: number
  readonly photos: number
  /** Edits in progress, which are not in it: they belong to their windows. */
  readonly unsaved: number
}

/** No file has a time of its own: the same workshop makes the same archive. Local time, as zip wants it. */
const TIME = new Date(1980, 0, 1)
/** Photos are packed already. */
const packed: ZipOptions = { level: 0, mtime: TIME }
const plain: ZipOptions = { level: 6, mtime: TIME }

const READ_ME = `A whole Tinwright workshop.

Each folder holds things of one kind, one folder for each thing, one file for each revision of it, the oldest
first: plain JSON, as the maker wrote it. photos/ holds the pictures. manifest.json says what belongs to what, what
was changed and why, and a SHA-256 of every file.

To bring it back, into an empty workshop or a filled one:  tinwright workshop import <this file>
Nothing that is there already is doubled or written over.
`

interface Packing {
  readonly files: Zippable
  /** Returns the SHA-256 of what is added. */
  readonly add: (path: string, content: string | Uint8Array, how?: ZipOptions) => string
}

const packing = (): Packing => {
  const files: Zippable = {}
  const add: Packing['add'] = (path, content, how = plain) => {
    const bytes = typeof content === 'string' ? strToU8(content) : content
    files[path] = [bytes, how]
    return sha256(bytes)
  }
  return { files, add }
}

const revisionsOf = async (
  trx: Trx,
  pack: Packing,
  documents: readonly DocumentHead[],
  folders: ReadonlyMap<string, string>,
): Promise<Manifest['revisions']> => {
  const kinds = new Map(documents.map(({ id, kind }) => [id, kind]))
  const parents = await parentsOf(trx, null)
  const counts = new Map<string, number>()
  const rows = await trx.selectFrom('revisions').selectAll().orderBy('place').execute()
  return rows.map(({ id, document, note, created, text, hash }) => {
    const count = (counts.get(document) ?? 0) + 1
    counts.set(document, count)
    const path = `${folders.get(document)}/${String(count).padStart(3, '0')}.${kinds.get(document)}.json`
    if (pack.add(path, text) !== hash) refuse('damaged', damagedRevision(id))
    return { id, document, parents: [...(parents.get(id) ?? [])], note, created, path, sha256: hash }
  })
}

const eventsOf = async (
  trx: Trx,
  pack: Packing,
  folders: ReadonlyMap<string, string>,
): Promise<Manifest['events']> => {
  const byTrial = new Map<string, ArchivedEvent[]>()
  const rows = await trx.selectFrom('events').selectAll().orderBy('sequence').execute()
  const ordered = rows.toSorted((a, b) => a.sequence - b.sequence || (a.id < b.id ? -1 : 1))
  for (const { id, trial, at, body, replaces, withdrawn, client, created } of ordered) {
    const event = { id, at, body, replaces, withdrawn: withdrawn === 1, client, created }
    const known = byTrial.get(trial)
    if (known === undefined) byTrial.set(trial, [event])
    else known.push(event)
  }
  return [...byTrial].map(([trial, events]) => {
    const path = `${folders.get(trial)}/events.json`
    return { trial, path, sha256: pack.add(path, `${JSON.stringify(events, null, 2)}\n`) }
  })
}

const photosOf = async (trx: Trx, pack: Packing): Promise<Manifest['photos']> => {
  const photos: Manifest['photos'] = []
  const hashes = (await trx.selectFrom('blobs').select('hash').execute()).map(({ hash }) => hash).sort()
  for (const hash of hashes) {
    const bytes = await blobOf(trx, hash)
    const kind = bytes === null ? null : photoKind(bytes)
    if (bytes === null || kind === null)
      return refuse(
        'damaged',
        `The photo ${hash.slice(0, 12)} is not the one that was kept: the drive changed it.`,
      )
    const path = `photos/${hash}.${kind.ending}`
    photos.push({ path, sha256: pack.add(path, bytes, packed) })
  }
  return photos
}

const documentEntry = ({
  id,
  kind,
  name,
  head,
  deleted,
  aboutDocument,
  aboutRevision,
  created,
}: DocumentHead) => ({
  id,
  kind,
  name,
  head,
  deleted,
  aboutDocument,
  aboutRevision,
  created,
})

/** The whole workshop as one zip of plain files, of one moment; what was taken away is in it too. */
export const exportArchive = (engine: Engine, at: string): Promise<Answer<ExportedArchive>> =>
  read(engine, async (trx) => {
    checkInstant(at, 'the time of the archive')
    const { id: workshop } = await trx.selectFrom('workshop').select('id').executeTakeFirstOrThrow()
    const rows = await trx.selectFrom('documents').selectAll().orderBy('place').execute()
    const documents = rows.map(headOf)
    const folderOf = folderNames()
    const folders = new Map(documents.map(({ id, kind, name }) => [id, folderOf(kind, name)]))
    const pack = packing()
    const revisions = await revisionsOf(trx, pack, documents, folders)
    const events = await eventsOf(trx, pack, folders)
    const photos = await photosOf(trx, pack)
    const manifest: Manifest = {
      format: `${ARCHIVE}@${ARCHIVE_VERSION}`,
      workshop,
      written: at,
      documents: documents.map(documentEntry),
      revisions,
      events,
      photos,
    }
    const front = packing()
    front.add('READ-ME.txt', READ_ME)
    front.add(MANIFEST, `${JSON.stringify(manifest, null, 2)}\n`)
    const unsaved = await trx.selectFrom('drafts').select('document').where('closed', '=', 0).execute()
    return {
      bytes: zipSync({ ...front.files, ...pack.files }),
      documents: documents.length,
      revisions: revisions.length,
      photos: photos.length,
      unsaved: unsaved.length,
    }
  })
