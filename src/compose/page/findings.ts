import type { Finding } from '#stove/model.ts'
import { wrap } from './text.ts'

const MEANING = {
  stop: 'will not work, or is dangerous',
  warn: 'will disappoint, or is hard to make',
  note: 'worth knowing',
} as const

const TITLE = { stop: 'STOP', warn: 'WARNING', note: 'NOTE' } as const
const MANY = { stop: ['stop', 'stops'], warn: ['warning', 'warnings'], note: ['note', 'notes'] } as const

const where = ({ part, opening }: Finding): string => (opening === null ? part : `${part}, ${opening}`)

const one = (finding: Finding, width: number): string =>
  [
    wrap(`${where(finding)}: ${finding.sentence}`, width, '  ', '    '),
    wrap(finding.fix, width, '    → ', '      '),
  ].join('\n')

/** Of one severity, or null where there are none. */
export const findingsOf = (
  severity: Finding['severity'],
  findings: readonly Finding[],
  width: number,
): string | null => {
  const these = findings.filter((finding) => finding.severity === severity)
  if (these.length === 0) return null
  return [`${TITLE[severity]} (${MEANING[severity]})`, ...these.map((finding) => one(finding, width))].join(
    '\n',
  )
}

/** `1 stop, 2 warnings, 0 notes`. */
export const tally = (findings: readonly Finding[]): string =>
  (['stop', 'warn', 'note'] as const)
    .map((severity) => {
      const count = findings.filter((finding) => finding.severity === severity).length
      return `${count} ${MANY[severity][count === 1 ? 0 : 1]}`
    })
    .join(', ')

/** On the other pages of a stove that cannot be made as it is drawn; null for one that can. */
export const stopsBlock = (stops: readonly Finding[], meaning: string, width: number): string | null =>
  stops.length === 0 ? null : [wrap(meaning, width), findingsOf('stop', stops, width)].join('\n')
