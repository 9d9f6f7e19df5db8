import { refuse } from '../answer.ts'
import { sha256 } from '../hash.ts'
import {
  checkId,
  checkInstant,
  checkName,
  checkText,
  MAX_EVENT,
  MAX_NOTE,
  MAX_PHOTO,
  MAX_TEXT,
} from '../limits.ts'
import { photoKind } from '../photos/kind.ts'
import { readPhotoText } from '../photos/photos.ts'
import {
  type ArchivedDocument,
  type ArchivedEvent,
  type ArchivedRevision,
  MANIFEST,
  readEvents,
  readManifest,
} from './manifest.ts'
import { inOrder } from './order.ts'
import { type ArchiveLimits, unpack } from './unpack.ts'

export interface ReadRevision extends ArchivedRevision {
  readonly text: string
}

/** An archive that holds together: every file is the one that was written, every pointer leads somewhere. */
export interface ReadArchive {
  /** What a document is about stands before it. */
  readonly documents: readonly ArchivedDocument[]
  /** Parents before children. */
  readonly revisions: readonly ReadRevision[]
  readonly events: readonly (ArchivedEvent & { readonly trial: string })[]
  readonly photos: ReadonlyMap<string, Uint8Array>
  /** Files that belong to nothing in it. */
  readonly strange: readonly string[]
}

const spoilt = (what: string): never =>
  refuse('damaged', `The archive is damaged: ${what}. Nothing was changed. Use another copy of it.`)

export const readArchive = (bytes: Uint8Array, limits?: ArchiveLimits): ReadArchive => {
  const files = unpack(bytes, limits)
  const used = new Set([MANIFEST, 'READ-ME.txt'])
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })
  const textOf = (file: Uint8Array, path: string): string => {
    try {
      return decoder.decode(file)
    } catch {
      return spoilt(`${path} is no text`)
    }
  }
  const fileOf = (path: string, hash: string): Uint8Array => {
    const file = files.get(path) ?? spoilt(`${path} is missing`)
    if (sha256(file) !== hash) spoilt(`${path} is not the file that was written`)
    used.add(path)
    return file
  }
  const said = files.get(MANIFEST)
  if (said === undefined)
    return refuse(
      'not a workshop',
      `This is no archive of a workshop: it has no ${MANIFEST}. Nothing was changed.`,
    )
  const manifest = readManifest(textOf(said, MANIFEST))

  const kinds = new Map(manifest.documents.map(({ id, kind }) => [id, kind]))
  const ordered = <T extends { readonly id: string }>(
    things: readonly T[],
    needs: (thing: T) => readonly string[],
  ): readonly T[] =>
    inOrder(things, needs) ?? spoilt('things in it go back on themselves, or stand in it twice')
  const documents = ordered(manifest.documents, ({ aboutDocument }) =>
    aboutDocument === null ? [] : [aboutDocument],
  )
  for (const { id, name, created, aboutDocument } of documents) {
    checkId(id, 'the id of a document in the archive')
    checkName(name, `the name of ${id} in the archive`)
    checkInstant(created, `the time of “${name}” in the archive`)
    if (aboutDocument !== null && !kinds.has(aboutDocument)) spoilt(`“${name}” belongs to nothing in it`)
  }

  const revisions = ordered(manifest.revisions, ({ parents }) => parents).map((revision): ReadRevision => {
    const { id, document, parents, note, created, path, sha256: hash } = revision
    checkId(id, 'the id of a revision in the archive')
    if (!kinds.has(document)) spoilt(`the revision ${id} belongs to nothing in it`)
    if (new Set(parents).size !== parents.length) spoilt(`the revision ${id} names a parent twice`)
    checkText(note, `the note of ${path}`, MAX_NOTE)
    checkInstant(created, `the time of ${path}`)
    const text = textOf(fileOf(path, hash), path)
    checkText(text, path, MAX_TEXT)
    return { ...revision, text }
  })
  const homes = new Map(revisions.map(({ id, document }) => [id, document]))
  for (const { id, parents } of revisions)
    for (const parent of parents)
      if (!homes.has(parent)) spoilt(`the revision ${id} has lost its parent ${parent}`)
  for (const { id, name, head, aboutRevision } of documents) {
    if (homes.get(head) !== id) spoilt(`“${name}” has lost its revision ${head}`)
    if (aboutRevision !== null && !homes.has(aboutRevision))
      spoilt(`“${name}” belongs to a revision that is not in it`)
  }

  const events = manifest.events.flatMap(({ trial, path, sha256: hash }) => {
    if (kinds.get(trial) !== 'trial') spoilt(`${path} belongs to no trial`)
    return readEvents(textOf(fileOf(path, hash), path), path).map((event) => {
      checkId(event.id, `the id of an event of ${path}`)
      checkId(event.client, `the client of an event of ${path}`)
      checkInstant(event.at, `the time of an event of ${path}`)
      checkInstant(event.created, `the time of an event of ${path}`)
      checkText(event.body, `an event of ${path}`, MAX_EVENT)
      if (event.replaces !== null) checkId(event.replaces, `what an event of ${path} replaces`)
      return { ...event, trial }
    })
  })

  const photos = new Map(
    manifest.photos.map(({ path, sha256: hash }) => {
      const file = fileOf(path, hash)
      if (file.length > MAX_PHOTO || photoKind(file) === null) spoilt(`${path} is no photo`)
      return [hash, file]
    }),
  )
  for (const { document, path, text } of revisions) {
    if (kinds.get(document) !== 'photo') continue
    const photo = readPhotoText(text)
    if (photo === null || !photos.has(photo.sha256)) spoilt(`the picture of ${path} is missing`)
  }
  const strange = [...files.keys()].filter((path) => !used.has(path) && !path.endsWith('/'))
  return { documents, revisions, events, photos, strange }
}
