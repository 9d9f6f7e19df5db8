import { type Problem, problemSentence } from '#basis/problem.ts'
import { refuse } from '../answer.ts'
import { addDocument, addRevision, checkParents } from '../documents/add.ts'
import type { Step } from '../documents/journal.ts'
import { headOf, type Trx } from '../documents/rows.ts'
import { derivedId, sha256 } from '../hash.ts'
import type { Kind } from '../kinds.ts'
import type { DocumentHead } from '../workshop.ts'

/** What became of files that were brought in. */
export interface Arrivals {
  readonly added: DocumentHead[]
  readonly renewed: DocumentHead[]
  readonly known: DocumentHead[]
  readonly remarks: string[]
}

export const noArrivals = (): Arrivals => ({ added: [], renewed: [], known: [], remarks: [] })

/** Something new, out of a file. */
export interface Arrival {
  readonly kind: Kind
  readonly name: string
  readonly text: string
  readonly note: string
  /** Of a variant: the revision it was made from. */
  readonly parents?: readonly string[]
  /** Of a trial: the stove and the revision of it that was burned. */
  readonly about?: { readonly document: string; readonly revision: string }
}

/** A file brought in with more than it says itself. */
export interface Told {
  /** What was changed and why; where it came from if left out. */
  readonly note?: string
  readonly parents?: readonly string[]
  /** Where a trial belongs whose own words fit no stove here. */
  readonly stove?: string
}

export const cameFrom = (file: string): string => `From the file ${file}.`

export const refuseProblems = (file: string, problems: readonly Problem[]): never =>
  refuse(
    'bad input',
    `${file} will not do, and nothing was changed.\n${problems.map(problemSentence).join('\n')}`,
  )

/** A document here, not taken away, whose text that counts is this very one. */
export const sameText = async (trx: Trx, kind: Kind, text: string): Promise<DocumentHead | null> => {
  const row = await trx
    .selectFrom('documents')
    .innerJoin('revisions', 'revisions.id', 'documents.head')
    .selectAll('documents')
    .where('documents.kind', '=', kind)
    .where('documents.deleted', '=', 0)
    .where('revisions.hash', '=', sha256(text))
    .orderBy('documents.place')
    .limit(1)
    .executeTakeFirst()
  return row === undefined ? null : headOf(row)
}

/** Adds a document within a step, under ids that follow from the act. */
export const add = async (step: Step, arrival: Arrival): Promise<DocumentHead> => {
  const { kind, name, text, note, parents = [], about } = arrival
  const place = String(step.changes.length)
  const id = derivedId(step.act.id, place, 'document')
  const head = derivedId(step.act.id, place, 'revision')
  await checkParents(step.trx, parents)
  const added = await addDocument(step, {
    id,
    kind,
    name,
    head,
    about_document: about?.document ?? null,
    about_revision: about?.revision ?? null,
    created: step.act.at,
  })
  await addRevision(step.trx, { id: head, document: id, text, note, created: step.act.at, parents })
  return added
}
