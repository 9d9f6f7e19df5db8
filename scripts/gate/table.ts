import type { Tally } from './tally.ts'

/** One line of the gate's closing table. */
export interface Line {
  readonly name: string
  readonly ok: boolean
  readonly seconds: number
  readonly note: string
}

const seconds = (value: number): string => `${value.toFixed(1)} s`

/** The closing table: what was checked, how it went, how long it took. */
export const table = (lines: readonly Line[]): readonly string[] => {
  const wide = Math.max(...lines.map((line) => line.name.length))
  const row = ({ name, ok, seconds: took, note }: Line): string =>
    `  ${name.padEnd(wide)}  ${ok ? 'ok    ' : 'FAILED'}  ${seconds(took).padStart(7)}  ${note}`.trimEnd()
  return lines.map(row)
}

const WIDE = 110

/** A line broken between words; what follows stands deeper. */
const wrapped = (text: string): readonly string[] => {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1)
    if (last !== undefined && last.length + 1 + word.length <= WIDE)
      lines[lines.length - 1] = `${last} ${word}`
    else lines.push(lines.length === 0 ? `  ${word}` : `      ${word}`)
  }
  return lines
}

const section = (heading: string, entries: readonly string[]): readonly string[] =>
  entries.length === 0 ? [] : [heading, ...entries.flatMap(wrapped)]

/**
 * What was not run and why, what is known to fail, and what passed at the second try or not even then. Nothing, when
 * there is nothing to tell.
 */
export const toldLines = (
  counts: Pick<Tally, 'leftOut' | 'knownFailures' | 'secondTries'>,
): readonly string[] => [
  ...section(
    'Skipped:',
    counts.leftOut.map(({ name, reason }) => `${name}: ${reason}`),
  ),
  ...section('Known failures:', counts.knownFailures),
  ...section(
    'Needed a second try:',
    counts.secondTries.map(({ name, file, said }) => `${file} > ${name}${said === '' ? '' : `: ${said}`}`),
  ),
]
