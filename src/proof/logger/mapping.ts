/** What a column of a logger's file is, as the maker said it once and keeps it. Plain data. */
export interface Mapping {
  readonly format: 'tinwright/logger@1'
  readonly delimiter: Delimiter
  readonly decimal: '.' | ','
  /** Marks between groups of three digits; empty for none. */
  readonly thousands: '' | ',' | '.' | ' ' | "'"
  /** Lines above the first line of readings. */
  readonly skip: number
  /** Fields of a line. */
  readonly width: number
  /** What stood over the columns, and the line of units under it where there was one: another file must say the same. */
  readonly headings: readonly string[]
  readonly units: readonly string[]
  readonly time: TimeMapping
  readonly channels: readonly ChannelMapping[]
}

export type Delimiter = ',' | ';' | 'tab' | '|' | 'blanks'

export type TimeMapping =
  | { readonly form: 'elapsed'; readonly column: number; readonly unit: TimeUnit }
  /** Since the start: `0:12:04`, and on past 24 hours. */
  | { readonly form: 'elapsed clock'; readonly column: number; readonly clock: ElapsedClock }
  /** Begins anew at midnight. */
  | { readonly form: 'time of day'; readonly column: number; readonly clock: DayClock }
  | {
      readonly form: 'date and time'
      readonly column: number
      readonly order: DateOrder
      readonly clock: DayClock
    }
  | {
      readonly form: 'date beside time'
      readonly date: number
      readonly column: number
      readonly order: DateOrder
      readonly clock: DayClock
    }
  | { readonly form: 'seconds since 1970' | 'milliseconds since 1970'; readonly column: number }

export type TimeUnit = 's' | 'ms' | 'min' | 'h'
export type DateOrder = 'year month day' | 'day month year' | 'month day year'
export type ElapsedClock = 'hours:minutes:seconds' | 'minutes:seconds'
export type DayClock =
  | 'hours:minutes:seconds'
  | 'hours:minutes'
  | 'hours:minutes:seconds am/pm'
  | 'hours:minutes am/pm'

export interface ChannelMapping {
  readonly column: number
  readonly name: string
  readonly quantity: 'temperature' | 'mass'
  readonly unit: TemperatureUnit | MassUnit
}

export type TemperatureUnit = '°C' | '°F' | 'K'
export type MassUnit = 'g' | 'kg' | 'oz' | 'lb'

/** Something that the file does not tell and that is not guessed. */
export interface Question {
  /** What it is about, for programs: `decimal`, `date`, `date column`, `unit 3`, `column 4`, `time column`, `time unit`, `time form`. */
  readonly key: string
  /** A sentence. */
  readonly ask: string
  /** As it stands in the file. */
  readonly seen: string
  readonly choices: readonly string[]
}

/** Answers by the key of their question. */
export type Answers = Readonly<Record<string, string>>
