import { readStove } from '#stove/document/read.ts'
import type { NamedText } from '#wire/files.ts'
import type { Step } from '../documents/journal.ts'
import { type Arrivals, add, cameFrom, refuseProblems, sameText, type Told } from './arrivals.ts'

/** Brings a stove file in. Two stoves may bear one name: which one a file goes on from, only its maker knows. */
export const bringStove = async (
  step: Step,
  arrivals: Arrivals,
  { name: file, text }: NamedText,
  { note = cameFrom(file), parents = [] }: Told,
): Promise<void> => {
  const stove = readStove(text)
  if (!stove.ok) return refuseProblems(file, stove.problems)
  const known = await sameText(step.trx, 'stove', text)
  if (known !== null) arrivals.known.push(known)
  else arrivals.added.push(await add(step, { kind: 'stove', name: stove.value.name, text, note, parents }))
}
