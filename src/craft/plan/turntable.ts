import { base64 } from '../page/html/base64.ts'

/** A closed surface of triangles, z up [mm]. */
export interface Surface {
  readonly name: string
  readonly positions: Float32Array
  readonly triangles: Uint32Array
}

export interface TurntableInput {
  readonly label: string
  readonly surfaces: readonly Surface[]
  /** Bearing it has to be seen from; left out: as the last was [deg]. */
  readonly seenFrom?: number
}

/** What the page's script reads; see `src/page/plan.js`. */
export interface TurntableData {
  /** Unit of the positions [mm]. */
  readonly step: number
  readonly parts: readonly {
    readonly name: string
    readonly colour: readonly [number, number, number]
    readonly positions: string
    readonly triangles: string
    readonly edges: string
  }[]
  readonly arrangements: readonly {
    readonly label: string
    readonly seenFrom?: number
    readonly items: readonly { readonly part: number; readonly move: readonly [number, number, number] }[]
  }[]
}

/** A twentieth of a millimetre: 16 bits reach 1.6 m [mm]. */
const STEP = 0.05
const LARGEST = 32767

/** Edges where faces turn by more than this are drawn; facets of a round wall turn by less. */
const CREASE = Math.cos((32 * Math.PI) / 180)

/** Bare tin, a little warmer and darker from part to part, so that they are told apart. */
const TINS: readonly (readonly [number, number, number])[] = [
  [0.93, 0.92, 0.89],
  [0.9, 0.82, 0.7],
  [0.8, 0.86, 0.88],
  [0.94, 0.86, 0.76],
  [0.84, 0.81, 0.77],
  [0.87, 0.9, 0.85],
]

type Triple = readonly [number, number, number]

const sameWayRound = (a: number, b: number): string => (a < b ? `${a} ${b}` : `${b} ${a}`)

/** Corners in whole steps, those that coincide made one. */
const quantised = ({
  positions,
  triangles,
}: Surface): { readonly corners: readonly Triple[]; readonly faces: readonly Triple[] } => {
  const corners: Triple[] = []
  const known = new Map<string, number>()
  const index = Array.from({ length: positions.length / 3 }, (_, i) => {
    const corner = [0, 1, 2].map((k) =>
      Math.round((positions[3 * i + k] as number) / STEP),
    ) as unknown as Triple
    const key = corner.join(' ')
    const found = known.get(key)
    if (found !== undefined) return found
    known.set(key, corners.length)
    corners.push(corner)
    return corners.length - 1
  })
  const faces: Triple[] = []
  for (let i = 0; i < triangles.length; i += 3) {
    const face = [0, 1, 2].map((k) => index[triangles[i + k] as number] as number) as unknown as Triple
    if (face[0] !== face[1] && face[1] !== face[2] && face[2] !== face[0]) faces.push(face)
  }
  return { corners, faces }
}

/** A face lower than this faces anywhere once its corners are whole steps: the tin itself is four of them thick. */
const SLIVER = 2

/** Of length one; null for a sliver. */
const normalOf = (corners: readonly Triple[], [a, b, c]: Triple): Triple | null => {
  const [p, q, r] = [corners[a] as Triple, corners[b] as Triple, corners[c] as Triple]
  const [ux, uy, uz] = [q[0] - p[0], q[1] - p[1], q[2] - p[2]]
  const [vx, vy, vz] = [r[0] - p[0], r[1] - p[1], r[2] - p[2]]
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx]
  const size = Math.hypot(x, y, z)
  const longest = Math.max(
    Math.hypot(ux, uy, uz),
    Math.hypot(vx, vy, vz),
    Math.hypot(vx - ux, vy - uy, vz - uz),
  )
  return size < SLIVER * longest ? null : [x / size, y / size, z / size]
}

const creases = (corners: readonly Triple[], faces: readonly Triple[]): readonly number[] => {
  const seen = new Map<
    string,
    { readonly edge: readonly [number, number]; readonly normal: Triple | null; sharp: boolean }
  >()
  for (const face of faces) {
    const normal = normalOf(corners, face)
    for (const [a, b] of [
      [face[0], face[1]],
      [face[1], face[2]],
      [face[2], face[0]],
    ] as const) {
      const key = sameWayRound(a, b)
      const other = seen.get(key)
      if (other === undefined) seen.set(key, { edge: [a, b], normal, sharp: true })
      else
        other.sharp =
          normal !== null &&
          other.normal !== null &&
          other.normal[0] * normal[0] + other.normal[1] * normal[1] + other.normal[2] * normal[2] < CREASE
    }
  }
  return [...seen.values()].flatMap(({ edge, sharp }) => (sharp ? edge : []))
}

const packed = (numbers: readonly number[], width: 2 | 4, signed: boolean): string => {
  const bytes = new Uint8Array(numbers.length * width)
  const view = new DataView(bytes.buffer)
  for (const [i, value] of numbers.entries()) {
    if (signed) view.setInt16(2 * i, value, true)
    else view.setUint32(4 * i, value, true)
  }
  return base64(bytes)
}

/**
 * Arrangements of a stove's solids as data for the turntable of a page. A surface that is moved but not changed from one
 * arrangement to the next goes in once. Throws `RangeError` for a stove larger than 1.6 m.
 */
export const turntableData = (arrangements: readonly TurntableInput[]): TurntableData => {
  const parts: TurntableData['parts'][number][] = []
  const known = new Map<string, number>()
  const colours = new Map<string, number>()
  const shown = arrangements.map(({ label, surfaces, seenFrom }) => ({
    label,
    ...(seenFrom === undefined ? {} : { seenFrom }),
    items: surfaces.map((surface) => {
      const { corners, faces } = quantised(surface)
      const least = [0, 1, 2].map((k) =>
        corners.reduce((low, corner) => Math.min(low, corner[k] as number), Infinity),
      )
      const local = corners.flatMap((corner) => corner.map((value, k) => value - (least[k] as number)))
      if (local.some((value) => value > LARGEST)) throw new RangeError(`${surface.name} is larger than 1.6 m`)
      const positions = packed(local, 2, true)
      const triangles = packed(faces.flat(), 4, false)
      const key = `${surface.name} ${positions} ${triangles}`
      let part = known.get(key)
      if (part === undefined) {
        part = parts.length
        known.set(key, part)
        if (!colours.has(surface.name)) colours.set(surface.name, colours.size)
        const colour = TINS[(colours.get(surface.name) as number) % TINS.length] as Triple
        const edges = packed(creases(corners, faces), 4, false)
        parts.push({ name: surface.name, colour, positions, triangles, edges })
      }
      return { part, move: least.map((value) => Number((value * STEP).toFixed(2))) as unknown as Triple }
    }),
  }))
  return { step: STEP, parts, arrangements: shown }
}
