import { stepFiles } from '#compose/artefact/steps.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { findingsOf, stopsBlock } from '#compose/page/findings.ts'
import { stepBlocks } from '#compose/page/steps.ts'
import { page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { buildSteps } from '#craft/steps/steps.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { stoveFrom } from '../input.ts'
import { writeInto } from '../output.ts'

export interface StepsOptions {
  readonly out?: string
  readonly json?: boolean
}

export const steps = (env: Environment, file: string, options: StepsOptions): ExitCode => {
  const stove = stoveFrom(env, file)
  const findings = checkStove(stove, null)
  const stops = findings.filter(({ severity }) => severity === 'stop')
  const made = buildSteps(stove)
  const { out } = options
  const pictures =
    out === undefined ? [] : stepFiles(made).map(({ name, bytes }) => writeInto(env, out, name, bytes))
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
