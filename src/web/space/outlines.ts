import { type Metres, toMillimetres } from '#basis/units.ts'
import { type Mesh, type Pose, posed } from '#craft/solid/mesh.ts'
import { floorHeight } from '#stove/can/ends.ts'
import { bodyAt } from '#stove/can/taper.ts'
import type { Face, Opening, Part, RowOpening, Stove, WallHole } from '#stove/model.ts'
import { placeRow } from '#stove/opening/row.ts'

/** Points round one hole. */
const ROUND = 40

type Point3 = readonly [number, number, number]

const bearingPoint = (bearing: number, radius: number, z: number): Point3 => {
  const angle = (bearing * Math.PI) / 180
  return [radius * Math.sin(angle), radius * Math.cos(angle), z]
}

/** The rim of a hole in a wall laid flat, x round the can and y up, from its middle [mm]. */
const flatRim = (hole: WallHole): readonly (readonly [x: number, y: number])[] => {
  const ellipse = (wide: number, high: number): readonly (readonly [number, number])[] =>
    Array.from({ length: ROUND }, (_, i) => {
      const angle = (2 * Math.PI * i) / ROUND
      return [wide * Math.cos(angle), high * Math.sin(angle)] as const
    })
  const box = (width: number, height: number): readonly (readonly [number, number])[] => {
    const [x, y] = [width / 2, height / 2]
    // Corners alone would cut straight through a round wall.
    const across = Array.from({ length: 9 }, (_, i) => -x + (2 * x * i) / 8)
    return [...across.map((at) => [at, -y] as const), ...across.toReversed().map((at) => [at, y] as const)]
  }
  switch (hole.shape) {
    case 'round': {
      const radius = toMillimetres(hole.diameter) / 2
      return ellipse(radius, radius)
    }
    case 'window':
      return box(toMillimetres(hole.width), toMillimetres(hole.height))
    case 'slit': {
      const [long, wide] = [toMillimetres(hole.length), toMillimetres(hole.width)]
      return hole.along === 'axis' ? box(wide, long) : box(long, wide)
    }
  }
}

/** [mm] */
const wallThickness = (part: Part): number =>
  toMillimetres(part.form === 'can' ? part.can.bodyWall : part.thickness)

/** Outside of a wall at a height; `worn`: inside radius of a band [mm]. */
const wallRadius = (part: Part, height: Metres, worn: number): number =>
  part.form === 'can'
    ? toMillimetres(bodyAt(part.can, height).value) / 2
    : worn + toMillimetres(part.thickness)

const faceHeight = (part: Part, face: Face): number => {
  if (part.form === 'disc') return toMillimetres(part.thickness)
  if (part.form === 'band') return 0
  const { can } = part
  if (face === 'bottom') return toMillimetres(floorHeight(can) ?? (0 as Metres))
  const sunk = can.top.kind === 'plain' ? can.top.countersink : 0
  return toMillimetres((can.height.value - sunk) as Metres)
}

const loop = (points: readonly Point3[]): readonly number[] =>
  points.flatMap((point, i) => [...point, ...(points[(i + 1) % points.length] as Point3)])

/** Stands a hair off the tin, so that line and tin do not fight for the same dots [mm]. */
const OFF = 0.3

const rimsOf = (opening: Opening, part: Part, worn: number): readonly number[] => {
  if (opening.kind === 'row') {
    const outside = wallRadius(part, opening.height, worn)
    const rim = flatRim(opening.hole)
    // On either face of the wall: one of them is in sight from wherever one looks.
    return [outside + OFF, outside - wallThickness(part) - OFF].flatMap((radius) =>
      placeRow(opening, 1 as Metres).flatMap(({ bearing }) =>
        loop(
          rim.map(([x, y]) =>
            bearingPoint(bearing + ((x / radius) * 180) / Math.PI, radius, toMillimetres(opening.height) + y),
          ),
        ),
      ),
    )
  }
  const height = faceHeight(part, opening.face)
  return [height + OFF, height - toMillimetres(faceThickness(part)) - OFF].flatMap((z) =>
    faceRims(opening, z),
  )
}

const faceThickness = (part: Part): Metres => (part.form === 'can' ? part.can.endWall : part.thickness)

const faceRims = (opening: Exclude<Opening, RowOpening>, z: number): readonly number[] => {
  const circle = (x: number, y: number, radius: number): readonly number[] =>
    loop(
      Array.from({ length: ROUND }, (_, i) => {
        const angle = (2 * Math.PI * i) / ROUND
        return [x + radius * Math.cos(angle), y + radius * Math.sin(angle), z] as const
      }),
    )
  switch (opening.kind) {
    case 'bore':
      return circle(0, 0, toMillimetres(opening.diameter) / 2)
    case 'pattern':
      return opening.holes.flatMap(({ radius, bearing }) => {
        const [x, y] = bearingPoint(bearing, toMillimetres(radius), z)
        return circle(x, y, toMillimetres(opening.diameter) / 2)
      })
    case 'vanes': {
      const [inner, outer] = [toMillimetres(opening.innerRadius), toMillimetres(opening.outerRadius)]
      const width = toMillimetres(opening.width)
      return Array.from({ length: opening.count }, (_, i) => {
        const bearing = opening.bearing + (360 * i) / opening.count
        const from = bearingPoint(bearing, inner, z)
        const to = bearingPoint(bearing, outer, z)
        const angle = (bearing * Math.PI) / 180
        const side = opening.hand === 'clockwise' ? 1 : -1
        const across: Point3 = [side * width * Math.cos(angle), -side * width * Math.sin(angle), 0]
        const over = (point: Point3): Point3 => [point[0] + across[0], point[1] + across[1], z]
        return loop([from, to, over(to), over(from)])
      }).flat()
    }
  }
}

/** The rims of every opening of a part where its solid stands [mm]; `worn`: radius of what a band goes round. */
export const outlinesOf = (
  { parts }: Stove,
  name: string,
  pose: Pose,
  worn: number,
): readonly { readonly part: string; readonly opening: string; readonly lines: Float32Array }[] => {
  const part = parts.get(name)
  if (part === undefined) return []
  return [...part.openings].map(([opening, shape]) => {
    const flat: Mesh = {
      name: opening,
      positions: Float32Array.from(rimsOf(shape, part, worn)),
      triangles: new Uint32Array(0),
    }
    return { part: name, opening, lines: posed(flat, pose).positions }
  })
}
