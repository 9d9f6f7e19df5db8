import type { RandomStream } from '#basis/random.ts'

/** A line of a logger's file, and what the test knows of it. */
export interface Line {
  readonly text: string
  /** Above the readings. */
  readonly head: boolean
}

const STUFF = [
  ...'0123456789',
  ...'.,;:|\t -+"eE\'°CF/',
  'NaN',
  '1e999',
  '\u0000',
  '\uFFFD',
  '\u2212',
  '--',
  'OL',
  ',,',
  ';;',
  '\n',
  ' AM',
  'kg',
  '000',
]

const replaced = (text: string, at: number, length: number, by: string): string =>
  text.slice(0, at) + by + text.slice(at + length)

const swappedWithin = (text: string, at: number): string =>
  replaced(text, at, 2, `${text[at + 1] ?? ''}${text[at] ?? ''}`)

type Spoil = (lines: readonly Line[], at: number, stream: RandomStream) => readonly Line[]

const onText =
  (change: (text: string, stream: RandomStream) => string): Spoil =>
  (lines, at, stream) =>
    lines.map((line, i) => (i === at ? { ...line, text: change(line.text, stream) } : line))

const spoils: readonly Spoil[] = [
  onText((text, stream) => replaced(text, stream.integer(text.length + 1), 0, stream.pick(STUFF))),
  onText((text, stream) =>
    replaced(text, stream.integer(text.length + 1), 1 + stream.integer(2), stream.pick(STUFF)),
  ),
  onText((text, stream) => replaced(text, stream.integer(text.length + 1), 1 + stream.integer(4), '')),
  // One figure for another: the likeliest damage, and the hardest to see.
  onText((text, stream) => {
    const places = [...text.matchAll(/\d/g)].map(({ index }) => index)
    return places.length === 0 ? text : replaced(text, stream.pick(places), 1, String(stream.integer(10)))
  }),
  onText((text, stream) => {
    const marks = [...text.matchAll(/[.,;:/|-]/g)].map(({ index }) => index)
    return marks.length === 0 ? text : replaced(text, stream.pick(marks), 1, stream.pick([...'.,;:/-']))
  }),
  onText((text, stream) => swappedWithin(text, stream.integer(text.length + 1))),
  onText((text, stream) => text.slice(0, stream.integer(text.length + 1))),
  onText((text, stream) => {
    const at = stream.integer(text.length + 1)
    return text + text.slice(at, at + 1 + stream.integer(6))
  }),
  // Lines that come twice, go missing, change places, run together or end the file.
  (lines, at) => [...lines.slice(0, at + 1), ...lines.slice(at)],
  (lines, at) => lines.filter((_, i) => i !== at),
  (lines, at, stream) => {
    const other = stream.integer(lines.length)
    return lines.map((line, i) => (lines[i === at ? other : i === other ? at : i] ?? line) as Line)
  },
  (lines, at) =>
    lines.flatMap((line, i) =>
      i === at ? [{ ...line, text: line.text + (lines[at + 1]?.text ?? '') }] : i === at + 1 ? [] : [line],
    ),
  (lines, at, stream) =>
    lines
      .slice(0, at + 1)
      .map((line, i) =>
        i === at ? { ...line, text: line.text.slice(0, stream.integer(line.text.length + 1)) } : line,
      ),
]

/** The lines with one thing wrong, or two, or as many as asked for. A break within a line makes two of it. */
export const spoilt = (
  lines: readonly Line[],
  stream: RandomStream,
  faults = stream.uniform() < 0.7 ? 1 : 2,
): readonly Line[] => {
  let some = lines
  for (let n = 0; n < faults && some.length > 0; n++) {
    some = stream.pick(spoils)(some, stream.integer(some.length), stream)
    some = some.flatMap((line) => line.text.split(/\r\n|\n|\r/).map((text) => ({ ...line, text })))
  }
  return some
}
