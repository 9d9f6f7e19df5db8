import type { LogFinding } from './findings.ts'
import type { Mapping } from './mapping.ts'
import { momentText } from './moment.ts'
import { fieldsOf } from './table.ts'

/** A line of readings whose time could be read. */
export interface Row {
  /** Of the file, from 1. */
  readonly line: number
  readonly fields: readonly string[]
  /** As the line says it [s]. */
  readonly time: number
}

/**
 * Lines of readings below the headings. Told and left out: lines with another number of fields, without a time that can
 * be read, and single ones whose time fits neither the line before nor the line after, while those two fit each other.
 */
export const rowsOf = (
  lines: readonly string[],
  mapping: Mapping,
  timeOf: (fields: readonly string[]) => number | null,
  note: (kind: LogFinding['kind'], line: number, sentence: string) => void,
): readonly Row[] => {
  const rows: Row[] = []
  for (let i = mapping.skip; i < lines.length; i++) {
    const written = lines[i] as string
    const line = i + 1
    if (written.trim() === '') continue
    const fields = fieldsOf(written, mapping.delimiter)
    if (fields.length !== mapping.width) {
      note(
        'line not read',
        line,
        `${fields.length} ${fields.length === 1 ? 'field' : 'fields'} where ${mapping.width} were expected; not read.`,
      )
      continue
    }
    const time = timeOf(fields)
    if (time === null || !Number.isFinite(time))
      note('line not read', line, 'its time cannot be read; not read.')
    else rows.push({ line, fields, time })
  }
  const kept: Row[] = []
  for (const [i, row] of rows.entries()) {
    const [before, after, next] = [kept.at(-1), rows[i + 1], rows[i + 2]]
    const stray =
      before !== undefined &&
      after !== undefined &&
      after.time > before.time &&
      // One that stands too high is told from one that is followed by one too low.
      (row.time < before.time || (row.time > after.time && next !== undefined && next.time < row.time))
    if (stray)
      note(
        'line not read',
        row.line,
        `its time, ${momentText(mapping.time, row.time)}, fits neither the line before nor the one after; not read.`,
      )
    else kept.push(row)
  }
  return kept
}
