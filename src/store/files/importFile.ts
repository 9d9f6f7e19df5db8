import { type Problem, problemSentence } from '#basis/problem.ts'
import { type JsonValue, readJson } from '#stove/document/json.ts'
import { readStove } from '#stove/document/read.ts'
import { readShelf, SHELF_FORMAT, type ShelfFile } from '#stove/document/shelf.ts'
import type { ImportReport, NamedText } from '#wire/files.ts'
import type { Answer } from '../answer.ts'
import { refuse } from '../answer.ts'
import { addDocument, addRevision } from '../documents/add.ts'
import { doStep, move, type Step } from '../documents/journal.ts'
import { documentRow, findRevision, headOf, type Trx } from '../documents/rows.ts'
import type { Engine } from '../engine/engine.ts'
import { derivedId, sha256 } from '../hash.ts'
import type { Kind } from '../kinds.ts'
import type { Act, DocumentHead } from '../workshop.ts'

interface Arrivals {
  readonly added: DocumentHead[]
  readonly renewed: DocumentHead[]
  readonly known: DocumentHead[]
}

interface Arrival {
  readonly kind: Kind
  readonly name: string
  readonly text: string
  readonly note: string
}

const refuseProblems = (file: string, problems: readonly Problem[]): never =>
  refuse(
    'bad input',
    `${file} will not do, and nothing was changed.\n${problems.map(problemSentence).join('\n')}`,
  )

/** A document here, not taken away, whose text that counts is this very one. */
const sameText = async (trx: Trx, kind: Kind, text: string): Promise<DocumentHead | null> => {
  const row = await trx
    .selectFrom('documents')
    .innerJoin('revisions', 'revisions.id', 'documents.head')
    .selectAll('documents')
    .where('documents.kind', '=', kind)
    .where('documents.deleted', '=', 0)
    .where('revisions.hash', '=', sha256(text))
    .orderBy('documents.place')
    .limit(1)
    .executeTakeFirst()
  return row === undefined ? null : headOf(row)
}

const sameName = async (trx: Trx, kind: Kind, name: string) =>
  trx
    .selectFrom('documents')
    .selectAll()
    .where('kind', '=', kind)
    .where('name', '=', name)
    .where('deleted', '=', 0)
    .orderBy('place')
    .limit(1)
    .executeTakeFirst()

const add = async (step: Step, arrival: Arrival): Promise<DocumentHead> => {
  const { kind, name, text, note } = arrival
  const place = String(step.changes.length)
  const id = derivedId(step.act.id, place, 'document')
  const head = derivedId(step.act.id, place, 'revision')
  const added = await addDocument(step, {
    id,
    kind,
    name,
    head,
    about_document: null,
    about_revision: null,
    created: step.act.at,
  })
  await addRevision(step.trx, { id: head, document: id, text, note, created: step.act.at, parents: [] })
  return added
}

/** A can measured again is a new revision of the can of that name. */
const addOrRenew = async (step: Step, arrivals: Arrivals, arrival: Arrival): Promise<void> => {
  const { kind, name, text, note } = arrival
  const row = await sameName(step.trx, kind, name)
  if (row === undefined) {
    arrivals.added.push(await add(step, arrival))
    return
  }
  if ((await findRevision(step.trx, row.head))?.text === text) {
    arrivals.known.push(headOf(row))
    return
  }
  const id = derivedId(step.act.id, String(step.changes.length), 'revision')
  const parents = [row.head]
  await addRevision(step.trx, { id, document: row.id, text, note, created: step.act.at, parents })
  arrivals.renewed.push(await move(step, row, { head: id }))
}

const bringStove = async (step: Step, arrivals: Arrivals, file: NamedText): Promise<void> => {
  const stove = readStove(file.text)
  if (!stove.ok) return refuseProblems(file.name, stove.problems)
  const known = await sameText(step.trx, 'stove', file.text)
  if (known !== null) {
    arrivals.known.push(known)
    return
  }
  // Two stoves may bear one name: which one a file goes on from, only its maker knows.
  const { name } = stove.value
  arrivals.added.push(
    await add(step, { kind: 'stove', name, text: file.text, note: `From the file ${file.name}.` }),
  )
}

type FileBit = ShelfFile['bits'][number]

/** `6 mm`; a step drill by its first and last step. */
const bitName = (bit: FileBit): string =>
  typeof bit === 'string' ? bit : `step drill ${bit.step[0]} to ${bit.step.at(-1)}`

/** One thing on the shelf, as it stands in a shelf file. */
export const itemText = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`

const bringShelf = async (
  step: Step,
  arrivals: Arrivals,
  file: NamedText,
  json: JsonValue,
): Promise<void> => {
  const shelf = readShelf(file.text)
  if (!shelf.ok) return refuseProblems(file.name, shelf.problems)
  const { bits, cans } = json as unknown as ShelfFile
  const note = `From the file ${file.name}.`
  for (const [name, can] of Object.entries(cans))
    await addOrRenew(step, arrivals, { kind: 'can', name, text: itemText(can), note })
  for (const bit of bits) {
    const text = itemText(bit)
    const known = await sameText(step.trx, 'bit', text)
    if (known === null) arrivals.added.push(await add(step, { kind: 'bit', name: bitName(bit), text, note }))
    else arrivals.known.push(known)
  }
}

const isShelf = (json: JsonValue): boolean => {
  const format = (json as { readonly format?: JsonValue } | null)?.format
  const [kind] = SHELF_FORMAT.split('@')
  return typeof format === 'string' && format.startsWith(`${kind}@`)
}

/** Brings one file into a workshop, within a step. */
export const bringFile = async (step: Step, arrivals: Arrivals, file: NamedText): Promise<void> => {
  const json = readJson(file.text)
  if (!json.ok) return refuseProblems(file.name, json.problems)
  // Whatever is no shelf is read as a stove: the reader says what it should be.
  if (isShelf(json.value)) await bringShelf(step, arrivals, file, json.value)
  else await bringStove(step, arrivals, file)
}

export const noArrivals = (): Arrivals => ({ added: [], renewed: [], known: [] })

/** A stove file or a shelf file; a file that is here already is not doubled. */
export const importFile = (engine: Engine, act: Act, file: NamedText): Promise<Answer<ImportReport>> =>
  doStep(
    engine,
    act,
    ['import file', file],
    async (step) => {
      const arrivals = noArrivals()
      await bringFile(step, arrivals, file)
      return { label: `import ${file.name}`, value: arrivals }
    },
    // Asked again: everything is known now.
    async (trx) => {
      const rows = await trx.selectFrom('changes').select('document').where('step', '=', act.id).execute()
      const known: DocumentHead[] = []
      for (const { document } of rows) known.push(headOf(await documentRow(trx, document)))
      return { ...noArrivals(), known }
    },
  )
