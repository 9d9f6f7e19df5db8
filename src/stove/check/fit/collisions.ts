import { long } from '#basis/text/bothUnits.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import { vaneRise } from '#stove/fit/partMass.ts'
import { canSolid, discSolid, type Solid, type SolidSize } from '#stove/fit/solid.ts'
import type { Finding } from '#stove/model.ts'
import type { Check } from '../context.ts'
import { stop, warn } from '../finding.ts'
import { called, level } from '../phrase.ts'
import { FIT } from '../rules.ts'

interface StandingRing {
  readonly inner: number
  readonly outer: number
  readonly bottom: number
  readonly top: number
}

const solidOf = ({ part }: PlacedPart, size: SolidSize): Solid | null =>
  part.form === 'can' ? canSolid(part, size) : part.form === 'disc' ? discSolid(part, size) : null

const standing = (placed: PlacedPart, size: SolidSize): readonly StandingRing[] => {
  const solid = solidOf(placed, size)
  if (solid === null) return []
  // A solid begins at its lowest point; vanes bent down hang below the face whose height is known.
  const hanging = [...placed.part.openings.values()]
    .filter((opening) => opening.kind === 'vanes' && opening.bend === 'down' && opening.face === 'face')
    .map(vaneRise)
  const base = placed.base - Math.max(0, ...hanging)
  return solid.rings.map((ring) => ({ ...ring, bottom: ring.bottom + base, top: ring.top + base }))
}

/** How far two rings of tin are inside each other: the way the nearer move apart is, up or sideways [m]. */
const bite = (
  one: StandingRing,
  other: StandingRing,
): { readonly radial: number; readonly axial: number } => ({
  radial: Math.min(one.outer - other.inner, other.outer - one.inner),
  axial: Math.min(one.top - other.bottom, other.top - one.bottom),
})

const worstBite = (one: PlacedPart, other: PlacedPart, size: SolidSize) => {
  let worst: { readonly radial: number; readonly axial: number; readonly height: number } | null = null
  for (const ring of standing(one, size))
    for (const against of standing(other, size)) {
      const { radial, axial } = bite(ring, against)
      if (radial <= FIT.touching.value || axial <= FIT.lifted.value) continue
      if (worst === null || radial > worst.radial)
        worst = { radial, axial, height: Math.max(ring.bottom, against.bottom) }
    }
  return worst
}

const isPair = (one: PlacedPart, other: PlacedPart): boolean =>
  one.placement.host === other.name || other.placement.host === one.name

/** Parts drawn through each other. How a part goes with its own host is judged by its fit. */
export const collisions: Check = ({ placed }) => {
  const findings: Finding[] = []
  for (const [index, one] of placed.entries()) {
    for (const other of placed.slice(index + 1)) {
      if (isPair(one, other)) continue
      const sure = worstBite(one, other, 'nominal')
      const where = { part: other.name }
      if (sure !== null)
        findings.push(
          stop(
            'fit.collides',
            where,
            `${called(other.name)} and ${called(one.name)} are in each other’s way, ${level(sure.height)} the ground: they overlap by ${long(sure.radial)}.`,
            'Make one of them narrower or shorter, or place it higher.',
          ),
        )
      else if (worstBite(one, other, 'largest tin') !== null)
        findings.push(
          warn(
            'fit.may-collide',
            where,
            `${called(other.name)} and ${called(one.name)} clear each other as measured, but not at the worst end of their tolerances.`,
            'Measure both closer before you drill.',
          ),
        )
    }
  }
  return findings
}
