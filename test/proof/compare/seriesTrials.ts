import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { orThrow } from '#basis/problem.ts'
import type { Trial } from '#proof/trial/model.ts'
import { readTrial } from '#proof/trial/read.ts'
import { readStove } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'

const folder = fileURLToPath(new URL('../../../examples/series/', import.meta.url))

/** Files of examples/series, by name. */
export const seriesTexts: Readonly<Record<string, string>> = Object.fromEntries(
  readdirSync(folder).map((name) => [name, readFileSync(folder + name, 'utf8')]),
)

/** The invented burns of examples/series, in their order. */
export const seriesTrials: readonly Trial[] = Object.entries(seriesTexts)
  .filter(([name]) => name.endsWith('.trial.json'))
  .map(([, text]) => orThrow(readTrial(text)))

/** The stove that a trial of the series names. */
export const seriesStove = ({ stove }: Trial): Stove =>
  orThrow(readStove(seriesTexts[stove.file as string] as string))
