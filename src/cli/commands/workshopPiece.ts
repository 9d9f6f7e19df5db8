import { BadInput } from '#basis/problem.ts'
import type { DocumentHead, Workshop } from '#store/workshop.ts'
import type { Answer } from '#wire/answer.ts'
import type { NamedText } from '#wire/files.ts'
import { problemOf } from '../input.ts'

/** Cans and bits go out as one file. */
const SHELF = 'shelf'

const FILES: readonly string[] = ['stove', 'trial']

/** The one that is meant, by id or by a name that no other bears. */
const meant = (documents: readonly DocumentHead[], word: string): DocumentHead => {
  const here = documents.filter(({ kind }) => FILES.includes(kind))
  const found = here.filter(({ id, name }) => id === word || name === word)
  const [one] = found
  if (one !== undefined && found.length === 1) return one
  const said = ({ kind, name, id }: DocumentHead): string => `${kind} ${name} (${id})`
  throw new BadInput([
    problemOf(
      found.length === 0 ? 'workshop.no-such' : 'workshop.several',
      '--only',
      found.length === 0 ? word : `${word}, which ${found.length} things are called,`,
      found.length === 0
        ? `the name of a stove or a trial, its id, or ${SHELF}`
        : `one of ${found.map(said).join(', ')}`,
      found.length === 0
        ? '`tinwright workshop list` names them; with --json it tells their ids too.'
        : 'Name it by its id.',
    ),
  ])
}

/** One stove or trial as it counts now, or the shelf, as a plain file; `taken`: what becomes of a refusal. */
export const pieceOf = async (
  shop: Workshop,
  wanted: string,
  taken: <T>(answer: Answer<T>) => T,
): Promise<NamedText> =>
  wanted === SHELF
    ? taken(await shop.exportShelf())
    : taken(await shop.exportFile(meant(taken(await shop.list()), wanted).id))
