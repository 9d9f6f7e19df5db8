import { toRadians } from '#basis/units.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import type { WallHole } from '#stove/model.ts'
import { placeRow } from '#stove/opening/row.ts'
import { mm } from './half.ts'
import type { Span } from './span.ts'
import type { CutWall } from './walls.ts'

/**
 * What is seen on the far half of the walls, behind the cut. The eye stands at the stove's front, bearing 0, so
 * bearing 90 (clockwise from above) is on its left. x from the axis to the right, z up [mm].
 */
export interface FarPoint {
  readonly x: number
  readonly z: number
}

export interface FarHole {
  readonly part: string
  readonly opening: string
  readonly outline: readonly FarPoint[]
}

/** Holes nearer than this to the cut are seen too slantwise to draw beside the ones turned into it [1]. */
const TOO_SLANT = 0.35

/** Points round a circle or half circle. */
const arc = (
  radius: number,
  from: number,
  to: number,
  steps: number,
): readonly (readonly [number, number])[] =>
  Array.from({ length: steps + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / steps
    return [radius * Math.cos(angle), radius * Math.sin(angle)]
  })

/** Outline of an opening on the flat wall, about its middle [mm]. */
export const flatOutline = (hole: WallHole): readonly (readonly [along: number, up: number])[] => {
  const box = (width: number, height: number): readonly (readonly [number, number])[] => [
    [-width / 2, -height / 2],
    [width / 2, -height / 2],
    [width / 2, height / 2],
    [-width / 2, height / 2],
  ]
  switch (hole.shape) {
    case 'round':
      return arc(mm(hole.diameter) / 2, 0, 2 * Math.PI, 24)
    case 'slit':
      return hole.along === 'axis'
        ? box(mm(hole.width), mm(hole.length))
        : box(mm(hole.length), mm(hole.width))
    case 'window': {
      const [width, height] = [mm(hole.width), mm(hole.height)]
      if (hole.foot === 'square') return box(width, height)
      const shoulder = width / 2 - height / 2
      return [
        ...arc(width / 2, Math.PI, 2 * Math.PI, 12).map(([x, y]) => [x, y + shoulder] as const),
        [width / 2, height / 2],
        [-width / 2, height / 2],
      ]
    }
  }
}

/** Outermost wall inside a wall at a height: it hides what is behind it; 0 for none [mm]. */
export const hiddenWithin = (walls: readonly CutWall[], wall: CutWall, z: number): number =>
  Math.max(
    0,
    ...walls
      .filter(
        ({ form, radius, reach }) =>
          form === 'can' && radius < wall.radius && reach.from <= z && reach.to >= z,
      )
      .map(({ radius, thickness }) => radius + thickness / 2),
  )

/**
 * Holes of rows round the far half, where no inner can and no fuel stands before them. `fuel` is the part that holds
 * the fuel and the stretch of height it fills.
 */
export const farHoles = (
  placed: readonly PlacedPart[],
  walls: readonly CutWall[],
  fuel: { readonly part: string; readonly reach: Span } | null,
): readonly FarHole[] =>
  placed.flatMap(({ name, part, base, turned }) => {
    const wall = walls.find((one) => one.part === name)
    if (part.form !== 'can' || wall === undefined) return []
    return [...part.openings].flatMap(([opening, row]) => {
      if (row.kind !== 'row') return []
      const z = mm(base) + mm(row.height)
      if (fuel !== null && fuel.part === name && z > fuel.reach.from && z < fuel.reach.to) return []
      const hidden = hiddenWithin(walls, wall, z)
      const outline = flatOutline(row.hole)
      return placeRow(row, part.can.bodyDiameter.value).flatMap(({ bearing }) => {
        const middle = toRadians(bearing) + toRadians(turned)
        if (Math.cos(middle) > -TOO_SLANT) return []
        const points = outline.map(([along, up]) => ({
          x: -wall.radius * Math.sin(middle + along / wall.radius),
          z: z + up,
        }))
        return points.some(({ x }) => Math.abs(x) < hidden) ? [] : [{ part: name, opening, outline: points }]
      })
    })
  })
