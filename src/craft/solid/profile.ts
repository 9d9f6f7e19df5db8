import { toMillimetres } from '#basis/units.ts'
import { CAN_DEFAULTS } from '#stove/can/defaults.ts'
import { isSeamed, type WhichEnd } from '#stove/can/ends.ts'
import type { Can, DiscPart } from '#stove/model.ts'
import { wallWithBeads } from './beads.ts'

/**
 * The half section of a part before anything is cut in it: rings of tin that touch and do not overlap, radii and heights
 * above the part's bottom edge as it stands [mm].
 *
 * What is simplified: a double seam is one solid ring as wide and high as the seam, not five folded layers; the corner of
 * a drawn can is sharp; beads are even waves of a usual depth; the side seam's overlap is left out.
 */
export interface ProfileRing {
  readonly what: 'wall' | 'seam' | 'chuck wall' | 'panel' | 'ledge' | 'disc' | 'band'
  readonly inner: number
  readonly outer: number
  readonly from: number
  readonly to: number
  /** How far a bead draws the ring in, at its lower and at its upper edge; elsewhere none. */
  readonly drawnIn?: readonly [number, number]
}

/** Revolved all the way round: π ∫ (outer² − inner²) dz, the width being the same all along [mm³]. */
export const ringVolume = ({ inner, outer, from, to, drawnIn = [0, 0] }: ProfileRing): number =>
  Math.PI * (outer - inner) * (outer + inner - drawnIn[0] - drawnIn[1]) * (to - from)

/** What an end adds inside and outside of the wall; a stretch is given from its edge inwards. */
const endRings = (can: Can, which: WhichEnd): readonly ProfileRing[] => {
  const end = can[which]
  const height = toMillimetres(can.height.value)
  const body = toMillimetres(can.bodyDiameter.value) / 2
  const inside = body - toMillimetres(can.bodyWall)
  const tin = toMillimetres(can.endWall)
  const seam = toMillimetres(can.seamHeight)
  const ring = (what: ProfileRing['what'], inner: number, outer: number, near: number, far: number) => ({
    what,
    inner: Math.max(0, inner),
    outer,
    from: which === 'bottom' ? near : height - far,
    to: which === 'bottom' ? far : height - near,
  })
  const chuckWall = (depth: number) => ring('chuck wall', inside - tin, inside, 0, depth)
  const rings: ProfileRing[] = []
  if (isSeamed(end)) rings.push(ring('seam', body, toMillimetres(can.seamDiameter.value) / 2, 0, seam))
  switch (end.kind) {
    case 'plain': {
      const depth = toMillimetres(end.countersink)
      rings.push(chuckWall(depth), ring('panel', 0, inside, depth, depth + tin))
      break
    }
    case 'drawn':
      rings.push(ring('panel', 0, inside, 0, tin))
      break
    case 'pull-off':
    case 'friction': {
      // How deep the ledge lies nobody measured: as deep as a whole end would.
      const depth = Math.max(seam, toMillimetres(CAN_DEFAULTS.countersink.value))
      rings.push(chuckWall(depth))
      rings.push(ring('ledge', toMillimetres(end.opening.value) / 2, inside, depth, depth + tin))
      break
    }
    case 'open':
      // Where an end was cut out, the seam still holds its chuck wall.
      rings.push(chuckWall(seam))
      break
    case 'cut':
      break
  }
  return rings.filter(({ inner, outer, from, to }) => outer - inner > 1e-6 && to - from > 1e-6)
}

/** A can, all its ends and beads as they are left [mm]. */
export const canProfile = (can: Can): readonly ProfileRing[] => {
  const ends = [...endRings(can, 'bottom'), ...endRings(can, 'top')]
  return [...wallWithBeads(can, ends), ...ends]
}

/** A flat disc as rings of revolution, its bore left out [mm]. */
export const discProfile = (part: DiscPart): readonly ProfileRing[] => [
  {
    what: 'disc',
    inner: 0,
    outer: toMillimetres(part.diameter.value) / 2,
    from: 0,
    to: toMillimetres(part.thickness),
  },
]
