import { problemSentence } from '#basis/problem.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { readStoveValue } from '#stove/document/read.ts'
import type { Move } from '#stove/moves/move.ts'
import type { StoveEditor } from './editor.ts'

/** Makes a move if the stove still reads after it; else says in a sentence why it will not do. */
export const attempt = (editor: StoveEditor, move: Move | null): string | null => {
  if (move === null) return null
  const made = move.change(editor.state.get().file)
  const read = readStoveValue(made as unknown as JsonValue)
  if (!read.ok) return read.problems.map(problemSentence).join(' ')
  editor.commit(move.label, move.change)
  return null
}
