import { basename, dirname } from 'node:path'
import { figureOf } from '#compose/burnFigure.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { stopsBlock } from '#compose/page/findings.ts'
import { page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { burnFigure } from '#craft/figure/burnFigure.ts'
import { type ReportOutcome, reportOf } from '#science/answers/burn/report.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Finding } from '#stove/model.ts'
import { seriesCsv } from '../burn/series.ts'
import { type BurnOptions, setupOf } from '../burn/setup.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { stoveFrom } from '../input.ts'
import { writeInto } from '../output.ts'
import { burnBlocks } from '../page/burn.ts'
import { bandSets, watched } from '../sampling.ts'

export interface BurnCommandOptions extends BurnOptions {
  readonly bands: string
  readonly figure?: string
  readonly series?: string
  readonly json?: boolean
}

/** Not a good answer: it smoulders, smokes, chills or goes out, or it cannot be made. */
const codeOf = (outcome: ReportOutcome, stops: readonly Finding[]): ExitCode =>
  outcome.kind === 'burn' && outcome.report.course === 'clean' && stops.length === 0
    ? EXIT.fine
    : EXIT.findings

const write = (env: Environment, option: string, path: string, text: string): string =>
  writeInto(env, dirname(path), basename(path), new TextEncoder().encode(text), option)

/** Files that were asked for, written; where each is. */
const written = (
  env: Environment,
  outcome: ReportOutcome,
  options: BurnCommandOptions,
): readonly string[] => {
  if (outcome.kind === 'no burn') return []
  const { report } = outcome
  return [
    ...(options.figure === undefined
      ? []
      : [write(env, '--figure', options.figure, burnFigure(figureOf(report)).svg)]),
    ...(options.series === undefined ? [] : [write(env, '--series', options.series, seriesCsv(report))]),
  ]
}

export const burn = (env: Environment, file: string, options: BurnCommandOptions): ExitCode => {
  const sets = bandSets(options.bands)
  const stove = stoveFrom(env, file)
  const setup = setupOf(stove, options)
  const stops = checkStove(setup.stove, null).filter(({ severity }) => severity === 'stop')
  const outcome = watched(env, (progress) => reportOf(setup, sets, progress))
  const files = written(env, outcome, options)
  const code = codeOf(outcome, stops)
  if (options.json) {
    const said = outcome.kind === 'burn' ? { kind: outcome.kind, ...outcome.report } : outcome
    const answer = {
      format: 'tinwright/burn@1',
      ...said,
      files,
      stopFindings: stops,
      cautions: MAKING_CAUTIONS,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  env.out(
    page(
      stopsBlock(
        stops,
        'This stove cannot be made as it is drawn; what follows is of the drawing:',
        env.width,
      ),
      ...(outcome.kind === 'burn'
        ? burnBlocks(outcome.report, env.width)
        : [wrap(`${outcome.stove} does not burn: ${outcome.noBurn.sentence}`, env.width)]),
      files.length === 0 ? null : `Written: ${files.join(', ')}`,
      cautionBlock(env.width),
    ),
  )
  return code
}
