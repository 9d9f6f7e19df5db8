import { BadInput } from '#basis/problem.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { readStoveValue } from '#stove/document/read.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { StoveState } from './editor.ts'

/** What follows from a file: the stove it describes, what is wrong with it, what is to be said of it. */
export const shown = (before: StoveState, file: StoveFile): StoveState => {
  if (file === before.file) return before
  const read = readStoveValue(file as unknown as JsonValue)
  if (!read.ok) return { ...before, file, problems: read.problems }
  const { stove } = read.value
  return { ...before, file, stove, problems: [], findings: checkStove(stove, null) }
}

/**
 * A stove as it comes to the bench.
 * @throws BadInput for a file that does not read: nothing that lies in a workshop is one.
 */
export const startOf = (file: StoveFile): StoveState => {
  const read = readStoveValue(file as unknown as JsonValue)
  if (!read.ok) throw new BadInput(read.problems)
  const { stove } = read.value
  return {
    file,
    stove,
    problems: [],
    findings: checkStove(stove, null),
    moving: false,
    undo: null,
    redo: null,
    unsaved: false,
    keeping: { kind: 'kept', at: '' },
  }
}
