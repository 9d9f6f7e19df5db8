import { angleFromWind } from '#science/weather/cylinderPressure.ts'
import { OUTSIDE } from './network.ts'
import type { DraughtLink, DraughtPlan } from './plan.ts'

/** Holes whose angles to the wind differ by less than this feel the same wind [deg]. */
const SAME_ANGLE = 1e-3

/** A part of a row, by itself: `share` of the holes, same hole, same wall. */
const partOfRow = (link: DraughtLink, bearings: readonly number[]): DraughtLink => {
  const share = bearings.length / link.count
  return {
    ...link,
    area: link.area * share,
    count: bearings.length,
    rowShare: share,
    // Side by side: linear resistance falls with the number of holes, quadratic with its square.
    shape: { viscous: link.shape.viscous / share, inertial: link.shape.inertial / share ** 2 },
    exposure: { kind: 'wall', bearings },
  }
}

/**
 * A plan in which holes of one row that feel different winds are links of their own. The first group keeps the row's place in the
 * list and the others follow at its end, so that every index into it stays good. Mirror images about the wind
 * feel the same and stay together.
 */
export const splitForWind = (plan: DraughtPlan, windFrom: number): DraughtPlan => {
  const more: DraughtLink[] = []
  const links = plan.links.map((link) => {
    const { exposure } = link
    if (exposure?.kind !== 'wall' || (link.from !== OUTSIDE && link.to !== OUTSIDE)) return link
    const groups = new Map<number, number[]>()
    for (const bearing of exposure.bearings) {
      const key = Math.round(angleFromWind(bearing, windFrom) / SAME_ANGLE)
      groups.set(key, [...(groups.get(key) ?? []), bearing])
    }
    const [first, ...others] = [...groups.entries()].sort(([a], [b]) => a - b).map(([, bearings]) => bearings)
    if (first === undefined || others.length === 0) return link
    more.push(...others.map((bearings) => partOfRow(link, bearings)))
    return partOfRow(link, first)
  })
  return { ...plan, links: [...links, ...more] }
}
