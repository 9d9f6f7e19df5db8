import type { Line } from './spoiling.ts'

/**
 * What the files of `examples/loggers` say, told by hand and read by readers of this test's own: nothing of the
 * house's reader is used here.
 */
export interface Truth {
  readonly name: string
  /** Lines above the readings. */
  readonly head: number
  readonly between: ';' | ',' | '|' | '\t' | ' '
  readonly width: number
  readonly decimal: '.' | ','
  readonly thousands?: string
  /** Seconds, from the fields of a line and the unit that elapsed time counts in. */
  readonly time: (cells: readonly string[], unit: string) => number | null
  readonly timeUnit?: string
  readonly ofDay?: boolean
  readonly channels: readonly { readonly column: number; readonly name: string; readonly unit: string }[]
  /** What the maker of the file would answer. */
  readonly answers: Readonly<Record<string, string>>
  /** A question that no single line may settle: whether this line leaves it open. */
  readonly leavesOpen?: (cells: readonly string[]) => boolean
}

/** Fields of a line: quotation marks hold what is between them together. */
export const cellsOf = ({ between }: Truth, line: string): readonly string[] => {
  if (between === ' ') return line.match(/\S+/g) ?? []
  const cells = ['']
  let open = false
  for (let i = 0; i < line.length; i++) {
    const char = line[i] as string
    const last = cells.length - 1
    if (open && char === '"' && line[i + 1] === '"') {
      cells[last] += '"'
      i++
    } else if (open && char === '"') open = false
    else if (!open && char === '"' && (cells[last] as string).trim() === '') {
      open = true
      cells[last] = ''
    } else if (!open && char === between) cells.push('')
    else cells[last] += char
  }
  return cells.map((cell) => cell.trim())
}

const isFigures = (text: string): boolean =>
  text !== '' && [...text].every((char) => char >= '0' && char <= '9')

/** A number in those marks, as a person reads it. */
export const numberOf = (written: string, decimal: string, thousands = ''): number | null => {
  let text = written.replace('\u2212', '-')
  const [body = '', power, ...more] = text.toLowerCase().split('e')
  if (more.length > 0 || (power !== undefined && !isFigures(power.replace(/^[+-]/, '')))) return null
  text = body
  const sign = text.startsWith('-') ? -1 : 1
  if (/^[+-]/.test(text)) text = text.slice(1)
  const [whole = '', part, ...rest] = text.split(decimal)
  if (rest.length > 0 || (part !== undefined && part !== '' && !isFigures(part))) return null
  const groups = thousands === '' ? [whole] : whole.split(thousands)
  if (groups.length > 1 && groups.some((group, i) => (i === 0 ? group.length > 3 : group.length !== 3)))
    return null
  const figures = groups.join('')
  if (
    !(isFigures(figures) && groups.every(isFigures)) &&
    !(whole === '' && part !== undefined && part !== '')
  )
    return null
  const value = sign * Number(`${figures || '0'}.${part || '0'}e${power ?? '0'}`)
  return Number.isFinite(value) ? value : null
}

const OF_SECONDS: Readonly<Record<string, number>> = { s: 1, ms: 1e-3, min: 60, h: 3600 }

const counted =
  (column: number, decimal = '.', thousands = '') =>
  (cells: readonly string[], unit: string): number | null => {
    const value = numberOf(cells[column] ?? '', decimal, thousands)
    return value === null ? null : value * (OF_SECONDS[unit] ?? Number.NaN)
  }

/** `9:12:04` with exactly so many parts, the first below `most`. */
const clock = (text: string, parts: 2 | 3, most: number): number | null => {
  const found = text.split(':')
  if (found.length !== parts) return null
  const [first = '', ...others] = found
  if (!isFigures(first) || Number(first) >= most) return null
  const last = others.at(-1)?.replace(',', '.') ?? ''
  if (!/^\d\d(?:\.\d+)?$/.test(last) || others.slice(0, -1).some((one) => !/^\d\d$/.test(one))) return null
  if (parts === 2 && last.includes('.')) return null
  const values = [...others.slice(0, -1), last].map(Number)
  if (values.some((value) => value >= 60)) return null
  const scale = parts === 3 ? [60, 1] : [1]
  return Number(first) * 60 * (scale[0] ?? 1) + values.reduce((sum, v, i) => sum + v * (scale[i] ?? 1), 0)
}

const halfDay = (text: string): number | null => {
  const [, time = '', half = ''] = /^(\S+?) ?([ap])\.?m\.?$/i.exec(text) ?? []
  const at = clock(time, 3, 13)
  if (at === null || at < 3600) return null
  return (at % 43_200) + (half.toLowerCase() === 'p' ? 43_200 : 0)
}

