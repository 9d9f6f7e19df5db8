import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { orThrow } from '#basis/problem.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { formatStoveFile } from '#stove/document/format.ts'
import { readStoveDocument } from '#stove/document/read.ts'
import { seriesBurns } from './series/burns.ts'
import { SERIES_VARIANTS, variantStove } from './series/variants.ts'

const examples = join(import.meta.dirname, '..', 'examples')
export const SERIES = join(examples, 'series')

const two = (value: number): string => String(value).padStart(2, '0')

/** Every file of the demo series, by its name. Invented, the same whenever it is made. */
export const seriesFiles = (): ReadonlyMap<string, string> => {
  const plan = orThrow(readStoveDocument(readFileSync(join(examples, 'heron.stove.json'), 'utf8'))).file
  const files = new Map<string, string>()
  for (const variant of SERIES_VARIANTS)
    files.set(
      `heron-${variant.letter.toLowerCase()}.stove.json`,
      formatStoveFile(variantStove(plan, variant)),
    )
  for (const burn of seriesBurns())
    files.set(`burn-${two(burn.place ?? 0)}.trial.json`, formatTrialFile(burn))
  return files
}

// Writes the series anew: `node scripts/series.ts`. A test says when that is due.
if (import.meta.main) {
  mkdirSync(SERIES, { recursive: true })
  for (const [name, text] of seriesFiles()) {
    const path = join(SERIES, name)
    writeFileSync(path, text)
    console.log(path)
  }
}
