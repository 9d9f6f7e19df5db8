import { BadInput } from '#basis/problem.ts'
import { readQuantity } from '#basis/text/read.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { page } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { compare as compareTrials } from '#proof/compare/compare.ts'
import type { CompareOptions, Comparison } from '#proof/compare/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { problemOf } from '../input.ts'
import { comparisonBlocks } from '../page/proof/comparison.ts'
import { trialsFrom } from '../trial/read.ts'

export interface CompareCommandOptions {
  readonly against?: string
  readonly question?: string
  readonly margin: string
  readonly confidence: string
  readonly method?: string
  /** False for `--no-mishaps`. */
  readonly mishaps?: boolean
  readonly all?: boolean
  readonly json?: boolean
}

const METHODS = ['welch', 'tukey', 'games-howell', 'dunnett-t3', 'blocked'] as const

const shareOf = (text: string, option: string, low: number, high: number): number => {
  const read = readQuantity(text, option, 'airSplit')
  if (read.ok && read.value >= low && read.value <= high) return read.value
  throw new BadInput([
    problemOf(
      'share.range',
      option,
      text,
      `a share from ${100 * low} % to ${100 * high} %`,
      'Write it in per cent, such as "5 %".',
    ),
  ])
}

const methodOf = (text: string | undefined): CompareOptions['method'] => {
  const found = METHODS.find((one) => one === text?.toLowerCase())
  if (text === undefined || found !== undefined) return found
  throw new BadInput([
    problemOf(
      'compare.method',
      '--method',
      text,
      METHODS.join(', '),
      'Leave it out: the one that suits the burns is taken, and says why.',
    ),
  ])
}

const OPTIONS: Readonly<Record<string, string>> = { reference: '--against', question: '--question' }

/** Something is told of what was asked, and nothing is there that may mislead. */
const isGood = ({ verdicts, warnings }: Comparison): boolean =>
  warnings.length === 0 && verdicts.some(({ verdict }) => verdict !== 'open' && verdict !== 'unknown')

const compared = (...args: Parameters<typeof compareTrials>): Comparison => {
  try {
    return compareTrials(...args)
  } catch (error) {
    if (!(error instanceof BadInput)) throw error
    throw new BadInput(error.problems.map((one) => ({ ...one, field: OPTIONS[one.field] ?? one.field })))
  }
}

export const compare = (
  env: Environment,
  files: readonly string[],
  options: CompareCommandOptions,
): ExitCode => {
  const method = methodOf(options.method)
  const asked: CompareOptions = {
    margin: shareOf(options.margin, '--margin', 0, 0.5),
    confidence: shareOf(options.confidence, '--confidence', 0.5, 0.999),
    mishaps: options.mishaps === false ? 'leave out' : 'keep',
    ...(options.against === undefined ? {} : { reference: options.against }),
    ...(options.question === undefined ? {} : { question: options.question }),
    ...(method === undefined ? {} : { method }),
  }
  const trials = trialsFrom(env, files)
  const comparison = compared(
    trials.map(({ trial }) => trial),
    asked,
  )
  const code = isGood(comparison) ? EXIT.fine : EXIT.findings
  if (options.json === true) {
    const answer = { format: 'tinwright/comparison@1', ...comparison, cautions: MAKING_CAUTIONS }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  env.out(page(...comparisonBlocks(comparison, options.all === true, env.width), cautionBlock(env.width)))
  return code
}
