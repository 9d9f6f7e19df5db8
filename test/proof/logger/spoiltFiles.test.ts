import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { randomStream } from '#basis/random.ts'
import type { Mapping } from '#proof/logger/mapping.ts'
import { proposeMapping } from '#proof/logger/propose.ts'
import { readLog } from '#proof/logger/readLog.ts'
import { cellsOf } from './handReaders.ts'
import { exampleText, folder, kept, mappingFor } from './kept.ts'
import { silentMisread } from './oracle.ts'
import { type Line, spoilt } from './spoiling.ts'
import { type Truth, truths, wholeBurn } from './truths.ts'

const linesIn = ({ name, head }: Truth): readonly Line[] => {
  const lines = exampleText(name)
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
  return (lines.at(-1) === '' ? lines.slice(0, -1) : lines).map((text, i) => ({ text, head: i < head }))
}

const fileOf = (lines: readonly Line[]): string => lines.map(({ text }) => `${text}\n`).join('')

const headOf = (lines: readonly Line[]): readonly string[] =>
  lines.filter(({ head }) => head).map(({ text }) => text)

interface Known {
  readonly truth: Truth
  readonly lines: readonly Line[]
  readonly head: readonly string[]
  /** As it was kept when the file was whole. */
  readonly kept: Mapping
}

const knownOf = (truth: Truth): Known => {
  const lines = linesIn(truth)
  return { truth, lines, head: headOf(lines), kept: kept(truth) }
}

/**
 * What goes wrong without a word with these lines: proposed with the maker's answers, proposed without any, and read
 * by the mapping that was kept. A refusal or an open question says a word.
 */
const wrongWith = (
  { truth, head, kept: own }: Known,
  lines: readonly Line[],
): { readonly wrong: readonly string[]; readonly read: boolean } => {
  const text = fileOf(lines)
  const headChanged =
    headOf(lines).join('\n') !== head.join('\n') || lines.some((line, i) => line.head !== i < truth.head)
  const judged = (how: string, mapping: Mapping | null, changed: boolean): readonly string[] => {
    if (mapping === null) return []
    const found = silentMisread(truth, lines, head, changed, { mapping, log: readLog(text, mapping) })
    return found === null ? [] : [`${truth.name}, ${how}: ${found}\n${text}`]
  }
  const plain = proposeMapping(text, {})
  // The maker answers for a comma; asked about a point, they would look at the file.
  const asksOther =
    plain.ok &&
    plain.value.kind === 'questions' &&
    plain.value.questions.some(({ key, seen }) => key === 'decimal' && !seen.includes(truth.decimal))
  const answered = asksOther ? null : mappingFor(text, truth.answers)
  const open = lines.some((line) => !line.head && truth.leavesOpen?.(cellsOf(truth, line.text)) === true)
  const unasked = open && plain.ok && plain.value.kind === 'mapping'
  return {
    read: answered !== null,
    wrong: [
      ...judged('proposed', answered, headChanged),
      ...judged('kept', own, false),
      ...(unasked ? [`${truth.name}: nothing is asked any more\n${text}`] : []),
    ],
  }
}

it('the truth is told of every file but the one that is refused', () => {
  expect(truths.map(({ name }) => name)).toEqual(
    readdirSync(folder)
      .filter((name) => name !== '21-two-commas.csv')
      .sort(),
  )
})

describe.each(truths.map((truth) => [truth.name, truth] as const))('%s', (_, truth) => {
  const known = knownOf(truth)
  const { lines, head, kept: own } = known
  const text = fileOf(lines)

  it('is read as the oracle reads it', () => {
    expect(wrongWith(known, lines)).toEqual({ wrong: [], read: true })
    expect(readLog(text, own).read).toBeGreaterThan(2)
  })

  it('a wrong reading does not pass the oracle', () => {
    const judge = (mapping: Mapping, silent = false): string | null => {
      const log = readLog(text, mapping)
      const read = { mapping, log: silent ? { ...log, findings: [] } : log }
      return silentMisread(truth, lines, head, false, read)
    }
    const [first, ...others] = own.channels
    const unit = first?.quantity === 'mass' ? (first.unit === 'g' ? 'kg' : 'g') : 'K'
    expect(judge({ ...own, channels: [{ ...first, unit }, ...others] as Mapping['channels'] })).not.toBeNull()
    // A line that goes missing is told, and must be.
    expect(judge({ ...own, skip: own.skip + 1 })).toBeNull()
    expect(judge({ ...own, skip: own.skip + 1 }, true)).not.toBeNull()
  })
})

it('20 000 spoilt files: no crash, no silent misread', () => {
  const stream = randomStream(20_000)
  const known = truths.map(knownOf)
  const wrong: string[] = []
  let read = 0
  for (let n = 0; n < 20_000; n++) {
    const one = stream.pick(known)
    const found = wrongWith(one, spoilt(one.lines, stream))
    wrong.push(...found.wrong)
    if (found.read) read++
  }
  expect(wrong.slice(0, 5).join('\n'), `${wrong.length} in all`).toBe('')
  // Refusing everything would pass as well.
  expect(read).toBeGreaterThan(14_000)
})

it('100 times a whole burn with ten things wrong: no silent misread', () => {
  const stream = randomStream(10)
  const known = knownOf(wholeBurn)
  const wrong = Array.from(
    { length: 100 },
    () => wrongWith(known, spoilt(known.lines, stream, 10)).wrong,
  ).flat()
  expect(wrong.slice(0, 2).join('\n'), `${wrong.length} in all`).toBe('')
})

// Refused whole, and however it is spoilt nothing of it passes for readings without a question.
it('2 000 times a comma between fields and in numbers: never read', () => {
  const stream = randomStream(21)
  const lines = exampleText('21-two-commas.csv')
    .trimEnd()
    .split('\n')
    .map((one, i) => ({ text: one, head: i < 1 }))
  for (let n = 0; n < 2000; n++) {
    const bad = fileOf(spoilt(lines, stream))
    expect(mappingFor(bad, {}), bad).toBeNull()
  }
})
