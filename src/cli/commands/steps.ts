import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { fileNameOf } from '#craft/fileName.ts'
import type { BuildStep } from '#craft/steps/step.ts'
import { buildSteps } from '#craft/steps/steps.ts'
import { stepSvg } from '#craft/steps/svg.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { stoveFrom } from '../input.ts'
import { writeInto } from '../output.ts'
import { cautionBlock } from '../page/cautions.ts'
import { findingsOf, stopsBlock } from '../page/findings.ts'
import { stepBlocks } from '../page/steps.ts'
import { page, wrap } from '../page/text.ts'

export interface StepsOptions {
  readonly out?: string
  readonly json?: boolean
}

/** `07-drill-wall-of-shell.svg`: in the order of the steps in any list of files. */
const pictureName = ({ key }: BuildStep, index: number): string =>
  `${String(index + 1).padStart(2, '0')}-${fileNameOf(key)}.svg`

/** A picture goes about by itself: what to do and every caution go with it. */
const wordsOf = ({ sentences, checks }: BuildStep): readonly string[] => [
  ...sentences,
  ...checks.map(({ sentence }) => sentence),
  ...MAKING_CAUTIONS,
]

export const steps = (env: Environment, file: string, options: StepsOptions): ExitCode => {
  const stove = stoveFrom(env, file)
  const findings = checkStove(stove, null)
  const stops = findings.filter(({ severity }) => severity === 'stop')
  const made = buildSteps(stove)
  const { out } = options
  const pictures =
    out === undefined
      ? []
      : made.map((step, index) =>
          writeInto(
            env,
            out,
            pictureName(step, index),
            new TextEncoder().encode(stepSvg(step.picture, wordsOf(step))),
          ),
        )
  const code = stops.length === 0 ? EXIT.fine : EXIT.findings
  if (options.json === true) {
    const told = made.map(({ picture: _, ...step }, index) => ({
      number: index + 1,
      ...step,
      picture: pictures[index] ?? null,
    }))
    const answer = {
      stove: stove.name,
      steps: told,
      stopFindings: stops,
      warnFindings: findings.filter(({ severity }) => severity === 'warn'),
      cautions: MAKING_CAUTIONS,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  env.out(
    page(
      wrap(`${stove.name}: ${made.length} steps`, env.width),
      stopsBlock(stops, 'Do not build this stove as it is drawn:', env.width),
      findingsOf('warn', findings, env.width),
      ...stepBlocks(made, pictures, env.width),
      pictures.length > 0
        ? null
        : wrap('Every step has a picture: --out FOLDER writes them as SVG.', env.width),
      cautionBlock(env.width),
    ),
  )
  return code
}
