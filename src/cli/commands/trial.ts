import { basename, dirname } from 'node:path'
import { BadInput } from '#basis/problem.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { trialCautions } from '#proof/metrics/cautions.ts'
import { metricsCsv } from '#proof/metrics/metricsCsv.ts'
import { metricsOf, PROVENANCE } from '#proof/metrics/worked.ts'
import { trialsJson } from '#proof/trial/exchange/bundle.ts'
import { trialsCsv } from '#proof/trial/exchange/records.ts'
import { variantOf } from '#proof/trial/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf } from '../input.ts'
import { writeInto } from '../output.ts'
import { metricsBlocks, metricsFoot } from '../page/proof/metrics.ts'
import { type FoundTrial, trialsFrom } from '../trial/read.ts'
import { blankTrialSheet, type SheetOptions } from '../trial/sheet.ts'

export interface TrialOptions extends SheetOptions {
  readonly sheet?: boolean
  readonly export?: string
  readonly table?: string
  readonly brief?: boolean
  readonly json?: boolean
}

const write = (env: Environment, option: string, path: string, text: string): string =>
  writeInto(env, dirname(path), basename(path), new TextEncoder().encode(text), option)

/** Trials handed on whole: as CSV or as JSON, by the ending of the name. */
const exported = (found: readonly FoundTrial[], path: string): string => {
  const files = found.map(({ file }) => file)
  if (/\.csv$/i.test(path)) return trialsCsv(files)
  if (/\.json$/i.test(path)) return trialsJson(files)
  throw new BadInput([
    problemOf(
      'export.ending',
      '--export',
      path,
      'a name that ends in .csv or .json',
      'Take .csv for a spreadsheet, .json for another workshop.',
    ),
  ])
}

const written = (
  env: Environment,
  found: readonly FoundTrial[],
  { export: to, table }: TrialOptions,
): readonly string[] => [
  ...(to === undefined ? [] : [write(env, '--export', to, exported(found, to))]),
  ...(table === undefined ? [] : [write(env, '--table', table, metricsCsv(found.map(({ trial }) => trial)))]),
]

export const trial = async (
  env: Environment,
  files: readonly string[],
  options: TrialOptions,
): Promise<ExitCode> => {
  if (options.sheet === true) return blankTrialSheet(env, files, options)
  if (files.length === 0)
    throw new BadInput([
      problemOf(
        'trial.none',
        'file',
        '',
        'a trial file, or --sheet',
        'Name one or more trial files, or ask for an empty sheet: tinwright trial --sheet',
      ),
    ])
  const found = trialsFrom(env, files)
  const paths = written(env, found, options)
  const all = found.map(({ trial: one, path }) => {
    const metrics = metricsOf(one)
    return { path, trial: one, metrics, cautions: trialCautions(one, metrics) }
  })
  const mishap = all.some(({ trial: { wentWrong = [] } }) => wentWrong.length > 0)
  const code = mishap ? EXIT.findings : EXIT.fine
  if (options.json === true) {
    const answer = {
      format: 'tinwright/metrics@1',
      trials: all.map(({ path, trial: one, metrics, cautions }) => ({
        file: path,
        name: one.name,
        stove: one.stove.name,
        variant: variantOf(one),
        day: one.day,
        ...metrics,
        remarks: cautions,
      })),
      files: paths,
      provenance: PROVENANCE,
      cautions: MAKING_CAUTIONS,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  const worked = options.brief !== true
  env.out(
    page(
      ...all.flatMap(({ trial: one, metrics }) => metricsBlocks(one, metrics, worked, env.width)),
      paths.length === 0 ? null : wrap(`Written: ${paths.join(', ')}`, env.width),
      metricsFoot(env.width),
      cautionBlock(env.width),
    ),
  )
  return code
}
