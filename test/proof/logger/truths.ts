import { american, both, clock, counted, day } from './handReaders.ts'

/** What a file of `examples/loggers` says, told by hand. */
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

/** Channels by heading and unit, one column after the other. */
const from = (column: number, ...named: readonly (readonly [string, string])[]): Truth['channels'] =>
  named.map(([name, unit], i) => ({ column: column + i, name, unit }))

const plain = { head: 1, between: ',', decimal: '.', answers: {} } as const
const inSeconds = { ...plain, time: counted(0), timeUnit: 's' } as const
const withCommas = { ...plain, between: ';', decimal: ',' } as const
const clockOfDay = (cells: readonly string[]): number | null => clock(cells[0] ?? '', 3, 24)

const mayBeEither = (cell = ''): boolean => /^[1-9]\d{0,2},\d{3}$/.test(cell)
const isMonth = (figures: string | undefined): boolean => Number(figures) >= 1 && Number(figures) <= 12

export const truths: readonly Truth[] = [
  {
    ...inSeconds,
    name: '01-plain.csv',
    width: 3,
    channels: from(1, ['Flue (°C)', '°C'], ['Pot (°C)', '°C']),
  },
  {
    ...withCommas,
    name: '02-comma-decimals.csv',
    width: 3,
    time: counted(0, ','),
    timeUnit: 's',
    channels: from(1, ['Abgas [°C]', '°C'], ['Wasser [°C]', '°C']),
  },
  {
    ...inSeconds,
    name: '03-units-row.txt',
    head: 2,
    between: '\t',
    width: 2,
    timeUnit: 'min',
    channels: from(1, ['weight', 'g']),
  },
  {
    ...plain,
    name: '04-preamble.csv',
    head: 5,
    width: 5,
    time: (cells) => both(day(cells[1] ?? '', '-', [0, 1, 2]), clock(cells[2] ?? '', 3, 24)),
    channels: from(3, ['T1 °C', '°C'], ['T2 °C', '°C']),
  },
  {
    ...plain,
    name: '05-which-day.csv',
    width: 2,
    time: american,
    channels: from(1, ['Flue temp (F)', '°F']),
    answers: { date: 'month day year' },
    leavesOpen: ([cell = '']) => {
      const [, first, second] = /^(\d{1,2})\/(\d{1,2})\/(?:\d{2}|\d{4}) /.exec(cell) ?? []
      return isMonth(first) && isMonth(second) && first !== second
    },
  },
  {
    ...plain,
    name: '06-afternoon.csv',
    width: 3,
    time: american,
    channels: from(1, ['Flue temp (F)', '°F'], ['Scale (oz)', 'oz']),
  },
  {
    ...withCommas,
    name: '07-three-digits.csv',
    width: 2,
    time: counted(0, ','),
    timeUnit: 's',
    channels: from(1, ['Waage [kg]', 'kg']),
    answers: { decimal: 'decimals' },
    leavesOpen: (cells) => mayBeEither(cells[1]),
  },
  {
    ...plain,
    name: '08-apostrophes.csv',
    between: ';',
    width: 2,
    thousands: "'",
    time: counted(0, '.', "'"),
    timeUnit: 's',
    channels: from(1, ['mass [g]', 'g']),
  },
  {
    ...withCommas,
    name: '09-both-marks.csv',
    width: 2,
    thousands: '.',
    time: counted(0, ',', '.'),
    timeUnit: 's',
    channels: from(1, ['Masse [g]', 'g']),
  },
  {
    ...inSeconds,
    name: '10-open-thermocouple.csv',
    width: 3,
    channels: from(1, ['TC1 (C)', '°C'], ['TC2 (C)', '°C']),
  },
  {
    ...inSeconds,
    name: '11-several-rates.csv',
    width: 3,
    channels: from(1, ['scale [g]', 'g'], ['pot [°C]', '°C']),
  },
  {
    ...plain,
    name: '12-past-midnight.csv',
    between: ';',
    width: 2,
    time: clockOfDay,
    ofDay: true,
    channels: from(1, ['Pot (°C)', '°C']),
  },
  { ...inSeconds, name: '13-reset.csv', width: 2, channels: from(1, ['Pot (°C)', '°C']) },
  { ...inSeconds, name: '14-gap.csv', width: 2, channels: from(1, ['Pot (°C)', '°C']) },
  {
    ...plain,
    name: '15-milliseconds.csv',
    width: 3,
    // A count since 1970 that its length gives away: no unit is asked for.
    time: (cells) => counted(0)(cells, 'ms'),
    channels: from(1, ['scale_g', 'g'], ['pot_C', '°C']),
  },
  {
    ...inSeconds,
    name: '16-blanks.txt',
    head: 2,
    between: ' ',
    width: 3,
    channels: from(1, ['flue[C]', '°C'], ['pot[C]', '°C']),
  },
  {
    ...inSeconds,
    name: '17-no-header.csv',
    head: 0,
    width: 3,
    channels: from(1, ['column 2', '°C'], ['column 3', 'g']),
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
    ...inSeconds,
    name: '18-cut-line.csv',
    width: 3,
    channels: from(1, ['Flue (°C)', '°C'], ['Pot (°C)', '°C']),
  },
  {
    ...withCommas,
    name: '19-quoted.csv',
    head: 2,
    width: 3,
    time: (cells) => {
      const [date = '', time = '', ...more] = (cells[0] ?? '').split(/ +/)
      return more.length > 0 ? null : both(day(date, '.', [2, 1, 0]), clock(time, 3, 24))
    },
    channels: from(1, ['Flue; over the pot (°C)', '°C']),
  },
  {
    ...plain,
    name: '20-short-clock.csv',
    width: 2,
    time: (cells) => clock(cells[0] ?? '', 2, 1000),
    channels: from(1, ['Pot (°C)', '°C']),
    answers: { 'time form': 'minutes:seconds' },
    leavesOpen: ([cell = '']) => clock(cell, 2, 24) !== null,
  },
  {
    ...inSeconds,
    name: '22-no-units.csv',
    width: 3,
    channels: from(1, ['flue temp', '°F'], ['scale', 'g']),
    answers: { 'time unit': 's', 'unit 2': '°F', 'unit 3': 'g' },
  },
  {
    ...withCommas,
    name: '23-past-a-day.csv',
    width: 3,
    time: (cells) => clock(cells[0] ?? '', 3, 1000),
    channels: from(1, ['Wasser (°C)', '°C'], ['Waage (g)', 'g']),
  },
  {
    ...inSeconds,
    name: '24-begun-again.txt',
    between: '|',
    width: 3,
    channels: from(1, ['Flue (°C)', '°C'], ['Pot (°C)', '°C']),
  },
]

/** A whole burn, longer than the others: `examples/heron.logger.csv`. */
export const wholeBurn: Truth = {
  ...withCommas,
  name: '../heron.logger.csv',
  width: 4,
  time: clockOfDay,
  ofDay: true,
  channels: from(1, ['Flue (°C)', '°C'], ['Pot (°C)', '°C'], ['Scale (g)', 'g']),
}
