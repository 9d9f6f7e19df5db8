/** What was not read as it stands, or not quite as it should be. Nothing is left out without one. */
export interface LogFinding {
  readonly kind:
    | 'other headings'
    | 'line not read'
    | 'field not read'
    | 'line may be cut'
    | 'gap'
    | 'clock went back'
    | 'past midnight'
    | 'times shared'
  /** Of the file, from 1. */
  readonly line: number
  readonly sentence: string
}

/** As many findings of a kind as anybody reads; the rest are counted in the last. */
const MOST_FINDINGS = 50

const rangesText = (lines: readonly number[]): string => {
  const ranges: [number, number][] = []
  for (const line of lines) {
    const last = ranges.at(-1)
    if (last !== undefined && line <= last[1] + 1) last[1] = line
    else ranges.push([line, line])
  }
  const said = ranges.slice(0, 20).map(([from, to]) => (from === to ? `${from}` : `${from} to ${to}`))
  return `${said.join(', ')}${ranges.length > 20 ? ` and so on to ${lines.at(-1)}` : ''}`
}

/** In order of lines, kind by kind; those of one kind beyond what anybody reads become one that counts and places them. */
export const bounded = (findings: readonly LogFinding[]): readonly LogFinding[] => {
  const sorted = [...findings].sort((a, b) => a.line - b.line)
  const kinds = [...new Set(sorted.map(({ kind }) => kind))]
  return kinds.flatMap((kind) => {
    const all = sorted.filter((one) => one.kind === kind)
    const rest = all.slice(MOST_FINDINGS)
    const [first] = rest
    return first === undefined
      ? all
      : [
          ...all.slice(0, MOST_FINDINGS),
          {
            kind,
            line: first.line,
            sentence: `${rest.length} more (${kind}): lines ${rangesText(rest.map(({ line }) => line))}.`,
          },
        ]
  })
}
