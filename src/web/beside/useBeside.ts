import { useEffect, useState } from 'react'
import { useCell } from '../cell/useCell.ts'
import { type BurnFacts, burnFacts } from '../stoveFacts/burnFacts.ts'
import { headOfEither, revisionsSeen } from '../workshop/revisions.ts'
import { documents, documentsFrom, headOf } from '../workshop/workshop.ts'

/** One of the stoves that stand side by side. */
export interface Beside {
  /** As it stands in the address. */
  readonly id: string
  readonly name: string
  /** The stove it belongs to, to go there; null for a step whose stove is not known yet. */
  readonly document: string | null
  /** Null while it is worked out. */
  readonly facts: BurnFacts | null
}

/** Stoves as they are now, by their document, or steps of their families, by revision. */
export const useBeside = (
  ids: readonly string[],
): { readonly looking: boolean; readonly stoves: readonly Beside[] } => {
  useCell(documents)
  useCell(revisionsSeen)
  const from = useCell(documentsFrom)
  const [, draw] = useState(0)
  const revisions = ids.map((id) => headOf(id)?.head ?? id)
  const looking = from === 'looking'
  // Before the workshop has told its stoves, a stove's own name would be taken for a revision's.
  const key = looking ? '' : revisions.join(' ')
  useEffect(() => {
    const stops = key
      .split(' ')
      .filter((revision) => revision !== '')
      .map((revision) => burnFacts(revision).subscribe(() => draw((n) => n + 1)))
    return () => {
      for (const stop of stops) stop()
    }
  }, [key])
  return {
    looking,
    stoves: ids.map((id, i) => {
      const facts = looking ? null : burnFacts(revisions[i] as string).get()
      const head = headOfEither(id)
      const isStep = id !== head?.id && id !== head?.head
      const step = isStep && facts !== null && facts.note !== '' ? ` (${facts.note})` : ''
      return {
        id,
        name: head?.name ?? `${facts?.file?.name ?? 'A step'}${step}`,
        document: head?.id ?? null,
        facts,
      }
    }),
  }
}
