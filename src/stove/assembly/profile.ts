import { seamAt } from '#stove/can/ends.ts'
import type { CanEnd, CanPart, Face, Opening } from '#stove/model.ts'
import type { PlacedPart } from './place.ts'

/**
 * The stove's tin as a half section: every part is a figure of revolution, so upright walls and flat
 * plates in the (radius, height) plane say where gas can and cannot go. A can that tapers counts as a
 * cylinder of its mean diameter; the check `taper` says so. Radii and heights in metres.
 */
export interface Profile {
  readonly walls: readonly ProfileWall[]
  readonly plates: readonly ProfilePlate[]
}

export interface ProfileWall {
  readonly part: string
  readonly innerRadius: number
  readonly outerRadius: number
  readonly bottom: number
  readonly top: number
}

/** A flat ring of tin from `innerRadius` (0 for a whole disc) to `outerRadius`. */
export interface ProfilePlate {
  readonly part: string
  /** Which face of the part it is; null for a seam, which is never drilled. */
  readonly face: Face | null
  /** Name of the bore that makes its inner edge, or null. */
  readonly bore: string | null
  readonly innerRadius: number
  readonly outerRadius: number
  /** Of its lower face. */
  readonly height: number
  /** Where it is worth counting: a disc that others stand on; thin tin otherwise. */
  readonly thickness?: number
}

const hasSeam = (end: CanEnd): boolean => end.kind !== 'drawn' && end.kind !== 'cut'

/** The widest bore in a face, where there is one. */
const boreIn = (
  openings: ReadonlyMap<string, Opening>,
  face: Face,
): { key: string; radius: number } | null => {
  let widest: { key: string; radius: number } | null = null
  for (const [key, opening] of openings)
    if (opening.kind === 'bore' && opening.face === face && opening.diameter / 2 > (widest?.radius ?? 0))
      widest = { key, radius: opening.diameter / 2 }
  return widest
}

/** A plate with its bore cut out; nothing where the bore leaves no tin. */
const bored = (
  plate: Omit<ProfilePlate, 'bore'> & { readonly face: Face },
  openings: ReadonlyMap<string, Opening>,
): ProfilePlate[] => {
  const bore = boreIn(openings, plate.face)
  const cut = bore !== null && bore.radius > plate.innerRadius
  const innerRadius = cut ? bore.radius : plate.innerRadius
  return innerRadius < plate.outerRadius ? [{ ...plate, innerRadius, bore: cut ? bore.key : null }] : []
}

const endPlates = (
  part: string,
  { can, openings }: CanPart,
  base: number,
  face: 'bottom' | 'top',
): ProfilePlate[] => {
  const end = can[face]
  const edge = face === 'bottom' ? base : base + can.height.value
  const inward = face === 'bottom' ? 1 : -1
  const outerRadius = can.bodyDiameter.value / 2
  const seamRadius = seamAt(can, face).value / 2
  const seam: ProfilePlate[] =
    hasSeam(end) && seamRadius > outerRadius
      ? [{ part, face: null, bore: null, innerRadius: outerRadius, outerRadius: seamRadius, height: edge }]
      : []
  switch (end.kind) {
    case 'plain': {
      const height = edge + inward * end.countersink
      return [...seam, ...bored({ part, face, innerRadius: 0, outerRadius, height }, openings)]
    }
    case 'drawn':
      return [...seam, ...bored({ part, face, innerRadius: 0, outerRadius, height: edge }, openings)]
    case 'pull-off':
    case 'friction': {
      const innerRadius = end.opening.value / 2
      return [...seam, ...bored({ part, face, innerRadius, outerRadius, height: edge }, openings)]
    }
    case 'open':
    case 'cut':
      return seam
  }
}

/**
 * The half section of placed parts. Bands are left out: a damper lies on its can and only covers holes.
 * Seams are plates as well, so a can that hangs by its seam on a ring closes the gap round itself.
 */
export const profileOf = (placed: readonly PlacedPart[]): Profile => {
  const walls: ProfileWall[] = []
  const plates: ProfilePlate[] = []
  for (const { name, part, base, top } of placed) {
    if (part.form === 'can') {
      const outerRadius = part.can.bodyDiameter.value / 2
      walls.push({ part: name, innerRadius: outerRadius - part.can.bodyWall, outerRadius, bottom: base, top })
      plates.push(...endPlates(name, part, base, 'bottom'), ...endPlates(name, part, base, 'top'))
    } else if (part.form === 'disc') {
      const disc = {
        part: name,
        face: 'face' as const,
        innerRadius: 0,
        height: base,
        thickness: part.thickness,
      }
      plates.push(...bored({ ...disc, outerRadius: part.diameter.value / 2 }, part.openings))
    }
  }
  return { walls, plates }
}
