/** A straight axis: from values to pixels. */
export interface Scale {
  readonly from: number
  readonly to: number
  readonly at: (value: number) => number
}

export const scaleOf = (from: number, to: number, start: number, end: number): Scale => ({
  from,
  to,
  at: (value) => start + ((value - from) / (to - from)) * (end - start),
})

/** A round step, 1, 2 or 5 times a power of ten, that gives at most so many parts. */
export const roundStep = (span: number, most: number): number => {
  const rough = span / most
  const power = 10 ** Math.floor(Math.log10(rough))
  return (
    [1, 2, 5, 10].map((factor) => factor * power).find((step) => step >= rough * (1 - 1e-9)) ?? 10 * power
  )
}

/** Multiples of a step between two values. */
export const multiples = (step: number, from: number, to: number): readonly number[] => {
  const first = Math.ceil(from / step - 1e-9)
  const count = Math.floor(to / step + 1e-9) - first + 1
  return Array.from({ length: Math.max(0, count) }, (_, i) => Number(((first + i) * step).toPrecision(12)))
}

const MINUTE = 60
/** Steps of a clock [min]. */
const CLOCK = [1, 2, 5, 10, 15, 20, 30, 60, 120, 180] as const

/** Times at round minutes, no closer than `room` pixels. */
export const clockTicks = ({ from, to, at }: Scale, room: number): readonly number[] => {
  const perMinute = at(MINUTE) - at(0)
  const step = CLOCK.find((minutes) => minutes * perMinute >= room) ?? 360
  return multiples(step * MINUTE, from, to)
}

/** `0`, `20 min`, `1 h`, `1 h 20`. */
export const clockText = (seconds: number): string => {
  const minutes = Math.round(seconds / MINUTE)
  if (minutes === 0) return '0'
  if (minutes < 60) return `${minutes} min`
  return minutes % 60 === 0 ? `${minutes / 60} h` : `${Math.floor(minutes / 60)} h ${minutes % 60}`
}
