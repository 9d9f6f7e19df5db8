import { createHash } from 'node:crypto'
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { orThrow } from '#basis/problem.ts'
import { formatTrialFile } from '#proof/trial/format.ts'
import { formatStoveFile } from '#stove/document/format.ts'
import { readStoveDocument } from '#stove/document/read.ts'
import { seriesBurns } from './series/burns.ts'
import { familyText } from './series/family.ts'
import { SERIES_VARIANTS, variantFile, variantStove } from './series/variants.ts'

const examples = join(import.meta.dirname, '..', 'examples')
export const SERIES = join(examples, 'series')

const PLAN = 'heron.stove.json'

const two = (value: number): string => String(value).padStart(2, '0')

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')

/** Every file of the demo series, by its name. Invented, the same whenever it is made. */
export const seriesFiles = (): ReadonlyMap<string, string> => {
  const plan = orThrow(readStoveDocument(readFileSync(join(examples, PLAN), 'utf8'))).file
  const stoves = new Map(
    SERIES_VARIANTS.map((variant) => [variantFile(variant), formatStoveFile(variantStove(plan, variant))]),
  )
  const burns = seriesBurns((variant) => sha256(stoves.get(variantFile(variant)) ?? ''))
  const trials = new Map(
    burns.map((burn) => [`burn-${two(burn.place ?? 0)}.trial.json`, formatTrialFile(burn)]),
  )
  const family = familyText(PLAN, SERIES_VARIANTS, [...trials.keys()])
  return new Map([...stoves, ...trials, ['series.json', family]])
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
