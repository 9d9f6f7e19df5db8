import { type EvaluatedSet, type EvaluatedSubject, evaluated } from './evaluate.ts'
import { notCompared } from './fire/stoves.ts'
import { misses } from './knownMisses.ts'
import {
  allowedText,
  type BandRow,
  COUNTED,
  hits,
  isBand,
  missOf,
  type OutsideRow,
  offText,
  type PointRow,
  percent,
  rangeOf,
  type Standing,
  shown,
} from './row.ts'
import { citedSources } from './sources.ts'

/** Tables longer than this are folded away. */
const LONG = 8

const cell = (text: string): string => text.replaceAll('|', '\\|')
const line = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n')

const verdict = (row: OutsideRow): string => (hits(row) ? 'hit' : '**miss**')
const withUnit = (text: string, unit: string): string => (unit === '' ? text : `${text} ${unit}`)

/** How much of what is allowed a point has used up [1]. */
const used = (row: PointRow): number =>
  missOf(row) / ('by' in row.allowed ? row.allowed.by : row.allowed.share)

const pointLine = (row: PointRow): readonly string[] => [
  row.check,
  withUnit(shown(row.published), row.unit),
  shown(row.ours),
  offText(row),
  allowedText(row),
  verdict(row),
]

/** Rows of one group as one line, the worst of them shown. */
const pointLines = (rows: readonly PointRow[]): readonly (readonly string[])[] => {
  const groups = new Map<string, PointRow[]>()
  for (const row of rows) {
    const key = row.group ?? row.check
    groups.set(key, [...(groups.get(key) ?? []), row])
  }
  return [...groups].map(([name, members]) => {
    const worst = members.reduce((a, b) => (used(b) > used(a) ? b : a))
    const own = worst.check.startsWith(`${name}: `) ? worst.check.slice(name.length + 2) : worst.check
    const label = members.length === 1 ? worst.check : `${name}: worst of ${members.length}, ${own}`
    return [label, ...pointLine(worst).slice(1)]
  })
}

const bandLine = (row: BandRow): readonly string[] => {
  const [low, high] = rangeOf(row)
  const published = low === high ? shown(low, 3) : `${shown(low, 3)} to ${shown(high, 3)}`
  const { ours } = row
  return [
    row.check,
    withUnit(published, row.unit),
    `${shown(ours.low, 3)} – **${shown(ours.median, 3)}** – ${shown(ours.high, 3)}`,
    offText(row),
    verdict(row),
    row.stove,
    citedSources(row.source),
  ]
}

const POINT_HEAD = ['check', 'published', 'ours', 'off', 'allowed', '']
const BAND_HEAD = [
  'check',
  'published',
  'ours: 5 % – median – 95 %',
  'nearer end',
  '',
  'worked out for',
  'source',
]

const rowsTable = (rows: readonly OutsideRow[]): string => {
  const bands = rows.filter(isBand)
  const points = rows.filter((row): row is PointRow => !isBand(row))
  return bands.length > 0 ? table(BAND_HEAD, bands.map(bandLine)) : table(POINT_HEAD, pointLines(points))
}

const tallyOf = (rows: readonly OutsideRow[]): string => {
  const hit = rows.filter(hits).length
  if (hit === rows.length) return rows.length === 1 ? 'hits' : `all ${rows.length} hit`
  return `${hit} of ${rows.length} hit`
}

const worstOf = (rows: readonly OutsideRow[]): string => {
  const points = rows.filter((row): row is PointRow => !isBand(row) && hits(row))
  if (points.length < 2) return ''
  const worst = points.reduce((a, b) => (used(b) > used(a) ? b : a))
  return `, the worst of the hits ${offText(worst)} off where ${allowedText(worst)} is allowed`
}

const setText = ({ title, source, standing, note, rows }: EvaluatedSet): string => {
  const body = rowsTable(rows)
  const lines = body.split('\n').length - 2
  const heading = `${title[0]?.toUpperCase()}${title.slice(1)}`
  const counts = COUNTED.includes(standing)
    ? `${standing[0]?.toUpperCase()}${standing.slice(1)}: ${tallyOf(rows)}${worstOf(rows)}.`
    : `${standing === 'given' ? 'Given to the model' : 'From memory'}: not counted.`
  const cited = source === 'see each row' ? '' : `\n\nSource: ${citedSources(source)}.`.replaceAll('..', '.')
  const shownRows =
    lines > LONG ? `<details><summary>${lines} lines</summary>\n\n${body}\n\n</details>` : body
  return `**${heading}.** ${counts} Tolerance: ${note}${cited}\n\n${shownRows}`
}

const countIn = (sets: readonly EvaluatedSet[], standing: Standing): readonly OutsideRow[] =>
  sets.filter((set) => set.standing === standing).flatMap(({ rows }) => rows)

