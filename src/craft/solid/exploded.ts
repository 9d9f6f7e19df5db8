import { highest, lowest, overlapAcross, raised, type Standing, widest } from './poses.ts'

/**
 * Air between parts that were taken apart, as a share of the wider one’s diameter [1]: seen from no more than 16° above, as
 * the picture is, none hides another.
 */
const GAP = 0.3

/** Whether the upper one has to come off before the lower one can be lifted out. */
const isInTheWay = (upper: Standing, lower: Standing): boolean =>
  upper.rings.some((over) =>
    lower.rings.some((under) => overlapAcross(over, under) && over.from >= under.to - 1e-6),
  )

/** What can be lifted out next: first what nothing lies over; of those the highest, then the widest. */
const takeApart = (parts: readonly Standing[]): readonly Standing[] => {
  const left = [...parts]
  const taken: Standing[] = []
  while (left.length > 0) {
    const free = left.filter((one) => left.every((other) => other === one || !isInTheWay(other, one)))
    // A band between two seams is opened to come off: what it goes round is lifted out of it.
    const rigid = left.filter(({ solid }) => solid.part.form !== 'band')
    const next = (free.length > 0 ? free : rigid.length > 0 ? rigid : left).reduce((best, one) => {
      const above = lowest(one.rings) - lowest(best.rings)
      if (Math.abs(above) > 1e-6) return above > 0 ? one : best
      return widest(one.rings) >= widest(best.rings) ? one : best
    })
    taken.push(next)
    left.splice(left.indexOf(next), 1)
  }
  return taken
}

/**
 * Parts moved apart along the axis, in the order in which they come off: what comes off first is highest. Each has its
 * own stretch of the axis, so that none hides or meets another.
 */
export const exploded = (parts: readonly Standing[]): readonly Standing[] => {
  let floor = 0
  let below = 0
  const moved = takeApart(parts)
    .toReversed()
    .map((one) => {
      const wide = 2 * widest(one.rings)
      const by = floor + (below === 0 ? 0 : GAP * Math.max(below, wide)) - lowest(one.rings)
      floor = highest(one.rings) + by
      below = wide
      return { ...one, pose: { ...one.pose, z: (one.pose.z ?? 0) + by }, rings: raised(one.rings, by) }
    })
  return parts.map(({ solid }) => moved.find((one) => one.solid === solid) as Standing)
}
