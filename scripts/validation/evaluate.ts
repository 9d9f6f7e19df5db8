import { subjects } from './outside.ts'
import type { CheckSet, OutsideRow } from './row.ts'

export interface EvaluatedSet extends Omit<CheckSet, 'rows'> {
  readonly rows: readonly OutsideRow[]
}

export interface EvaluatedSubject {
  readonly name: string
  readonly sets: readonly EvaluatedSet[]
}

let kept: readonly EvaluatedSubject[] | null = null

/** Every check, worked out once: a second or two, most of it whole burns sampled for their bands. */
export const evaluated = (): readonly EvaluatedSubject[] => {
  kept ??= subjects.map(({ name, sets }) => ({
    name,
    sets: sets.map((set) => ({ ...set, rows: set.rows() })),
  }))
  return kept
}
