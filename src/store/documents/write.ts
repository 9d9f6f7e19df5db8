import type { Answer } from '../answer.ts'
import { refuse } from '../answer.ts'
import { followSave } from '../drafts/follow.ts'
import type { Engine } from '../engine/engine.ts'
import { aKind, isKind } from '../kinds.ts'
import { checkId, checkName, checkText, MAX_NOTE, MAX_TEXT } from '../limits.ts'
import type { DocumentTable } from '../tables.ts'
import type { Act, DocumentHead, NewDocument, NewRevision } from '../workshop.ts'
import { addDocument, addRevision, checkParents } from './add.ts'
import { doStep, move, type State } from './journal.ts'
import { documentRow, findRevision, headOf, type Trx } from './rows.ts'

const asItIs = (document: string) => async (trx: Trx) => headOf(await documentRow(trx, document))

const checkAbout = async (trx: Trx, { kind, aboutDocument, aboutRevision }: NewDocument): Promise<void> => {
  if (aboutDocument !== undefined) await documentRow(trx, aboutDocument)
  if (aboutRevision !== undefined && (await findRevision(trx, aboutRevision)) === undefined)
    refuse('unknown', `The workshop knows no revision ${aboutRevision}. Nothing was changed.`)
  if (kind === 'trial' && aboutRevision === undefined)
    refuse('bad input', 'A trial names the revision of the stove that was burnt. Nothing was changed.')
}

/** For a trial, the stove of the revision it burned. */
const stoveOf = async (trx: Trx, { aboutDocument, aboutRevision }: NewDocument): Promise<string | null> => {
  if (aboutDocument !== undefined || aboutRevision === undefined) return aboutDocument ?? null
  return (await findRevision(trx, aboutRevision))?.document ?? null
}

export const create = (engine: Engine, act: Act, wanted: NewDocument): Promise<Answer<DocumentHead>> =>
  doStep(
    engine,
    act,
    ['create', wanted],
    async (step) => {
      const { id, kind, name, revision, text, note, parents = [] } = wanted
      checkId(id, 'the id of the document')
      checkId(revision, 'the id of the revision')
      if (!isKind(kind)) refuse('bad input', `A workshop keeps no documents of the kind ${kind}.`)
      checkName(name, `the name of ${aKind(kind)}`)
      checkText(text, `the text of “${name}”`, MAX_TEXT)
      checkText(note, 'the note', MAX_NOTE)
      await checkAbout(step.trx, wanted)
      await checkParents(step.trx, parents)
      const head = await addDocument(step, {
        id,
        kind,
        name,
        head: revision,
        about_document: await stoveOf(step.trx, wanted),
        about_revision: wanted.aboutRevision ?? null,
        created: act.at,
      })
      await addRevision(step.trx, { id: revision, document: id, text, note, created: act.at, parents })
      if (wanted.draft !== undefined)
        await followSave(step, { document: id, revision, text, number: wanted.draft.number })
      return { label: `make “${name}”`, value: head }
    },
    asItIs(wanted.id),
  )

const refuseGone = (row: DocumentTable): never =>
  refuse('conflict', `“${row.name}” was taken away since. Nothing was changed. Bring it back first.`)

const refuseOverwrite = async (trx: Trx, row: DocumentTable): Promise<never> => {
  const theirs = await findRevision(trx, row.head)
  const note = theirs === undefined || theirs.note === '' ? '' : `, “${theirs.note}”`
  return refuse(
    'conflict',
    `“${row.name}” was saved elsewhere since this edit began (${theirs?.created ?? 'at an unknown time'}${note}). Neither was overwritten. Look at the other one first, or keep this one as a variant.`,
  )
}

export const save = (engine: Engine, act: Act, wanted: NewRevision): Promise<Answer<DocumentHead>> =>
  doStep(
    engine,
    act,
    ['save', wanted],
    async (step) => {
      const { document, revision, base, text, note, parents = [base] } = wanted
      checkId(revision, 'the id of the revision')
      const row = await documentRow(step.trx, document)
      checkText(text, `the text of “${row.name}”`, MAX_TEXT)
      checkText(note, 'the note', MAX_NOTE)
      if (row.deleted === 1) refuseGone(row)
      if (row.head !== base) await refuseOverwrite(step.trx, row)
      await checkParents(step.trx, parents)
      await addRevision(step.trx, { id: revision, document, text, note, created: act.at, parents })
      if (wanted.draft !== undefined)
        await followSave(step, { document, revision, text, number: wanted.draft.number })
      return { label: `save “${row.name}”`, value: await move(step, row, { head: revision }) }
    },
    asItIs(wanted.document),
  )

/** A change of a document that was seen at a version. */
const change = (
  engine: Engine,
  act: Act,
  request: readonly [word: string, document: string, version: number, ...rest: string[]],
  to: (row: DocumentTable) => Partial<State>,
  label: (row: DocumentTable) => string,
): Promise<Answer<DocumentHead>> => {
  const [, document, version] = request
  return doStep(
    engine,
    act,
    request,
    async (step) => {
      const row = await documentRow(step.trx, document)
      if (row.version !== version)
        refuse(
          'conflict',
          `“${row.name}” was changed elsewhere since it was last looked at. Nothing was changed. Look at it again first.`,
        )
      return { label: label(row), value: await move(step, row, to(row)) }
    },
    asItIs(document),
  )
}

export const rename = (
  engine: Engine,
  act: Act,
  document: string,
  version: number,
  name: string,
): Promise<Answer<DocumentHead>> =>
  change(
    engine,
    act,
    ['rename', document, version, name],
    () => {
      checkName(name, 'the new name')
      return { name }
    },
    (row) => `rename “${row.name}” to “${name}”`,
  )

export const remove = (engine: Engine, act: Act, document: string, version: number) =>
  change(
    engine,
    act,
    ['remove', document, version],
    (row) => (row.deleted === 1 ? refuseGone(row) : { deleted: true }),
    (row) => `take “${row.name}” away`,
  )

export const restore = (engine: Engine, act: Act, document: string, version: number) =>
  change(
    engine,
    act,
    ['restore', document, version],
    (row) => (row.deleted === 0 ? refuse('conflict', `“${row.name}” is there already.`) : { deleted: false }),
    (row) => `bring “${row.name}” back`,
  )
