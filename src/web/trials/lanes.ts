/** A word on a line of time. */
export interface Mark {
  readonly key: string
  /** Where it belongs [px]. */
  readonly x: number
  readonly text: string
}

export interface Placed extends Mark {
  /** Line of writing, 0 nearest to the time line. */
  readonly lane: number
  /** Left end of the writing [px]. */
  readonly from: number
}

/** Middling width of a letter at 13 px; a word that is wider than told touches nothing, for the gap between words. */
const LETTER = 6.4
const GAP = 10

/** Puts words into as few lines as do without overlap, each beginning at its mark where that keeps it on the sheet. */
export const lanes = (marks: readonly Mark[], width: number): readonly Placed[] => {
  const ends: number[] = []
  return [...marks]
    .sort((a, b) => a.x - b.x)
    .map((mark) => {
      const length = mark.text.length * LETTER
      const from = Math.max(0, Math.min(mark.x, width - length))
      const free = ends.findIndex((end) => end + GAP <= from)
      const lane = free < 0 ? ends.length : free
      ends[lane] = from + length
      return { ...mark, lane, from }
    })
}

/** Steps between figures on a line of time that are read at a glance [s]. */
const STEPS = [10, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200] as const

/** Figures on a line of time, about `most` of them [s]. */
export const timeTicks = (span: number, most = 8): readonly number[] => {
  const step = STEPS.find((one) => span / one <= most) ?? 14_400
  return Array.from({ length: Math.floor(span / step) + 1 }, (_, i) => i * step)
}
