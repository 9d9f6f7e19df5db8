import { readStove } from '#stove/document/read.ts'
import type { NamedText } from '#wire/files.ts'
import type { Step } from '../documents/journal.ts'
import { headOf, type Trx } from '../documents/rows.ts'
import type { DocumentHead } from '../workshop.ts'
import { type Arrivals, add, cameFrom, refuseProblems, sameText, type Told } from './arrivals.ts'
import { stoveTextUnder } from './stoveText.ts'

/** A stove here that was given this name since its text was written, and would leave as this very file. */
const leavesAs = async (trx: Trx, name: string, text: string): Promise<DocumentHead | null> => {
  const rows = await trx
    .selectFrom('documents')
    .innerJoin('revisions', 'revisions.id', 'documents.head')
    .selectAll('documents')
    .select('revisions.text')
    .where('documents.kind', '=', 'stove')
    .where('documents.deleted', '=', 0)
    .where('documents.name', '=', name)
    .orderBy('documents.place')
    .execute()
  const found = rows.find((row) => stoveTextUnder(name, row.text) === text)
  return found === undefined ? null : headOf(found)
}

/** Brings a stove file in. Two stoves may bear one name: which one a file goes on from, only its maker knows. */
export const bringStove = async (
  step: Step,
  arrivals: Arrivals,
  { name: file, text }: NamedText,
  { note = cameFrom(file), parents = [] }: Told,
): Promise<void> => {
  const stove = readStove(text)
  if (!stove.ok) return refuseProblems(file, stove.problems)
  const known =
    (await sameText(step.trx, 'stove', text)) ?? (await leavesAs(step.trx, stove.value.name, text))
  if (known !== null) arrivals.known.push(known)
  else arrivals.added.push(await add(step, { kind: 'stove', name: stove.value.name, text, note, parents }))
}
