import { straightLine } from '#proof/statistics/trend.ts'

/** One moment on both clocks. */
export interface Match {
  readonly what: string
  /** [s] */
  readonly logger: number
  /** After lighting [s]. */
  readonly log: number
}

/** From the logger's clock to time after lighting: log = offset + rate · logger. */
export interface Alignment {
  readonly offset: number
  /** 1 where both clocks run alike [1]. */
  readonly rate: number
  /** What is left at each match [s]. */
  readonly residuals: readonly number[]
  readonly cautions: readonly string[]
}

/** More than this per hour is no quartz clock [1]; a judgement: a good one keeps 2 s a day. */
const DRIFTS = 0.002
/** A hand on a button is no better than this [s]; a judgement. */
export const BUTTON = 5

/**
 * Brings a logger's clock onto the log of events. One match shifts it; two or more, far enough apart, also tell how
 * fast it runs. Null for none, or for matches that would turn time round.
 */
export const align = (matches: readonly Match[]): Alignment | null => {
  const [first] = matches
  if (first === undefined) return null
  const logger = matches.map((one) => one.logger)
  const log = matches.map((one) => one.log)
  const span = Math.max(...logger) - Math.min(...logger)
  // Over a short span a slow button would pass for a fast clock.
  const ratesToo = matches.length >= 2 && span * DRIFTS > BUTTON / 10
  const { offset, rate } = ratesToo ? lineOf(logger, log) : shiftOf(logger, log)
  if (!(rate > 0)) return null
  const residuals = log.map((at, i) => at - (offset + rate * (logger[i] as number)))
  const cautions: string[] = []
  if (Math.abs(rate - 1) > DRIFTS)
    cautions.push(
      `The logger’s clock runs ${Math.abs((rate - 1) * 3600).toFixed(0)} s an hour ${rate > 1 ? 'slow' : 'fast'} against the phone’s.`,
    )
  for (const [i, residual] of residuals.entries())
    if (Math.abs(residual) > BUTTON)
      cautions.push(
        `"${matches[i]?.what}" lies ${Math.abs(residual).toFixed(0)} s ${residual > 0 ? 'later' : 'earlier'} in the log than by the logger: was the right event matched?`,
      )
  if (matches.length === 1)
    cautions.push('One moment was matched: nothing says whether both clocks run alike.')
  return { offset, rate, residuals, cautions }
}

const shiftOf = (logger: readonly number[], log: readonly number[]) => ({
  offset: log.reduce((sum, at, i) => sum + at - (logger[i] as number), 0) / log.length,
  rate: 1,
})

const lineOf = (logger: readonly number[], log: readonly number[]) => {
  if (logger.length === 2) {
    const [a = 0, b = 0, c = 0, d = 0] = [...logger, ...log]
    const rate = (d - c) / (b - a)
    return { offset: c - rate * a, rate }
  }
  const line = straightLine(logger, log)
  return line === null ? shiftOf(logger, log) : { offset: line.intercept.value, rate: line.slope.value }
}

/** How far the rate may be off either way, each moment as good as a hand on a button [1]; null where no rate was found. */
export const rateWithin = (matches: readonly Match[]): number | null => {
  const times = matches.map(({ logger }) => logger)
  const span = Math.max(...times) - Math.min(...times)
  return matches.length >= 2 && span > 0 ? (Math.SQRT2 * BUTTON) / span : null
}

/** Time after lighting of a moment of the logger's clock [s]. */
export const aligned = ({ offset, rate }: Alignment, logger: number): number => offset + rate * logger
