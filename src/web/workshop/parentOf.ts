import { readStoveDocument } from '#stove/document/read.ts'
import type { Parent } from '../stove/editor.ts'
import { isUnsaved, type Mirror } from './mirror.ts'
import { headOf, workshop } from './workshop.ts'

/**
 * The revision to see a change against: the last one while there is an edit that is no revision yet; else the one
 * that the last was made from, which for a fresh variant is a revision of another stove.
 */
export const parentOf = async (mirror: Mirror): Promise<Parent | null> => {
  const unsaved = isUnsaved(mirror)
  const base = await workshop.revision(mirror.base)
  if (!base.ok) return null
  const [older] = base.value.parents
  const from = unsaved ? base : older === undefined ? null : await workshop.revision(older)
  if (from === null || !from.ok) return null
  const read = readStoveDocument(from.value.text)
  if (!read.ok) return null
  const { stove } = read.value
  const { id: revision, document } = from.value
  return {
    document,
    revision,
    name: headOf(document)?.name ?? stove.name,
    note: unsaved ? '' : base.value.note,
    stove,
  }
}
