import type { JsonValue } from '#stove/document/json.ts'
import { formatShelfItem, type ShelfKind } from '#stove/document/shelfItem.ts'
import type { Answer } from '#wire/answer.ts'
import { say } from '../bench/notices.ts'
import { undo } from '../bench/undoer.ts'
import { newId } from '../workshop/names.ts'
import { headOf, newAct, workshop } from '../workshop/workshop.ts'
import type { ShelfItem } from './items.ts'

const told = (answer: Answer<unknown>, done: string): boolean => {
  if (answer.ok) say(done, { name: 'Undo', do: undo })
  else say(answer.refusal.sentence)
  return answer.ok
}

/** Lays a new thing on the shelf. */
export const addItem = async (kind: ShelfKind, name: string, value: JsonValue): Promise<boolean> => {
  const wanted = {
    id: newId(),
    kind,
    name,
    revision: newId(),
    text: formatShelfItem(kind, value),
    note: 'Laid on the shelf.',
  }
  return told(
    await workshop.write('create', { act: await newAct(), wanted }).answer,
    `“${name}” is on the shelf.`,
  )
}

/** What was measured again or corrected is a new revision; the old one stays in its history. */
export const changeItem = async (item: ShelfItem, name: string, value: JsonValue): Promise<boolean> => {
  const text = formatShelfItem(item.kind, value)
  if (name !== item.name) {
    const version = headOf(item.id)?.version ?? item.head.version
    const renamed = workshop.write('rename', { act: await newAct(), document: item.id, version, name })
    if (!told(await renamed.answer, `“${item.name}” is called “${name}” now.`)) return false
  }
  if (text === item.text) return true
  const wanted = {
    document: item.id,
    revision: newId(),
    base: headOf(item.id)?.head ?? item.head.head,
    text,
    note: 'Changed on the shelf.',
  }
  return told(await workshop.write('save', { act: await newAct(), wanted }).answer, `“${name}” was changed.`)
}

export const removeItem = async (item: ShelfItem): Promise<boolean> => {
  const version = headOf(item.id)?.version ?? item.head.version
  return told(
    await workshop.write('remove', { act: await newAct(), document: item.id, version }).answer,
    `“${item.name}” was taken from the shelf. Nothing of it is lost.`,
  )
}
