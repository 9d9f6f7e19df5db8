import type { JsonValue } from '#stove/document/json.ts'
import { readShelf, type ShelfFile } from '#stove/document/shelf.ts'
import type { NamedText } from '#wire/files.ts'
import { addRevision } from '../documents/add.ts'
import { move, type Step } from '../documents/journal.ts'
import { findRevision, headOf, type Trx } from '../documents/rows.ts'
import { derivedId } from '../hash.ts'
import type { Kind } from '../kinds.ts'
import { type Arrival, type Arrivals, add, cameFrom, refuseProblems, sameText } from './arrivals.ts'

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

type FileBit = ShelfFile['bits'][number]

/** `6 mm`; a step drill by its first and last step. */
const bitName = (bit: FileBit): string =>
  typeof bit === 'string' ? bit : `step drill ${bit.step[0]} to ${bit.step.at(-1)}`

/** One thing on the shelf, as it stands in a shelf file. */
const itemText = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`

/** Brings a shelf file in, can by can and bit by bit. */
export const bringShelf = async (
  step: Step,
  arrivals: Arrivals,
  file: NamedText,
  json: JsonValue,
): Promise<void> => {
  const shelf = readShelf(file.text)
  if (!shelf.ok) return refuseProblems(file.name, shelf.problems)
  const { bits, cans } = json as unknown as ShelfFile
  const note = cameFrom(file.name)
  for (const [name, can] of Object.entries(cans))
    await addOrRenew(step, arrivals, { kind: 'can', name, text: itemText(can), note })
  for (const bit of bits) {
    const text = itemText(bit)
    const known = await sameText(step.trx, 'bit', text)
    if (known === null) arrivals.added.push(await add(step, { kind: 'bit', name: bitName(bit), text, note }))
    else arrivals.known.push(known)
  }
}
