import type { LogFinding } from './findings.ts'
import type { Mapping } from './mapping.ts'
import { numberish, timeish } from './numbers.ts'
import { headingFields } from './shape.ts'
import { fieldsOf } from './table.ts'

const same = (fields: readonly string[], other: readonly string[]): boolean =>
  fields.length === other.length && fields.every((field, i) => field === other[i])

const isReadingLike = (fields: readonly string[], width: number): boolean => {
  const told = fields.filter((field) => field !== '')
  const readings = told.filter((field) => /\d/.test(field) && (numberish(field) || timeish(field)))
  return readings.length > 0 && (fields.length === width || readings.length >= told.length / 2)
}

const line = (kind: LogFinding['kind'], number: number, sentence: string): LogFinding => ({
  kind,
  line: number,
  sentence: `Line ${number}: ${sentence}`,
})

const fieldsText = (fields: readonly string[]): string =>
  fields
    .filter((field) => field !== '')
    .slice(0, 6)
    .join(' | ')

/** What stands above the first line of readings and should not: other headings than the mapping's, lines that were not read. */
export const headFindings = (lines: readonly string[], mapping: Mapping): readonly LogFinding[] => {
  const { skip, delimiter, headings, units } = mapping
  const head = lines.slice(0, skip).map((written) => headingFields(written, delimiter))
  const hasHeadings = headings.some((one) => one !== '')
  const hasUnits = units.some((one) => one !== '')
  const at = hasHeadings ? head.findLastIndex((fields) => same(fields, headings)) : -1
  const findings: LogFinding[] = []
  if (hasHeadings && at < 0)
    findings.push(
      line(
        'other headings',
        Math.max(skip, 1),
        `the headings are not those that the mapping was made for (${fieldsText(headings)}): other columns or units?`,
      ),
    )
  const unitsAt = hasUnits ? head.findLastIndex((fields) => same(fields, units)) : -1
  if (hasUnits && unitsAt < 0)
    findings.push(
      line(
        'other headings',
        Math.max(skip, 1),
        `the units are not those that the mapping was made for (${fieldsText(units)}).`,
      ),
    )
  for (let i = 0; i < head.length; i++) {
    const written = lines[i] ?? ''
    if (i === at || i === unitsAt || written.trim() === '') continue
    // Below the headings nothing but readings is looked for, nor above readings without any.
    const suspect = at >= 0 ? i > at : !hasHeadings
    if (suspect || isReadingLike(fieldsOf(written, delimiter), mapping.width))
      findings.push(line('line not read', i + 1, 'stands above the first line of readings; not read.'))
  }
  return findings
}
