import { shopListOf } from '#compose/artefact/shop.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { findingsOf, stopsBlock } from '#compose/page/findings.ts'
import { shopBlocks } from '#compose/page/shop.ts'
import { page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { shelfFrom, stoveFrom } from '../input.ts'

export interface ShopOptions {
  readonly shelf?: string
  readonly json?: boolean
}

export const shop = (env: Environment, file: string, options: ShopOptions): ExitCode => {
  const stove = stoveFrom(env, file)
  const shelf = options.shelf === undefined ? null : shelfFrom(env, options.shelf)
  const findings = checkStove(stove, null)
  const stops = findings.filter(({ severity }) => severity === 'stop')
  const made = shopListOf(stove, shelf)
  const lacks = (made.missing ?? []).length > 0
  const code = stops.length === 0 && !lacks ? EXIT.fine : EXIT.findings
  if (options.json === true) {
    const missing =
      made.missing?.map(({ instead, ...bit }) => ({
        ...bit,
        // The swapped stove itself is for solving, not for reading.
        instead: instead.map(({ swap: { stove: _, ...swap }, outlook }) => ({ ...swap, outlook })),
      })) ?? null
    const answer = {
      ...made,
      missing,
      stopFindings: stops,
      warnFindings: findings.filter(({ severity }) => severity === 'warn'),
      cautions: MAKING_CAUTIONS,
    }
    env.out(`${JSON.stringify(answer, null, 2)}\n`)
    return code
  }
  env.out(
    page(
      wrap(`${stove.name}: shop list`, env.width),
      stopsBlock(stops, 'Do not cut this stove as it is drawn:', env.width),
      findingsOf('warn', findings, env.width),
      ...shopBlocks(made, env.width),
      cautionBlock(env.width),
    ),
  )
  return code
}