const day = (text: string, mark: string, places: readonly [number, number, number]): number | null => {
  const parts = text.split(mark)
  if (parts.length !== 3 || !parts.every(isFigures)) return null
  const [year = 0, month = 0, date = 0] = places.map((place) => Number(parts[place]))
  const length = (parts[places[0]] as string).length
  if (length !== 4 && length !== 2) return null
  const full = length === 2 ? 2000 + year : year
  const days = [
    31,
    full % 4 === 0 && (full % 100 !== 0 || full % 400 === 0) ? 29 : 28,
    31,
    30,
    31,
    30,
    31,
    31,
  ]
  const most = [...days, 30, 31, 30, 31][month - 1]
  return most !== undefined && date >= 1 && date <= most ? Date.UTC(full, month - 1, date) / 1000 : null
}

const both = (date: number | null, time: number | null): number | null =>
  date === null || time === null ? null : date + time

const american = (cells: readonly string[]): number | null => {
  const [, date = '', time = ''] = /^(\S+) +(.*)$/.exec(cells[0] ?? '') ?? []
  return both(day(date, '/', [2, 0, 1]), halfDay(time))
}

const mayBeEither = (cell = ''): boolean => /^[1-9]\d{0,2},\d{3}$/.test(cell)

export const truths: readonly Truth[] = [
  {
    name: '01-plain.csv',
    head: 1,
    between: ',',
    width: 3,
    decimal: '.',
    time: counted(0),
    timeUnit: 's',
    channels: [
      { column: 1, name: 'Flue (°C)', unit: '°C' },
      { column: 2, name: 'Pot (°C)', unit: '°C' },
    ],
    answers: {},
  },
  {
    name: '02-comma-decimals.csv',
    head: 1,
    between: ';',
    width: 3,
    decimal: ',',
    time: counted(0, ','),
    timeUnit: 's',
    channels: [
      { column: 1, name: 'Abgas [°C]', unit: '°C' },
      { column: 2, name: 'Wasser [°C]', unit: '°C' },
    ],
    answers: {},
  },
  {
    name: '03-units-row.txt',
    head: 2,
    between: '\t',
    width: 2,
    decimal: '.',
    time: counted(0),
    timeUnit: 'min',
    channels: [{ column: 1, name: 'weight', unit: 'g' }],
    answers: {},
  },
  {
    name: '04-preamble.csv',
    head: 5,
    between: ',',
    width: 5,
    decimal: '.',
    time: (cells) => both(day(cells[1] ?? '', '-', [0, 1, 2]), clock(cells[2] ?? '', 3, 24)),
    channels: [
      { column: 3, name: 'T1 °C', unit: '°C' },
      { column: 4, name: 'T2 °C', unit: '°C' },
    ],
    answers: {},
  },
  {
    name: '05-which-day.csv',
    head: 1,
    between: ',',
    width: 2,
    decimal: '.',
    time: american,
    channels: [{ column: 1, name: 'Flue temp (F)', unit: '°F' }],
    answers: { date: 'month day year' },
    leavesOpen: ([cell = '']) => {
      const [, first, second] = /^(\d{1,2})\/(\d{1,2})\/(?:\d{2}|\d{4}) /.exec(cell) ?? []
      return (
        Number(first) >= 1 &&
        Number(first) <= 12 &&
        Number(second) >= 1 &&
        Number(second) <= 12 &&
        first !== second
      )
    },
  },
  {
    name: '06-afternoon.csv',
    head: 1,
    between: ',',
    width: 3,
    decimal: '.',
    time: american,
    channels: [
      { column: 1, name: 'Flue temp (F)', unit: '°F' },
      { column: 2, name: 'Scale (oz)', unit: 'oz' },
    ],
    answers: {},
  },
  {
    name: '07-three-digits.csv',
    head: 1,
    between: ';',
    width: 2,
    decimal: ',',
    time: counted(0, ','),
    timeUnit: 's',
    channels: [{ column: 1, name: 'Waage [kg]', unit: 'kg' }],
    answers: { decimal: 'decimals' },
    leavesOpen: (cells) => mayBeEither(cells[1]),
  },
  {
    name: '08-apostrophes.csv',
    head: 1,
    between: ';',
    width: 2,
    decimal: '.',
    thousands: "'",
    time: counted(0, '.', "'"),
    timeUnit: 's',
    channels: [{ column: 1, name: 'mass [g]', unit: 'g' }],
    answers: {},
  },
  {
    name: '09-both-marks.csv',
    head: 1,
    between: ';',
    width: 2,
    decimal: ',',
    thousands: '.',
    time: counted(0, ',', '.'),
    timeUnit: 's',
    channels: [{ column: 1, name: 'Masse [g]', unit: 'g' }],
    answers: {},
  },
  {
    name: '10-open-thermocouple.csv',
    head: 1,
    between: ',',
    width: 3,
    decimal: '.',
    time: counted(0),
    timeUnit: 's',
    channels: [
      { column: 1, name: 'TC1 (C)', unit: '°C' },
      { column: 2, name: 'TC2 (C)', unit: '°C' },
    ],
    answers: {},
  },
  {
    name: '11-several-rates.csv',
    head: 1,
    between: ',',
    width: 3,
    decimal: '.',
    time: counted(0),
    timeUnit: 's',
    channels: [
      { column: 1, name: 'scale [g]', unit: 'g' },
      { column: 2, name: 'pot [°C]', unit: '°C' },
    ],
    answers: {},
  },
  {
    name: '12-past-midnight.csv',
    head: 1,
    between: ';',
    width: 2,
    decimal: '.',
    time: (cells) => clock(cells[0] ?? '', 3, 24),
    ofDay: true,
    channels: [{ column: 1, name: 'Pot (°C)', unit: '°C' }],
    answers: {},
  },
  ...['13-reset.csv', '14-gap.csv'].map(
    (name): Truth => ({
      name,
      head: 1,
      between: ',',
      width: 2,
      decimal: '.',
      time: counted(0),
      timeUnit: 's',
      channels: [{ column: 1, name: 'Pot (°C)', unit: '°C' }],
      answers: {},
    }),
  ),
  {
    name: '15-milliseconds.csv',
    head: 1,
    between: ',',
    width: 3,
    decimal: '.',
    time: (cells) => counted(0)(cells, 'ms'),
    channels: [
      { column: 1, name: 'scale_g', unit: 'g' },
      { column: 2, name: 'pot_C', unit: '°C' },
    ],
    answers: {},
  },
  {
    name: '16-blanks.txt',
    head: 2,
    between: ' ',
    width: 3,
    decimal: '.',
    time: counted(0),
    timeUnit: 's',
    channels: [
      { column: 1, name: 'flue[C]', unit: '°C' },
      { column: 2, name: 'pot[C]', unit: '°C' },
    ],
    answers: {},
  },
  {
    name: '17-no-header.csv',
    head: 0,
    between: ',',
    width: 3,
    decimal: '.',
    time: counted(0),
    timeUnit: 's',
    channels: [
      { column: 1, name: 'column 2', unit: '°C' },
      { column: 2, name: 'column 3', unit: 'g' },
    ],
    answers: {
      'time column': '1',
      'time unit': 's',
      'column 2': 'temperature',
      'unit 2': '°C',
      'column 3': 'mass',
      'unit 3': 'g',
    },
    leavesOpen: () => true,
  },
  {
    name: '18-cut-line.csv',
    head: 1,
    between: ',',
    width: 3,
    decimal: '.',
    time: counted(0),
    timeUnit: 's',
    channels: [
      { column: 1, name: 'Flue (°C)', unit: '°C' },
      { column: 2, name: 'Pot (°C)', unit: '°C' },
    ],
    answers: {},
  },
  {
    name: '19-quoted.csv',
    head: 2,
    between: ';',
    width: 3,
    decimal: ',',
    time: (cells) => {
      const [date = '', time = '', ...more] = (cells[0] ?? '').split(/ +/)
      return more.length > 0 ? null : both(day(date, '.', [2, 1, 0]), clock(time, 3, 24))
    },
    channels: [{ column: 1, name: 'Flue; over the pot (°C)', unit: '°C' }],
    answers: {},
  },
  {
    name: '20-short-clock.csv',
    head: 1,
    between: ',',
    width: 2,
    decimal: '.',
    time: (cells) => clock(cells[0] ?? '', 2, 1000),
    channels: [{ column: 1, name: 'Pot (°C)', unit: '°C' }],
    answers: { 'time form': 'minutes:seconds' },
    leavesOpen: ([cell = '']) => clock(cell, 2, 24) !== null,
  },
  {
    name: '22-no-units.csv',
    head: 1,
    between: ',',
    width: 3,
    decimal: '.',
    time: counted(0),
    timeUnit: 's',
    channels: [
      { column: 1, name: 'flue temp', unit: '°F' },
      { column: 2, name: 'scale', unit: 'g' },
    ],
    answers: { 'time unit': 's', 'unit 2': '°F', 'unit 3': 'g' },
  },
  {
    name: '23-past-a-day.csv',
    head: 1,
    between: ';',
    width: 3,
    decimal: ',',
    time: (cells) => clock(cells[0] ?? '', 3, 1000),
    channels: [
      { column: 1, name: 'Wasser (°C)', unit: '°C' },
      { column: 2, name: 'Waage (g)', unit: 'g' },
    ],
    answers: {},
  },
  {
    name: '24-begun-again.txt',
    head: 1,
    between: '|',
    width: 3,
    decimal: '.',
    time: counted(0),
    timeUnit: 's',
    channels: [
      { column: 1, name: 'Flue (°C)', unit: '°C' },
      { column: 2, name: 'Pot (°C)', unit: '°C' },
    ],
    answers: {},
  },
]

/** A whole burn, longer than the others: `examples/heron.logger.csv`. */
export const wholeBurn: Truth = {
  name: '../heron.logger.csv',
  head: 1,
  between: ';',
  width: 4,
  decimal: ',',
  time: (cells) => clock(cells[0] ?? '', 3, 24),
  ofDay: true,
  channels: [
    { column: 1, name: 'Flue (°C)', unit: '°C' },
    { column: 2, name: 'Pot (°C)', unit: '°C' },
    { column: 3, name: 'Scale (g)', unit: 'g' },
  ],
  answers: {},
}

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
