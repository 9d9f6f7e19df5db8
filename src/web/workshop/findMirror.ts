import type { Revision } from '#wire/documents.ts'
import type { Draft } from '#wire/drafts.ts'
import { beginMirror, committed, type Mirror, textNow } from './mirror.ts'
import type { Station } from './station.ts'
import { workshop } from './workshop.ts'

/** An edit that this browser knows nothing of, as the workshop has it; undo begins where it stands. */
const adopted = async (draft: Draft, first: Revision): Promise<Mirror> => {
  const base = draft.base === null ? null : await workshop.revision(draft.base)
  const from = base?.ok ? base.value : first
  const { document, client, updated, text } = draft
  const begun = beginMirror({ document, client, base: from.id, baseText: from.text, updated })
  return text === from.text ? begun : committed(begun, { label: draft.undo ?? 'edit', text }, updated)
}

/** What this browser remembers of an edit, set right by what the workshop has of it. */
export const findMirror = async ({ keep, window }: Station, id: string, first: Revision): Promise<Mirror> => {
  const fresh = (): Mirror =>
    beginMirror({
      document: id,
      client: window,
      base: first.id,
      baseText: first.text,
      updated: first.created,
    })
  const kept = await keep.get('mirrors', [id, window])
  const entries = await keep.getAllFromIndex('outbox', 'client', window)
  // What the workshop has not heard of yet is newer than what it has.
  if (kept !== undefined && entries.some(({ draft }) => draft?.document === id)) return kept
  const answer = await workshop.ask('draft', { document: id, client: window })
  if (!answer.ok) return kept ?? fresh()
  const draft = answer.value
  if (draft === null) {
    await keep.delete('numbers', [id, window])
    return kept?.refused == null ? fresh() : kept
  }
  const number = await keep.get('numbers', [id, window])
  await keep.put('numbers', draft.number, [id, window])
  if (kept !== undefined && number === draft.number && textNow(kept) === draft.text) return kept
  if (kept?.refused != null) return kept
  return draft.closed ? fresh() : adopted(draft, first)
}
