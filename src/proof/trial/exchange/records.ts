import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { readTrialValue, type TrialDocument } from '../read.ts'
import type { TrialFile } from '../schema.ts'
import { formatCsv, readCsv } from './csv.ts'

/**
 * Trials as a table that a spreadsheet opens and that comes back whole. The first column says what a row is (`trial`,
 * `phase`, `event`, `mass`), the second which trial of the table it belongs to, from 1; the others are the keys of the
 * trial file, with dots between levels: `fuel.moisture.before`. Cells hold what the file holds, measures with their
 * units. An empty cell is a key that is not there.
 */
const RECORDS = { phase: 'phases', event: 'events', mass: 'masses' } as const
type RecordKind = keyof typeof RECORDS | 'trial'
const KINDS: readonly RecordKind[] = ['trial', 'phase', 'event', 'mass']

/** Keys that are no text in the file. */
const NUMBERS = new Set(['place', 'edit'])
const BOOLEANS = new Set(['pot.lid', 'withdrawn'])

type Flat = ReadonlyMap<string, string>
type Tree = { [key: string]: JsonValue | Tree }

const flattened = (value: JsonValue, path: string, into: Map<string, string>): void => {
  if (Array.isArray(value)) {
    for (const [i, one] of value.entries()) flattened(one, `${path}.${i + 1}`, into)
    return
  }
  if (typeof value === 'object' && value !== null) {
    for (const [key, inner] of Object.entries(value))
      flattened(inner, path === '' ? key : `${path}.${key}`, into)
    return
  }
  into.set(path, String(value))
}

const flatOf = (value: JsonValue): Flat => {
  const into = new Map<string, string>()
  flattened(value, '', into)
  return into
}

interface Row {
  readonly kind: RecordKind
  readonly trial: number
  readonly cells: Flat
}

const rowsOf = (file: TrialFile, trial: number): readonly Row[] => {
  const { phases, events, masses, ...rest } = file
  const lists = { phase: phases, event: events ?? [], mass: masses ?? [] }
  return [
    { kind: 'trial', trial, cells: flatOf(rest as unknown as JsonValue) },
    ...(Object.keys(RECORDS) as (keyof typeof RECORDS)[]).flatMap((kind) =>
      lists[kind].map((one): Row => ({ kind, trial, cells: flatOf(one as unknown as JsonValue) })),
    ),
  ]
}

/** Trial files as CSV. */
export const trialsCsv = (files: readonly TrialFile[]): string => {
  const rows = files.flatMap((file, i) => rowsOf(file, i + 1))
  const keys = KINDS.flatMap((kind) =>
    rows.filter((row) => row.kind === kind).flatMap(({ cells }) => [...cells.keys()]),
  )
  const columns = [...new Set(keys)]
  return formatCsv([
    ['record', 'trial', ...columns],
    ...rows.map(({ kind, trial, cells }) => [
      kind,
      String(trial),
      ...columns.map((column) => cells.get(column) ?? ''),
    ]),
  ])
}

const leaf = (key: string, text: string): JsonValue => {
  if (NUMBERS.has(key) && /^-?\d+$/.test(text)) return Number(text)
  // Spreadsheets shout.
  if (BOOLEANS.has(key) && /^(true|false)$/i.test(text)) return text.toLowerCase() === 'true'
  return text
}

/** `photos.1`, `photos.2` are a list; a gap in it closes. */
const listed = (tree: Tree): JsonValue => {
  const entries = Object.entries(tree).map(([key, value]): [string, JsonValue] => [
    key,
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? listed(value as Tree)
      : (value as JsonValue),
  ])
  return entries.length > 0 && entries.every(([key]) => /^\d+$/.test(key))
    ? entries.sort(([a], [b]) => Number(a) - Number(b)).map(([, value]) => value)
    : Object.fromEntries(entries)
}

/** The group of cells as it stood in the file; null where one key is at once a value and a group. */
const grown = (cells: Flat): JsonValue | null => {
  const root: Tree = {}
  for (const [path, text] of cells) {
    const keys = path.split('.')
    const last = keys.pop() as string
    let here = root
    for (const key of keys) {
      if (!Object.hasOwn(here, key)) here[key] = {}
      const next = here[key]
      if (typeof next !== 'object' || next === null || Array.isArray(next)) return null
      here = next as Tree
    }
    if (Object.hasOwn(here, last)) return null
    here[last] = leaf(path, text)
  }
  return listed(root)
}

