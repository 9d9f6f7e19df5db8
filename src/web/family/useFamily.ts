import { useEffect, useState } from 'react'
import type { RevisionHead } from '#wire/documents.ts'
import { useCell } from '../cell/useCell.ts'
import { documents, workshop } from '../workshop/workshop.ts'

export interface FamilyState {
  /** Null while it is fetched for the first time. */
  readonly revisions: readonly RevisionHead[] | null
  readonly sentence: string | null
}

/** All revisions of a stove and its relations, fetched anew when the workshop has changed. */
export const useFamily = (stove: string): FamilyState => {
  const all = useCell(documents)
  const stamp = all.reduce(
    (newest, { kind, touched }) => (kind === 'stove' ? Math.max(newest, touched) : newest),
    0,
  )
  const heardOf = all.find(({ id }) => id === stove)?.version !== 0
  const [state, setState] = useState<FamilyState>({ revisions: null, sentence: null })
  // biome-ignore lint/correctness/useExhaustiveDependencies: fetched anew when anything of a stove was written
  useEffect(() => {
    if (!heardOf) return
    let gone = false
    void workshop.ask('family', { document: stove }).then((answer) => {
      if (gone) return
      setState((before) =>
        answer.ok
          ? { revisions: answer.value, sentence: null }
          : { ...before, sentence: answer.refusal.sentence },
      )
    })
    return () => {
      gone = true
    }
  }, [stove, stamp, heardOf])
  return state
}
