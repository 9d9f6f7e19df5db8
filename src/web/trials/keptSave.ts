import type { RequestOf } from '#wire/calls.ts'
import { station } from '../workshop/station.ts'

/** What of a trial was written here last and is not with the workshop yet. */
export interface KeptSave {
  readonly revision: string
  readonly text: string
}

type Wanted = RequestOf<'save'>['wanted']

/** The trial and the revision that a save is of; null for any other call. */
export const savedIn = ({
  name,
  request,
}: {
  readonly name: string
  readonly request: unknown
}): Wanted | null => (name === 'save' ? (request as RequestOf<'save'>).wanted : null)

/** The last save of a trial that waits in this browser, of whichever window; null: none does. */
export const keptSave = async (trial: string): Promise<KeptSave | null> => {
  const { keep } = await station()
  const saves = (await keep.getAll('outbox')).map(savedIn).filter((wanted) => wanted?.document === trial)
  const last = saves.at(-1)
  return last == null ? null : { revision: last.revision, text: last.text }
}