const problem = (code: string, field: string, value: string, allowed: string, fix: string): Problem => ({
  code: `csv.${code}`,
  field,
  value,
  allowed,
  fix,
})

/** Keys that would reach behind an object. */
const RESERVED = new Set(['__proto__', 'constructor', 'prototype'])

const headProblem = (head: readonly string[]): Problem | null => {
  if (head[0] !== 'record' || head[1] !== 'trial')
    return problem(
      'head',
      'row 1',
      shown(head.slice(0, 2).join(', ')),
      'a first row that begins with record, trial',
      'Use a file that trials were exported to, and leave its first row and columns as they are.',
    )
  const twice = head.find((name, i) => head.indexOf(name) !== i)
  if (twice !== undefined)
    return problem('column-twice', 'row 1', shown(twice), 'every column once', 'Take one of the two out.')
  const reserved = head.find((name) => name.split('.').some((key) => key === '' || RESERVED.has(key)))
  return reserved === undefined
    ? null
    : problem('column', 'row 1', shown(reserved), 'keys of a trial file', 'Take the column out.')
}

const asTrial = (rows: readonly Row[], trial: number): Outcome<JsonValue> => {
  const heads = rows.filter(({ kind }) => kind === 'trial')
  if (heads.length !== 1)
    return bad(
      problem(
        'trial-rows',
        `trial ${trial}`,
        `${heads.length} rows of the kind "trial"`,
        'one row of the kind "trial" for each',
        'Give every trial of the table a number of its own.',
      ),
    )
  const groups = rows.map((row) => ({ row, grown: grown(row.cells) }))
  const mixed = groups.find((one) => one.grown === null)
  if (mixed !== undefined)
    return bad(
      problem(
        'group',
        `trial ${trial}`,
        'a key that is a value and a group at once',
        'either the one or the other',
        'Leave one of the two columns empty in this row.',
      ),
    )
  const [head] = groups.filter(({ row }) => row.kind === 'trial')
  const list = (kind: keyof typeof RECORDS): JsonValue =>
    groups.filter(({ row }) => row.kind === kind).map((one) => one.grown as JsonValue)
  const value: Record<string, JsonValue> = {
    ...(head?.grown as Record<string, JsonValue>),
    phases: list('phase'),
  }
  for (const kind of ['event', 'mass'] as const)
    if (rows.some((row) => row.kind === kind)) value[RECORDS[kind]] = list(kind)
  return good(value)
}

/** Reads trials from such a table. Problems name the trial of the table and the key. */
export const readTrialsCsv = (text: string): Outcome<readonly TrialDocument[]> => {
  const csv = readCsv(text)
  if (!csv.ok) return csv
  const [head = [], ...body] = csv.value
  const wrong = headProblem(head)
  if (wrong !== null) return bad(wrong)
  const problems: Problem[] = []
  const rows = body.flatMap((line, i): readonly Row[] => {
    const [kind = '', number = ''] = line
    const trial = /^\d{1,6}$/.test(number) ? Number(number) : 0
    if (!(KINDS as readonly string[]).includes(kind) || trial < 1 || line.length > head.length) {
      problems.push(
        problem(
          'row',
          `row ${i + 2}`,
          shown(line.slice(0, 2).join(', ')),
          `${KINDS.join(', ')}; the number of a trial; no more cells than columns`,
          'Look at the row in the file that was exported.',
        ),
      )
      return []
    }
    const cells = new Map(
      line.slice(2).flatMap((one, j) => (one === '' ? [] : [[head[j + 2] as string, one] as const])),
    )
    return [{ kind: kind as RecordKind, trial, cells }]
  })
  if (problems.length > 0) return bad(...problems)
  const documents: TrialDocument[] = []
  for (const trial of [...new Set(rows.map((row) => row.trial))].sort((a, b) => a - b)) {
    const value = asTrial(
      rows.filter((row) => row.trial === trial),
      trial,
    )
    const read = value.ok ? readTrialValue(value.value) : value
    if (read.ok) documents.push(read.value)
    else
      problems.push(
        ...read.problems.map((one) => ({
          ...one,
          field: value.ok ? `trial ${trial}: ${one.field}` : one.field,
        })),
      )
  }
  if (problems.length > 0) return bad(...problems)
  return documents.length > 0
    ? good(documents)
    : bad(problem('empty', 'rows', '', 'at least one trial', 'Export some trials first.'))
}
