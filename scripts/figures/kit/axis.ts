/** One axis of a panel, in the unit that its label names. */
export interface Axis {
  readonly label: string
  readonly from: number
  readonly to: number
  /** About so many ticks; 5 unless said. */
  readonly ticks?: number
  /** Text of a tick; the number itself unless said. */
  readonly text?: (value: number) => string
}

/** Multiples of 1, 2 or 5 times a power of ten that lie on the axis. */
export const ticksOf = ({ from, to, ticks = 5 }: Axis): readonly number[] => {
  const low = Math.min(from, to)
  const high = Math.max(from, to)
  const rough = (high - low) / ticks
  const power = 10 ** Math.floor(Math.log10(rough))
  const step = ([1, 2, 5, 10].find((m) => m * power >= rough * (1 - 1e-9)) ?? 10) * power
  const values: number[] = []
  for (let i = Math.ceil(low / step - 1e-9); i * step <= high + 1e-9 * step; i++)
    values.push(Number((i * step).toPrecision(10)))
  return values
}

/** Text of a tick: real minus. */
export const tickText = ({ text }: Axis, value: number): string =>
  text === undefined ? String(value).replace('-', '−') : text(value)

/** Least range of whole ticks that holds all values, zero in it unless `floating`. */
export const rangeOf = (
  values: readonly number[],
  { floating = false, ticks = 5 }: { readonly floating?: boolean; readonly ticks?: number } = {},
): { readonly from: number; readonly to: number } => {
  const found = values.filter(Number.isFinite)
  const low = Math.min(...found, ...(floating ? [] : [0]))
  const high = Math.max(...found, ...(floating ? [] : [0]))
  const [first = 0, second = 1] = ticksOf({ label: '', from: low, to: high, ticks })
  const step = second - first
  return {
    from: Number((Math.floor(low / step + 1e-9) * step).toPrecision(10)),
    to: Number((Math.ceil(high / step - 1e-9) * step).toPrecision(10)),
  }
}