const scoreText = (rows: readonly OutsideRow[]): string =>
  rows.length === 0 ? '' : `${rows.filter(hits).length} of ${rows.length}`

const scores = (subjects: readonly EvaluatedSubject[]): string => {
  const all = subjects.flatMap(({ sets }) => sets)
  const row = (name: string, sets: readonly EvaluatedSet[]): readonly string[] => [
    name,
    ...COUNTED.map((standing) => scoreText(countIn(sets, standing))),
  ]
  return table(
    ['subject', ...COUNTED],
    [
      ...subjects.map(({ name, sets }) =>
        row(`[${name}](#${name.toLowerCase().replaceAll(' ', '-')})`, sets),
      ),
      row('**all**', all),
    ],
  )
}

const missTable = (subjects: readonly EvaluatedSubject[]): string => {
  const byName = new Map(
    subjects.flatMap(({ name, sets }) =>
      sets.flatMap(({ rows, standing }) => rows.map((row) => [row.check, { row, name, standing }] as const)),
    ),
  )
  const found = misses.map(({ checks, why }) => {
    const rows = checks.map((check) => {
      const entry = byName.get(check)
      if (entry === undefined) throw new Error(`${check} is a known miss and no check`)
      return entry
    })
    const first = rows[0]
    const names = rows.map(({ row }) => `${row.check} (${offText(row)})`).join('; ')
    return { subject: first?.name ?? '', standing: first?.standing, names, why }
  })
  const order = subjects.map(({ name }) => name)
  return table(
    ['subject', 'what misses', 'why'],
    [...found]
      .sort((a, b) => order.indexOf(b.subject) - order.indexOf(a.subject))
      .map(({ subject, standing, names, why }) => [
        COUNTED.includes(standing as Standing) ? subject : `${subject} (${standing}, not counted)`,
        names,
        why,
      ]),
  )
}

const subjectText = ({ name, sets }: EvaluatedSubject): string =>
  [`## ${name}`, ...sets.filter(({ standing }) => COUNTED.includes(standing)).map(setText)].join('\n\n')

const apart = (
  subjects: readonly EvaluatedSubject[],
  standing: Standing,
  title: string,
  intro: string,
): string =>
  [
    `## ${title}`,
    intro,
    ...subjects.flatMap(({ sets }) => sets.filter((set) => set.standing === standing)).map(setText),
  ].join('\n\n')

const listed = (subjects: readonly EvaluatedSubject[]): { total: number; hit: number } => {
  const rows = subjects.flatMap(({ sets }) =>
    sets.filter(({ standing }) => COUNTED.includes(standing)).flatMap((set) => set.rows),
  )
  return { total: rows.length, hit: rows.filter(hits).length }
}

/** `docs/validation.md`: every outside check, as the tests see it. */
export const validationPage = (): string => {
  const subjects = evaluated()
  const { total, hit } = listed(subjects)
  return `${[
    '<!-- Made by scripts/validation.ts: do not edit. -->',
    '# Validation',
    `What this model says, laid beside what others measured, tabulated or worked out. Every line below is made by the code and is one of the tests: they read the same rows (\`scripts/validation\`), so a line cannot say hit while its test misses. **${hit} of ${total} counted checks hit; ${total - hit} miss** (${percent((total - hit) / total)}), and every miss is named here with its reason. Nothing was tuned to make a line hit, and no special case is in the code for any of them.`,
    'That most of the lines hit says less than it seems to. They come in three kinds:',
    [
      '* **Measurement**: nature was asked. Few, and the only ones that can say the model is right.',
      '* **Reference data**: tables that a field agrees on, such as the heat of a gas.',
      '* **Proof of code**: the same law worked out by other hands or another program. They show that the arithmetic is right, not that the law is.',
    ].join('\n'),
    scores(subjects),
    'Two more kinds are shown at the end and counted nowhere: numbers [from memory](#from-memory), which no source backs, and numbers the model was [given](#given-to-the-model), which come out because they went in. The [coefficient table](coefficients.md) lists those and how far each may be out; [how a stove works](physics.md) tells what is done with them.',
    '## Misses',
    'Whole stoves first. A band misses when what was published does not lie in it altogether. The share behind a name says how far the nearer end of the band is from it, or how far the number is off.',
    missTable(subjects),
    '## Not compared',
    table(
      ['published', 'where', 'why not'],
      notCompared.map((row) => row.map((text) => text)),
    ),
    ...subjects.map(subjectText),
    apart(
      subjects,
      'from memory',
      'From memory',
      'No source was read for these. They are printed to be looked at; no test fails for one of them.',
    ),
    apart(
      subjects,
      'given',
      'Given to the model',
      'These numbers set a coefficient of the model or its band. The tests see that they still come out.',
    ),
  ].join('\n\n')}\n`
}
