import { type Alignment, aligned } from '#proof/logger/align.ts'
import type { TimeMapping } from '#proof/logger/mapping.ts'
import type { Channel } from '#proof/logger/readLog.ts'
import { usualStep } from '#proof/logger/step.ts'

/** A pause of more than so many usual steps is left open in the drawing. */
const GAP = 5
const KELVIN = 273.15

export type CurveUnit = '°C' | 'g' | 'g/min'

/** One channel as it is drawn: minutes after lighting; null where the pen is lifted. */
export interface Curve {
  readonly name: string
  readonly unit: CurveUnit
  readonly x: number[]
  readonly y: (number | null)[]
}

export const curveOf = ({ name, quantity, time, value }: Channel, alignment: Alignment): Curve => {
  const usual = usualStep(time)
  const x: number[] = []
  const y: (number | null)[] = []
  for (let i = 0; i < time.length; i++) {
    const at = time[i] as number
    const before = time[i - 1]
    if (before !== undefined && usual > 0 && at - before > GAP * usual) {
      x.push(aligned(alignment, (at + before) / 2) / 60)
      y.push(null)
    }
    x.push(aligned(alignment, at) / 60)
    y.push(quantity === 'temperature' ? (value[i] as number) - KELVIN : (value[i] as number) * 1000)
  }
  return { name, unit: quantity === 'temperature' ? '°C' : 'g', x, y }
}

/** One reading as it stands in the file: by the logger's clock [s], [K] or [kg]. */
export interface NearReading {
  readonly time: number
  readonly value: number
  readonly line: number
}

/** Reading of a channel nearest to a moment of the logger's clock; null farther than five steps away. */
export const nearestReading = ({ time, value, line }: Channel, at: number): NearReading | null => {
  let [low, high] = [0, time.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((time[middle] as number) < at) low = middle + 1
    else high = middle
  }
  const near = [low - 1, low].filter((i) => i >= 0 && i < time.length)
  const best = near.sort((a, b) => Math.abs((time[a] as number) - at) - Math.abs((time[b] as number) - at))[0]
  if (best === undefined) return null
  const found = { time: time[best] as number, value: value[best] as number, line: line[best] as number }
  const reach = GAP * Math.max(usualStep(time), 1)
  return Math.abs(found.time - at) > reach ? null : found
}

/** Time by the logger's clock of a moment after lighting [s]. */
export const loggerTime = ({ offset, rate }: Alignment, after: number): number => (after - offset) / rate

const DAY = 86_400
/** Farther apart than this two clocks do not tell of one burn [s]. */
const APART = 3 * 3600

/**
 * How long after lighting the logger's first reading was, by the two clocks alone [s]; null where the logger has no time of
 * day, or one that is hours off. `ofDay`: seconds of the day, as both show it; `since1970`: where the logger counts so.
 */
export const byClocks = (
  form: TimeMapping['form'],
  first: number,
  lit: { readonly ofDay: number; readonly since1970: number },
): number | null => {
  if (form === 'elapsed' || form === 'elapsed clock') return null
  const epoch = form === 'seconds since 1970' || form === 'milliseconds since 1970'
  const raw = epoch ? first - lit.since1970 : (first % DAY) - lit.ofDay
  const apart = epoch ? raw : raw - DAY * Math.round(raw / DAY)
  return Math.abs(apart) <= APART ? Math.round(apart) : null
}
