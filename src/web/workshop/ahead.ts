import type { CallName, RequestOf } from '#wire/calls.ts'
import type { DocumentHead, Revision } from '#wire/documents.ts'
import type { UploadName } from '#wire/uploads.ts'
import type { Keep } from './keep.ts'
import { headOf, heardOf, learn } from './known.ts'
import { station } from './station.ts'

/** What a call will do to the list, shown before the workshop has heard of it. */
const ahead = (name: CallName | UploadName, request: unknown): DocumentHead | null => {
  if (name === 'create') {
    const { act, wanted } = request as RequestOf<'create'>
    return {
      id: wanted.id,
      kind: wanted.kind,
      name: wanted.name,
      head: wanted.revision,
      deleted: false,
      version: 0,
      aboutDocument: wanted.aboutDocument ?? null,
      aboutRevision: wanted.aboutRevision ?? null,
      created: act.at,
      touched: heardOf(),
    }
  }
  if (name !== 'rename' && name !== 'remove' && name !== 'restore') return null
  const there = headOf((request as { readonly document: string }).document)
  if (there === null) return null
  // What is done next, before the answer, hands back the version that this will make; 0: the workshop has not heard of it.
  const version = there.version === 0 ? 0 : there.version + 1
  if (name === 'rename') return { ...there, version, name: (request as RequestOf<'rename'>).name }
  return { ...there, version, deleted: name === 'remove' }
}

/** A revision that is on its way is as good as one that was seen. */
export const keepRevision = async (revision: Omit<Revision, 'hash'>): Promise<void> => {
  const { keep } = await station()
  await keep.put('revisions', { ...revision, hash: '' })
}

/** What a call will make is shown, and can be opened, before the workshop has heard of it. */
export const keepAhead = async (keep: Keep, name: CallName | UploadName, request: unknown): Promise<void> => {
  const head = ahead(name, request)
  if (name === 'create') {
    const { act, wanted } = request as RequestOf<'create'>
    const { id: document, revision: id, text, note, parents = [] } = wanted
    // Before anybody hears of its head: whoever does asks for this very revision.
    await keepRevision({ id, document, parents, text, note, created: act.at })
  }
  if (head !== null) await learn(keep, [head])
}
