import { type Amount, amountText } from '#proof/compare/amount.ts'

/** Twice the standard uncertainty holds the true value in 95 of 100 cases, near enough. */
export const COVERAGE = 2

/** What ± means, wherever it stands beside a metric. */
export const DOUBT_SENTENCE =
  '± is twice the standard uncertainty: the true value lies within it in 95 of 100 cases.'

/** Two figures of the doubt, which is as many as it deserves. */
const FINER = 2

/** A result and its standard uncertainty, in one unit. */
interface Doubted extends Amount {
  readonly value: number
  readonly u: number
}

/** A result as finely as its doubt deserves, and the doubt: `21.4 %` and `± 1.6 %`; null where there is none. */
export const valueAndDoubt = (of: Doubted): readonly [string, string | null] => {
  const doubt = COVERAGE * of.u
  return doubt > 0
    ? [amountText(of, of.value, doubt / FINER), `± ${amountText(of, doubt, doubt / FINER)}`]
    : [amountText(of, of.value, 0), null]
}
