import type { Can, CanEnd } from '#stove/model.ts'
import type { PlacedPart } from './place.ts'

/**
 * The stove's tin as a half section: every part is a figure of revolution, so upright walls and flat
 * plates in the (radius, height) plane say where gas can and cannot go. Radii and heights in metres.
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
  /** Which opening faces pierce it; null for a seam, which is never drilled. */
  readonly face: 'bottom' | 'top' | 'face' | null
  readonly innerRadius: number
  readonly outerRadius: number
  readonly height: number
}

const hasSeam = (end: CanEnd): boolean => end.kind !== 'drawn' && end.kind !== 'cut'

const endPlates = (name: string, can: Can, base: number, which: 'bottom' | 'top'): ProfilePlate[] => {
  const end = can[which]
  const edge = which === 'bottom' ? base : base + can.height.value
  const bodyRadius = can.bodyDiameter.value / 2
  const plates: ProfilePlate[] = []
  if (hasSeam(end)) {
    const seamRadius = can.seamDiameter.value / 2
    if (seamRadius > bodyRadius)
      plates.push({ part: name, face: null, innerRadius: bodyRadius, outerRadius: seamRadius, height: edge })
  }
  switch (end.kind) {
    case 'plain': {
      const height = which === 'bottom' ? edge + end.countersink : edge - end.countersink
      plates.push({ part: name, face: which, innerRadius: 0, outerRadius: bodyRadius, height })
      break
    }
    case 'drawn':
      plates.push({ part: name, face: which, innerRadius: 0, outerRadius: bodyRadius, height: edge })
      break
    case 'pull-off':
    case 'friction': {
      const innerRadius = end.opening.value / 2
      if (innerRadius < bodyRadius)
        plates.push({ part: name, face: which, innerRadius, outerRadius: bodyRadius, height: edge })
      break
    }
    case 'open':
    case 'cut':
      break
  }
  return plates
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
      plates.push(...endPlates(name, part.can, base, 'bottom'), ...endPlates(name, part.can, base, 'top'))
    } else if (part.form === 'disc') {
      plates.push({ part: name, face: 'face', innerRadius: 0, outerRadius: part.diameter.value / 2, height: base })
    }
  }
  return { walls, plates }
}
