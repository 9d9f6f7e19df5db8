import { dirname, isAbsolute, join } from 'node:path'
import { BadInput } from '#basis/problem.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import type { PredictedTrial } from '#proof/predicted/model.ts'
import { predictedTrial } from '#proof/predicted/predict.ts'
import { claimResiduals, RESIDUAL_PROVENANCE } from '#proof/predicted/residuals.ts'
import type { Trial } from '#proof/trial/model.ts'
import type { Stove } from '#stove/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf, stoveFrom } from '../input.ts'
import { outsideBlock, predictedBlocks, residualBlocks } from '../page/proof/predicted.ts'
import { bandSets } from '../sampling.ts'
import { type FoundTrial, trialsFrom } from '../trial/read.ts'

export interface PredictedOptions {
  readonly stove?: string
  readonly bands: string
  readonly json?: boolean
}

/** A file that was named for all trials may well be that of another stove. */
const otherStove = ({ stove }: Trial, built: Stove): readonly string[] =>
  stove.name === built.name
    ? []
    : [`The trial was burnt in “${stove.name}”, and this is the prediction of “${built.name}”.`]

/** The stove that was named on the command line, or that the trial names, beside its own file. */
const stoveOf = (env: Environment, { path, trial }: FoundTrial, { stove }: PredictedOptions): Stove => {
  if (stove !== undefined) return stoveFrom(env, stove)
  const { file } = trial.stove
  if (file === undefined)
    throw new BadInput([
      problemOf(
        'predicted.stove',
        '--stove',
        '',
        'the stove file of the trial',
        `“${trial.name}” names none in stove.file: give it with --stove.`,
      ),
    ])
  return stoveFrom(env, isAbsolute(file) ? file : join(dirname(path), file))
}

export const predicted = (
  env: Environment,
  files: readonly string[],
  options: PredictedOptions,
): ExitCode => {
  const sets = bandSets(options.bands)
  const found = trialsFrom(env, files)
  const pairs = found.map((one) => ({ ...one, built: stoveOf(env, one, options) }))
  const trials: PredictedTrial[] = []
  const without: string[] = []
  try {
    for (const [i, { trial, built }] of pairs.entries()) {
      env.progress(`burn ${i + 1} of ${pairs.length}`)
      const beside = predictedTrial(trial, built, sets)
      if (beside === null) without.push(trial.name)
      else trials.push({ ...beside, cautions: [...otherStove(trial, built), ...beside.cautions] })
    }
  } finally {
    env.progress(null)
  }
  const claims = claimResiduals(trials)
  // One burn has nine figures, and one of nine lies outside its band more often than not: no claim is wrong for that.
  const wrong = claims.some(({ verdict }) => verdict === 'wrong' || verdict === 'too sure')
  const burnt = trials.length > 0 && trials.every(({ noBurn }) => noBurn === null)
  const code = burnt && !wrong ? EXIT.fine : EXIT.findings
  const [only] = trials
  if (options.json === true) {
    const answer = {
      format: 'tinwright/predicted@1',
      trials,
      claims,
      withoutHighPower: without,
      provenance: RESIDUAL_PROVENANCE,
      cautions: MAKING_CAUTIONS,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  env.out(
    page(
      ...(trials.length === 1
        ? predictedBlocks(only as PredictedTrial, env.width)
        : trials.length === 0
          ? []
          : [...residualBlocks(claims, trials.length, env.width), outsideBlock(trials, env.width)]),
      without.length === 0
        ? null
        : wrap(
            `Without a phase at full power, and so not predicted: ${without.map((name) => `“${name}”`).join(', ')}.`,
            env.width,
          ),
      cautionBlock(env.width),
    ),
  )
  return code
}
