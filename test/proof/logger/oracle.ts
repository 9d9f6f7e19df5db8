import { cellsOf, numberOf } from './handReaders.ts'
import type { Line } from './spoiling.ts'
import type { Truth } from './truths.ts'

/** [K] or [kg] */
const IN_SI: Readonly<Record<string, (value: number) => number>> = {
  '°C': (value) => value + 273.15,
  '°F': (value) => (value + 459.67) / 1.8,
  K: (value) => value,
  g: (value) => value / 1000,
  kg: (value) => value,
  oz: (value) => (value * 0.45359237) / 16,
  lb: (value) => value * 0.45359237,
}

/** What came out of a reader, as far as the oracle judges it: mapping and log of `#proof/logger`. */
export interface Read {
  readonly mapping: {
    readonly time: { readonly form: string; readonly unit?: string }
    readonly channels: readonly { readonly column: number; readonly name: string; readonly unit: string }[]
  }
  readonly log: {
    readonly parts: readonly {
      readonly channels: readonly {
        readonly time: Float64Array
        readonly value: Float64Array
        readonly line: Uint32Array
      }[]
    }[]
    readonly findings: readonly { readonly kind: string; readonly line: number }[]
  }
}

const WORDS: Readonly<Record<string, RegExp>> = {
  '°C': /c/i,
  '°F': /f/i,
  K: /k/i,
  g: /g/i,
  kg: /k/i,
  oz: /o/i,
  lb: /lb|pound/i,
  s: /s/i,
  ms: /ms|milli/i,
  min: /min/i,
  h: /h|stunde/i,
}

const near = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b))

/**
 * A misread that nobody is told of, or null. Every value that came out must be what its line says, in the marks, the
 * time form and the unit of the truth; another unit only where the changed headings themselves name it. Every value
 * that the line says must have come out, unless a finding says of that line that it, or a field of it, was not read.
 */
export const silentMisread = (
  truth: Truth,
  lines: readonly Line[],
  /** As the file had them before it was spoilt. */
  headings: readonly string[],
  headChanged: boolean,
  { mapping, log }: Read,
): string | null => {
  const head = lines
    .filter((line) => line.head)
    .map(({ text }) => text)
    .join('\n')
  const named = (unit: string, own: string | undefined): boolean =>
    unit === own || (headChanged && WORDS[unit]?.test(head) === true)
  const timeUnit = mapping.time.unit ?? truth.timeUnit ?? 's'
  if (truth.timeUnit !== undefined && !named(timeUnit, truth.timeUnit)) return `time in ${timeUnit}`
  const midnights = log.findings.filter(({ kind }) => kind === 'past midnight').map(({ line }) => line)
  const unread = new Set(
    log.findings
      .filter(({ kind }) => ['line not read', 'field not read', 'other headings'].includes(kind))
      .map(({ line }) => line),
  )
  const says = lines.map(({ text }) => {
    const cells = cellsOf(truth, text)
    return cells.length === truth.width ? { cells, time: truth.time(cells, timeUnit) } : null
  })
  const out = new Set<string>()
  for (const part of log.parts)
    for (const [c, { time, value, line }] of part.channels.entries()) {
      const { column, name, unit } = mapping.channels[c] as Read['mapping']['channels'][number]
      const own = truth.channels.find((one) => one.column === column)
      if (own === undefined && !headChanged) return `column ${column + 1} is no channel`
      if (own !== undefined && !headChanged && own.name !== name) return `"${name}" is no heading`
      if (!named(unit, own?.unit)) return `column ${column + 1} in ${unit}`
      for (const [i, at] of line.entries()) {
        const said = says[at - 1]
        const raw = numberOf(said?.cells[column] ?? '', truth.decimal, truth.thousands)
        if (said?.time == null || raw === null) return `line ${at}: ${value[i]} is not what it says`
        if (!near(value[i] as number, IN_SI[unit]?.(raw) ?? Number.NaN))
          return `line ${at}: ${value[i]} for ${raw} ${unit}`
        const more = (time[i] as number) - said.time
        const days = truth.ofDay === true ? Math.round(more / 86_400) : 0
        if (!near(more, days * 86_400) || days < 0 || days > midnights.filter((one) => one <= at).length)
          return `line ${at}: at ${time[i]} s, says ${said.time} s`
        out.add(`${at} ${column}`)
      }
    }
  const lastHead = lines.findLastIndex((line) => line.head)
  const readLines = says.flatMap((said, i) =>
    said?.time == null || lines[i]?.head === true ? [] : [said.cells],
  )
  for (const { column } of truth.channels) {
    if (headChanged && !mapping.channels.some((one) => one.column === column)) continue
    const empty = readLines.filter((cells) => cells[column] === '').length
    for (const [i, { text, head: above }] of lines.entries()) {
      const said = says[i]
      if (above || text.trim() === '' || out.has(`${i + 1} ${column}`) || unread.has(i + 1)) continue
      // A heading that stands there once more, and what nobody can read among the words above the headings.
      if (headings.includes(text) || (i < lastHead && said?.time == null)) continue
      // A channel of a slower rate is empty in most lines.
      if (said?.time != null && said.cells[column] === '' && empty >= readLines.length / 2) continue
      return `line ${i + 1}: ${JSON.stringify(text)} is lost without a word (column ${column + 1})`
    }
  }
  return null
}
