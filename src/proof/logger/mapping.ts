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
  readonly time: TimeMapping
  readonly channels: readonly ChannelMapping[]
}

export type Delimiter = ',' | ';' | '\t' | '|' | 'blanks'

export type TimeMapping =
  | { readonly form: 'elapsed'; readonly column: number; readonly unit: TimeUnit }
  /** `0:12:04` since the start, or the time of day. */
  | { readonly form: 'hours:minutes:seconds' | 'minutes:seconds' | 'hours:minutes'; readonly column: number }
  | { readonly form: 'date and time'; readonly column: number; readonly order: DateOrder }
  | { readonly form: 'date, time'; readonly date: number; readonly column: number; readonly order: DateOrder }
  | { readonly form: 'seconds since 1970' | 'milliseconds since 1970'; readonly column: number }

export type TimeUnit = 's' | 'ms' | 'min' | 'h'
export type DateOrder = 'year month day' | 'day month year' | 'month day year'

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
  /** What it is about, for programs: `decimal`, `date`, `unit 3`, `column 4`, `time unit`, `time form`. */
  readonly key: string
  /** A sentence. */
  readonly ask: string
  /** As it stands in the file. */
  readonly seen: string
  readonly choices: readonly string[]
}

/** Answers by the key of their question. */
export type Answers = Readonly<Record<string, string>>
