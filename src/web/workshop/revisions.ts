import type { Answer } from '#wire/answer.ts'
import type { DocumentHead, OpenDocument, Revision } from '#wire/documents.ts'
import { type Cell, createCell } from '../cell/cell.ts'
import { documents, headOf } from './known.ts'
import { client } from './link.ts'
import { station } from './station.ts'

const owners = createCell<ReadonlyMap<string, string>>(new Map())

/** Of every revision that this page has seen, the document that it is one of. */
export const revisionsSeen: Cell<ReadonlyMap<string, string>> = owners

const seen = ({ id, document }: Revision): void => {
  if (owners.get().get(id) !== document) owners.update((before) => new Map([...before, [id, document]]))
}

/** The document that a revision is one of, as far as this page has seen it. */
export const documentOf = (revision: string): string | null =>
  owners.get().get(revision) ?? documents.get().find(({ head }) => head === revision)?.id ?? null

/** Of a document, or of the one that a revision is one of. */
export const headOfEither = (id: string): DocumentHead | null => {
  const document = documentOf(id)
  return headOf(id) ?? (document === null ? null : headOf(document))
}

/** A revision by its id, from this browser where it was seen before. */
export const revisionBy = async (id: string): Promise<Answer<Revision>> => {
  const { keep } = await station()
  const kept = await keep.get('revisions', id)
  if (kept !== undefined) {
    seen(kept)
    return { ok: true, value: kept }
  }
  const answer = await client.call('revision', { id })
  if (answer.ok) {
    await keep.put('revisions', answer.value)
    seen(answer.value)
  }
  return answer
}

/** A document with the revision that counts; from this browser while the workshop does not answer. */
export const openDocument = async (document: string): Promise<Answer<OpenDocument>> => {
  const { keep } = await station()
  const answer = await client.call('open', { document })
  if (answer.ok) {
    await keep.put('revisions', answer.value.revision)
    return answer
  }
  if (answer.refusal.code !== 'unreachable') return answer
  const head = headOf(document)
  const revision = head === null ? undefined : await keep.get('revisions', head.head)
  return head === null || revision === undefined ? answer : { ok: true, value: { document: head, revision } }
}
