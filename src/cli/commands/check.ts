import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import type { Finding } from '#stove/model.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'
import { shelfFrom, stoveFrom } from '../input.ts'
import { cautionBlock } from '../page/cautions.ts'
import { page, wrap } from '../page/text.ts'

export interface CheckOptions {
  readonly shelf?: string
  readonly json?: boolean
}

const MEANING = {
  stop: 'will not work, or is dangerous',
  warn: 'will disappoint, or is hard to make',
  note: 'worth knowing',
} as const

const where = ({ part, opening }: Finding): string => (opening === null ? part : `${part}, ${opening}`)

const findingBlock = (finding: Finding, width: number): string =>
  [
    wrap(`${where(finding)}: ${finding.sentence}`, width, '  ', '    '),
    wrap(finding.fix, width, '    → ', '      '),
  ].join('\n')

const groupBlock = (
  severity: Finding['severity'],
  findings: readonly Finding[],
  width: number,
): string | null => {
  const these = findings.filter((finding) => finding.severity === severity)
  if (these.length === 0) return null
  return [
    `${severity.toUpperCase()} (${MEANING[severity]})`,
    ...these.map((finding) => findingBlock(finding, width)),
  ].join('\n')
}

const tally = (findings: readonly Finding[]): string =>
  (['stop', 'warn', 'note'] as const)
    .map((severity) => {
      const count = findings.filter((finding) => finding.severity === severity).length
      return `${count} ${severity}${count === 1 ? '' : 's'}`
    })
    .join(', ')

export const check = (env: Environment, file: string, options: CheckOptions): ExitCode => {
  const stove = stoveFrom(env, file)
  const shelf = options.shelf === undefined ? null : shelfFrom(env, options.shelf)
  const findings = checkStove(stove, shelf)
  const code = findings.some(({ severity }) => severity !== 'note') ? EXIT.findings : EXIT.fine
  if (options.json) {
    env.out(`${JSON.stringify({ stove: stove.name, findings, cautions: MAKING_CAUTIONS }, null, 2)}\n`)
    return code
  }
  env.out(
    page(
      `${stove.name}: ${findings.length === 0 ? 'nothing found' : tally(findings)}`,
      groupBlock('stop', findings, env.width),
      groupBlock('warn', findings, env.width),
      groupBlock('note', findings, env.width),
      shelf === null
        ? wrap('No shelf was given (--shelf FILE), so bits were not looked for.', env.width)
        : null,
      cautionBlock(env.width),
    ),
  )
  return code
}
