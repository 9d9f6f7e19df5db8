/** What of the time line is seen [min]. */
export interface ViewRange {
  readonly from: number
  readonly to: number
}

/** A second [min]: nearer than that there is nothing to see. */
const LEAST = 1 / 60

/** The range kept within all there is, its length within reason. */
const held = (from: number, length: number, all: ViewRange): ViewRange => {
  const span = Math.min(Math.max(length, LEAST), all.to - all.from)
  const start = Math.min(Math.max(from, all.from), all.to - span)
  return { from: start, to: start + span }
}

/** Nearer (by < 1) or farther (by > 1) about a moment that stays where it is. */
export const zoomed = ({ from, to }: ViewRange, about: number, by: number, all: ViewRange): ViewRange =>
  held(about - (about - from) * by, (to - from) * by, all)

/** Along by a share of what is seen; more than nothing goes later. */
export const panned = ({ from, to }: ViewRange, by: number, all: ViewRange): ViewRange =>
  held(from + by * (to - from), to - from, all)
