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

/** What was not run and why, and what is known to fail. Nothing, when there is nothing to tell. */
export const leftOutLines = (counts: Pick<Tally, 'leftOut' | 'knownFailures'>): readonly string[] => [
  ...(counts.leftOut.length > 0 ? ['Skipped:'] : []),
  ...counts.leftOut.map(({ name, reason }) => `  ${name}: ${reason}`),
  ...(counts.knownFailures.length > 0 ? ['Known failures:'] : []),
  ...counts.knownFailures.map((name) => `  ${name}`),
]
