/** A stretch along one axis; lengths of the section are millimetres. */
export interface Span {
  readonly from: number
  readonly to: number
}

/** Shorter than this is no tin [mm]. */
const SLIVER = 1e-6

/** What is left of a stretch when others are cut out of it, in order. */
export const without = (whole: Span, cuts: readonly Span[]): readonly Span[] => {
  const left: Span[] = []
  let from = whole.from
  for (const cut of [...cuts].sort((a, b) => a.from - b.from)) {
    if (cut.from - from > SLIVER) left.push({ from, to: Math.min(cut.from, whole.to) })
    from = Math.max(from, cut.to)
    if (from >= whole.to) break
  }
  if (whole.to - from > SLIVER) left.push({ from, to: whole.to })
  return left
}

export const spanMiddle = ({ from, to }: Span): number => (from + to) / 2

export const spanLength = ({ from, to }: Span): number => to - from

/** A stretch of a given length about its middle. */
export const spanAbout = (middle: number, length: number): Span => ({
  from: middle - length / 2,
  to: middle + length / 2,
})
