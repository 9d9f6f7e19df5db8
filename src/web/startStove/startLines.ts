import { openingWords } from '#stove/difference/opening.ts'
import { tellingBy } from '#stove/difference/words.ts'
import type { StoveFile } from '#stove/document/schema.ts'

/** What has to be cut in a stove, opening by opening, screws left out; `written` says a length [from m]. */
export const startLines = ({ parts }: StoveFile, written: (length: number) => string): readonly string[] => {
  const telling = tellingBy(written)
  return Object.entries(parts).flatMap(([part, { openings }]) =>
    Object.values(openings ?? {}).flatMap((opening) =>
      opening.duty === 'fixing' ? [] : [`${part}: ${openingWords(opening, telling)}`],
    ),
  )
}
