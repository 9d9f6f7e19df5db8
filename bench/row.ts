/** What a measurement came to. */
export interface Row {
  /** What was measured, in the words of the trade. */
  readonly name: string
  readonly value: number
  readonly unit: string
  /** What the house asks for, or null where it asks for nothing: it is printed, and never fails a run. */
  readonly bar: Bar | null
}

export type Bar = { readonly atLeast: number } | { readonly atMost: number }

/** What every `bench/*.bench.ts` exports. */
export type Rows = () => Promise<readonly Row[]>

export const meets = (value: number, bar: Bar): boolean =>
  'atLeast' in bar ? value >= bar.atLeast : value <= bar.atMost

/** `>= 200000` or `<= 50`: for people and for programs. */
export const barText = (bar: Bar): string => ('atLeast' in bar ? `>= ${bar.atLeast}` : `<= ${bar.atMost}`)
