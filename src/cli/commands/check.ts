import { cautionBlock } from '#compose/page/cautions.ts'
import { findingsOf, tally } from '#compose/page/findings.ts'
import { page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { burnFindings } from '#science/answers/burnFindings.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import { inOrder } from '#stove/check/finding.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { shelfFrom, stoveFrom } from '../input.ts'

export interface CheckOptions {
  readonly shelf?: string
  readonly json?: boolean
}

export const check = (env: Environment, file: string, options: CheckOptions): ExitCode => {
  const stove = stoveFrom(env, file)
  const shelf = options.shelf === undefined ? null : shelfFrom(env, options.shelf)
  const findings = inOrder([...checkStove(stove, shelf), ...burnFindings(stove)])
  const code = findings.some(({ severity }) => severity !== 'note') ? EXIT.findings : EXIT.fine
  if (options.json) {
    env.out(`${JSON.stringify({ stove: stove.name, findings, cautions: MAKING_CAUTIONS }, null, 2)}\n`)
    return code
  }
  env.out(
    page(
      wrap(`${stove.name}: ${findings.length === 0 ? 'nothing found' : tally(findings)}`, env.width),
      findingsOf('stop', findings, env.width),
      findingsOf('warn', findings, env.width),
      findingsOf('note', findings, env.width),
      shelf === null
        ? wrap('No shelf was given (--shelf FILE), so nobody looked whether you own the bits.', env.width)
        : null,
      cautionBlock(env.width),
    ),
  )
  return code
}
