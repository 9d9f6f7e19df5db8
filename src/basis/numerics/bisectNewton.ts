/** A function at one point, with its slope there. A slope of NaN or 0 is allowed: the step is then a halving. */
export interface Sample {
  readonly value: number
  readonly slope: number
}

export interface RootSearch {
  /** One end of the bracket. */
  readonly from: number
  /** The other end; the function must have the other sign there. */
  readonly to: number
  /** The root is known this well when the search ends; 0 for as well as the numbers allow. */
  readonly tolerance: number
  /** Evaluations after which the search gives up; 100 unless said. */
  readonly mostEvaluations?: number
}

export type Root =
  | {
      readonly ok: true
      readonly x: number
      /** What the function is at `x`. */
      readonly residual: number
      readonly evaluations: number
    }
  | {
      readonly ok: false
      /** `bracket`: both ends have the same sign. `not finite`: the function failed. `slow`: too many evaluations. */
      readonly reason: 'bracket' | 'not finite' | 'slow'
      /** The state reached. */
      readonly x: number
      readonly residual: number
      readonly evaluations: number
    }

interface End {
  readonly x: number
  readonly sample: Sample
}

/**
 * A root of a smooth function between two points of opposite sign: Newton's step while it stays inside the bracket
 * and is under half the step before last, a halving of the bracket otherwise. The bracket always holds a change of
 * sign, so the search cannot run away or cycle; a true root lies within `tolerance` of the answer.
 *
 * The safeguards are those of Brent's method [bib:brent1973, ch. 4], Newton's step taking the place of
 * interpolation.
 */
export const findRoot = (f: (x: number) => Sample, search: RootSearch): Root => {
  const { from, to, tolerance, mostEvaluations = 100 } = search
  let evaluations = 0
  const at = (x: number): End => {
    evaluations += 1
    return { x, sample: f(x) }
  }
  const found = ({ x, sample }: End): Root => ({ ok: true, x, residual: sample.value, evaluations })
  const failed = (reason: 'bracket' | 'not finite' | 'slow', { x, sample }: End): Root => ({
    ok: false,
    reason,
    x,
    residual: sample.value,
    evaluations,
  })
  const broken = ({ x, sample }: End): boolean => !Number.isFinite(x) || !Number.isFinite(sample.value)

  const start = at(from)
  if (broken(start)) return failed('not finite', start)
  const end = at(to)
  if (broken(end)) return failed('not finite', end)
  if (start.sample.value === 0) return found(start)
  if (end.sample.value === 0) return found(end)
  if (start.sample.value < 0 === end.sample.value < 0) return failed('bracket', start)

  // The function is below zero at one and above at the other; either may be the larger x.
  let [below, above] = start.sample.value < 0 ? [start, end] : [end, start]
  let here = nearerToZero(below, above)
  let lastStep = Math.abs(to - from)
  let stepBefore = lastStep
  let nudged = false

  while (evaluations < mostEvaluations) {
    const other = here === below ? above : below
    const width = Math.abs(other.x - here.x)
    const resolution = Math.max(tolerance, 2 * Number.EPSILON * Math.max(Math.abs(here.x), Math.abs(other.x)))
    if (width <= resolution) return found(nearerToZero(below, above))

    const towards = Math.sign(other.x - here.x)
    const newton = -here.sample.value / here.sample.slope
    const size = Math.abs(newton)
    const least = 0.5 * resolution
    const quick: boolean = size < 0.5 * stepBefore && !(nudged && size < least)
    const trusted: boolean = newton * towards > 0 && size < width && quick
    // At least half the tolerance, so that the last steps carry the bracket across the root; a nudge that failed
    // to shows that the slope lied.
    const step = trusted ? Math.max(size, least) : 0.5 * width
    nudged = trusted && size < least
    const next = at(here.x + towards * step)
    if (broken(next)) return failed('not finite', next)
    if (next.sample.value === 0) return found(next)
    if (next.sample.value < 0) below = next
    else above = next
    here = next
    stepBefore = lastStep
    lastStep = step
  }
  return failed('slow', nearerToZero(below, above))
}

const nearerToZero = (a: End, b: End): End => (Math.abs(a.sample.value) <= Math.abs(b.sample.value) ? a : b)
