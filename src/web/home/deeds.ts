import type { Answer } from '#wire/answer.ts'
import type { DocumentHead } from '#wire/documents.ts'
import { say } from '../bench/notices.ts'
import { undo } from '../bench/undoer.ts'
import { headOf, newAct, workshop } from '../workshop/workshop.ts'

const told = (answer: Answer<unknown>, done: string): void => {
  if (answer.ok) say(done, { name: 'Undo', do: undo })
  else say(answer.refusal.sentence)
}

/** As it is now: what the list shows may be a moment old. */
const seen = ({ id, version }: DocumentHead): { readonly document: string; readonly version: number } => ({
  document: id,
  version: headOf(id)?.version ?? version,
})

export const rename = async (stove: DocumentHead, name: string): Promise<void> =>
  told(
    await workshop.write('rename', { act: await newAct(), ...seen(stove), name }).answer,
    `“${stove.name}” is called “${name}” now.`,
  )

export const takeAway = async (stove: DocumentHead): Promise<void> =>
  told(
    await workshop.write('remove', { act: await newAct(), ...seen(stove) }).answer,
    `“${stove.name}” was taken away. Nothing of it is lost.`,
  )

export const bringBack = async (stove: DocumentHead): Promise<void> =>
  told(
    await workshop.write('restore', { act: await newAct(), ...seen(stove) }).answer,
    `“${stove.name}” is back.`,
  )
