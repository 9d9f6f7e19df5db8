import { toMillimetres } from '#basis/units.ts'
import type { Can } from '#stove/model.ts'
import { BEAD_DEPTH, BEAD_PITCH } from '../section/walls.ts'
import type { ProfileRing } from './profile.ts'

/** Points of a wave, from its foot to the next: enough to be seen as a bead. */
const WAVE = [0, 0.5, 1, 0.5] as const

interface WallPoint {
  readonly z: number
  readonly drawnIn: number
}

/** The stretch of plain body between what the ends hold: only there a bead can be. */
const plainBody = (height: number, ends: readonly ProfileRing[]): { from: number; to: number } => ({
  from: Math.max(0, ...ends.filter(({ to }) => to < height / 2).map(({ to }) => to)),
  to: Math.min(height, ...ends.filter(({ from }) => from > height / 2).map(({ from }) => from)),
})

const beadPoints = (from: number, to: number): readonly WallPoint[] => {
  const waves = Math.max(1, Math.round((to - from) / BEAD_PITCH))
  const points = Array.from({ length: waves * WAVE.length }, (_, step) => ({
    z: from + ((to - from) * step) / (waves * WAVE.length),
    drawnIn: BEAD_DEPTH * (WAVE[step % WAVE.length] as number),
  }))
  return [...points, { z: to, drawnIn: 0 }]
}

/** The body of a can from edge to edge, beads rolled inwards [mm]. Their depth is not in the file: see the section. */
export const wallWithBeads = (can: Can, ends: readonly ProfileRing[]): readonly ProfileRing[] => {
  const height = toMillimetres(can.height.value)
  const outer = toMillimetres(can.bodyDiameter.value) / 2
  const inner = outer - toMillimetres(can.bodyWall)
  const body = plainBody(height, ends)
  const points: WallPoint[] = [{ z: 0, drawnIn: 0 }]
  for (const bead of can.beads.toSorted((a, b) => a.from - b.from)) {
    const from = Math.max(body.from, toMillimetres(bead.from), points.at(-1)?.z ?? 0)
    const to = Math.min(body.to, toMillimetres(bead.to))
    if (to - from > 1) points.push(...beadPoints(from, to))
  }
  points.push({ z: height, drawnIn: 0 })
  return points.slice(1).flatMap((upper, index): readonly ProfileRing[] => {
    const lower = points[index] as WallPoint
    if (upper.z - lower.z < 1e-9) return []
    return [
      { what: 'wall', inner, outer, from: lower.z, to: upper.z, drawnIn: [lower.drawnIn, upper.drawnIn] },
    ]
  })
}
