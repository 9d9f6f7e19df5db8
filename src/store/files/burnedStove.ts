import type { TrialFile } from '#proof/trial/schema.ts'
import { refuse } from '../answer.ts'
import { slug } from '../archive/names.ts'
import { documentRow, type Trx } from '../documents/rows.ts'

/** The stove of a trial and the revision of it that was burned. */
export interface BurnedStove {
  readonly document: string
  readonly revision: string
  /** Why it may be another one, in a sentence; null where the trial leaves no doubt. */
  readonly doubt: string | null
}

interface StoveHere {
  readonly id: string
  readonly name: string
  readonly head: string
}

type Said = TrialFile['stove']

const stovesHere = (trx: Trx): Promise<readonly StoveHere[]> =>
  trx
    .selectFrom('documents')
    .select(['id', 'name', 'head'])
    .where('kind', '=', 'stove')
    .where('deleted', '=', 0)
    .orderBy('place', 'desc')
    .execute()

/** The stove that is named alike, of several the one made last; null: none is. */
const namedAlike = (
  { name, variant, file }: Said,
  here: readonly StoveHere[],
): { readonly stove: StoveHere; readonly of: number } | null => {
  const fileName = file?.split(/[/\\]/).at(-1)
  const ways: readonly ((stove: StoveHere) => boolean)[] = [
    (stove) => fileName !== undefined && fileName === `${slug(stove.name)}.stove.json`,
    (stove) => variant !== undefined && stove.name === `${name} ${variant}`,
    (stove) => stove.name === variant,
    (stove) => stove.name === name,
  ]
  for (const way of ways) {
    const found = here.filter(way)
    const [stove] = found
    if (stove !== undefined) return { stove, of: found.length }
  }
  return null
}

/** Revisions of this very text; those of a stove of that name first, then the youngest stove's. */
const byHash = async (trx: Trx, { name, revision }: Said, here: readonly StoveHere[]) => {
  if (revision === undefined) return null
  const rows = await trx
    .selectFrom('revisions')
    .select(['id', 'document'])
    .where('hash', '=', revision.toLowerCase())
    .orderBy('place', 'desc')
    .execute()
  const found = rows.flatMap(({ id, document }) => {
    const stove = here.find((one) => one.id === document)
    return stove === undefined ? [] : [{ stove, revision: id }]
  })
  return found.find(({ stove }) => stove.name === name) ?? found[0] ?? null
}

const saidWords = ({ name, variant, file }: Said): string =>
  [`“${name}”`, variant === undefined ? null : `“${variant}”`, file].filter(Boolean).join(', ')

/**
 * Which stove a trial was burned on: the revision whose hash it names, else a stove of its file's name, its variant or its
 * name, else `otherwise`. Refuses where none fits: a trial without its stove could never be found again.
 */
export const burnedStove = async (
  trx: Trx,
  file: string,
  said: Said,
  otherwise: string | undefined,
): Promise<BurnedStove> => {
  const here = await stovesHere(trx)
  const exact = await byHash(trx, said, here)
  if (exact !== null) return { document: exact.stove.id, revision: exact.revision, doubt: null }
  const alike = namedAlike(said, here)
  if (alike !== null) {
    const { stove, of } = alike
    const lies = `it lies with ${of > 1 ? 'the one made last' : `“${stove.name}”`}, as that is now`
    const doubt =
      said.revision !== undefined
        ? `${file} names a revision of ${saidWords(said)} that is not here; ${lies}.`
        : of > 1
          ? `${of} stoves here are called “${stove.name}”; ${lies}.`
          : null
    return { document: stove.id, revision: stove.head, doubt }
  }
  if (otherwise !== undefined) {
    const { id, kind, name, head } = await documentRow(trx, otherwise)
    if (kind !== 'stove') refuse('bad input', `“${name}” is no stove. Nothing was changed.`)
    const doubt = `${file} was burnt on ${saidWords(said)}, which is no stove here; it lies with “${name}”, as that is now.`
    return { document: id, revision: head, doubt }
  }
  return refuse(
    'unknown',
    `${file} was burnt on ${saidWords(said)}, and no stove here fits. Nothing was changed. Bring in its stove file first, or bring the stove back if it was taken away.`,
  )
}
