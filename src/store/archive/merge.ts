import type { ArchiveReport } from '#wire/files.ts'
import type { Answer } from '../answer.ts'
import { refuse } from '../answer.ts'
import { addDocument, addRevision } from '../documents/add.ts'
import { type Done, doStep, move, type Step } from '../documents/journal.ts'
import { findDocument, findRevision, parentsOf, type Trx } from '../documents/rows.ts'
import type { Engine } from '../engine/engine.ts'
import { answering } from '../engine/transaction.ts'
import { sha256 } from '../hash.ts'
import { putBlob } from '../photos/photos.ts'
import type { DocumentTable } from '../tables.ts'
import { keepEvent } from '../trials/events.ts'
import type { Act } from '../workshop.ts'
import type { ArchivedDocument } from './manifest.ts'
import { type ReadArchive, readArchive } from './read.ts'

const NOTHING: ArchiveReport = {
  added: 0,
  renewed: 0,
  kept: 0,
  revisions: 0,
  events: 0,
  photos: 0,
  apart: [],
  strange: [],
}

/** Documents here that the archive knows too, by id. */
const meet = async (trx: Trx, documents: readonly ArchivedDocument[]) => {
  const here = new Map<string, DocumentTable>()
  for (const { id, kind, name } of documents) {
    const row = await findDocument(trx, id)
    if (row === undefined) continue
    if (row.kind !== kind)
      refuse(
        'conflict',
        `The archive's ${kind} “${name}” bears the id of a ${row.kind} here, “${row.name}”. Nothing was changed. One of the two was not made by this program.`,
      )
    here.set(id, row)
  }
  return here
}

const bringRevisions = async (step: Step, { revisions }: ReadArchive): Promise<number> => {
  let added = 0
  for (const revision of revisions) {
    const row = await findRevision(step.trx, revision.id)
    if (row === undefined) {
      await addRevision(step.trx, revision)
      added++
    } else if (row.hash !== revision.sha256 || row.document !== revision.document) {
      refuse(
        'conflict',
        `The archive and this workshop both have a revision ${revision.id}, with different texts. Nothing was changed. One of the two was not made by this program.`,
      )
    }
  }
  return added
}

/** Does a revision descend from another, or is it the same? */
const descends = (
  parents: ReadonlyMap<string, readonly string[]>,
  revision: string,
  from: string,
): boolean => {
  const seen = new Set([revision])
  for (const one of seen) {
    if (one === from) return true
    for (const parent of parents.get(one) ?? []) seen.add(parent)
  }
  return false
}

type Met = 'renewed' | 'kept' | 'apart'

/** A document that both have goes on to the later of two revisions of one line, and comes back if it was taken away. */
const meetOne = async (
  step: Step,
  row: DocumentTable,
  archived: ArchivedDocument,
  parents: ReadonlyMap<string, readonly string[]>,
): Promise<Met> => {
  const newer = row.head !== archived.head && descends(parents, archived.head, row.head)
  const older = descends(parents, row.head, archived.head)
  const back = row.deleted === 1 && !archived.deleted
  if (newer || back)
    await move(step, row, {
      ...(newer ? { head: archived.head } : {}),
      ...(back ? { deleted: false } : {}),
    })
  if (!newer && !older) return 'apart'
  return newer || back ? 'renewed' : 'kept'
}

const merge = async (step: Step, archive: ReadArchive): Promise<Done<ArchiveReport>> => {
  const { trx, sequence } = step
  const here = await meet(trx, archive.documents)
  let photos = 0
  const known = new Set((await trx.selectFrom('blobs').select('hash').execute()).map(({ hash }) => hash))
  for (const [hash, bytes] of archive.photos) {
    if (known.has(hash)) continue
    await putBlob(trx, bytes)
    photos++
  }
  let added = 0
  for (const document of archive.documents) {
    if (here.has(document.id)) continue
    const { id, kind, name, head, deleted, aboutDocument, aboutRevision, created } = document
    const row = {
      id,
      kind,
      name,
      head,
      about_document: aboutDocument,
      about_revision: aboutRevision,
      created,
    }
    await addDocument(step, row, deleted)
    added++
  }
  const revisions = await bringRevisions(step, archive)
  const parents = await parentsOf(trx, null)
  const met = { renewed: 0, kept: 0, apart: [] as string[] }
  for (const archived of archive.documents) {
    const row = here.get(archived.id)
    if (row === undefined) continue
    const how = await meetOne(step, row, archived, parents)
    if (how === 'apart') met.apart.push(row.name)
    else met[how]++
  }
  let events = 0
  for (const { trial, client, created, ...event } of archive.events) {
    const { replaces, ...rest } = event
    const given = replaces === null ? rest : { ...rest, replaces }
    const { fresh } = await keepEvent(trx, sequence, { trial, client, at: created }, given)
    if (fresh) {
      events++
      await trx.updateTable('documents').set({ touched: sequence }).where('id', '=', trial).execute()
    }
  }
  return {
    label: 'import an archive',
    value: { added, revisions, events, photos, ...met, strange: archive.strange },
  }
}

/**
 * Brings an archive into a workshop, an empty one or a filled one, by ids and hashes: what is here already
 * is not doubled, nothing is written over. One step, so one undo takes it back.
 */
export const importArchive = async (
  engine: Engine,
  act: Act,
  bytes: Uint8Array,
): Promise<Answer<ArchiveReport>> => {
  // Read before anybody else has to wait.
  const archive = await answering(engine, async () => readArchive(bytes))
  if (!archive.ok) return archive
  return doStep(
    engine,
    act,
    ['import archive', sha256(bytes)],
    (step) => merge(step, archive.value),
    async () => ({ ...NOTHING, kept: archive.value.documents.length }),
  )
}
