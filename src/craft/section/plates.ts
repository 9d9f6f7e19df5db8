import { toRadians } from '#basis/units.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import type { Profile } from '#stove/assembly/profile.ts'
import type { Face } from '#stove/model.ts'
import { mm } from './half.ts'
import { type RayHole, rayHoles } from './ray.ts'
import { type Span, without } from './span.ts'

/** A flat plate where the cut goes through it: end of a can, concentrator, lid ring, grate. */
export interface CutPlate {
  readonly part: string
  readonly face: Face
  /** The plane that the rest of the house means by the plate's height [mm]. */
  readonly height: number
  readonly thickness: number
  /** Which way the tin reaches from that plane. */
  readonly grows: 'up' | 'down'
  /** From the bore, or the axis, to the rim. */
  readonly reach: Span
  readonly pieces: readonly Span[]
  /** Holes of floor patterns, turned into the cut, by the opening's name. */
  readonly patterns: ReadonlyMap<string, readonly RayHole[]>
  readonly tongues: readonly Tongue[]
}

/** A bent vane, seen edge on behind its slit. */
export interface Tongue extends Span {
  readonly opening: string
  /** Height of its free edge over the plate, below nothing where it is bent down [mm]. */
  readonly rise: number
}

/** Every flat plate of placed parts but seams, in assembly order. */
export const cutPlates = (placed: readonly PlacedPart[], profile: Profile): readonly CutPlate[] =>
  profile.plates.flatMap(({ part: name, face, innerRadius, outerRadius, height }) => {
    const at = placed.find(({ name: other }) => other === name)
    if (face === null || at === undefined || at.part.form === 'band') return []
    const patterns = new Map<string, readonly RayHole[]>()
    const tongues: Tongue[] = []
    for (const [opening, shape] of at.part.openings) {
      if (shape.kind === 'row' || shape.face !== face) continue
      if (shape.kind === 'pattern') patterns.set(opening, rayHoles(shape))
      if (shape.kind !== 'vanes') continue
      const rise = mm(shape.width) * Math.sin(toRadians(shape.angle)) * (shape.bend === 'up' ? 1 : -1)
      tongues.push({ opening, from: mm(shape.innerRadius), to: mm(shape.outerRadius), rise })
    }
    const reach = { from: mm(innerRadius), to: mm(outerRadius) }
    return [
      {
        part: name,
        face,
        height: mm(height),
        thickness: mm(at.part.form === 'can' ? at.part.can.endWall : at.part.thickness),
        grows: face === 'top' ? 'down' : 'up',
        reach,
        pieces: without(reach, [...[...patterns.values()].flat(), ...tongues]),
        patterns,
        tongues,
      } satisfies CutPlate,
    ]
  })
