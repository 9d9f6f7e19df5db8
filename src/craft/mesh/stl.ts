import type { Mesh } from '../solid/mesh.ts'

const HEADER = 80
const FACET = 50

/** Plain letters only: readers of the format know no others. */
const plain = (text: string): Uint8Array =>
  Uint8Array.from({ length: HEADER }, (_, at) => {
    const code = text.charCodeAt(at)
    return code >= 0x20 && code < 0x7f ? code : 0x20
  })

/**
 * Meshes as one binary STL file: a header of 80 letters, the number of triangles, and of each its normal and three
 * corners as 32-bit numbers, low byte first [mm]. The format has no units and no names; the header says the unit.
 * Throws `RangeError` for a header that programs would take for the text form of the format.
 */
export const writeStl = (meshes: readonly Mesh[], header: string): Uint8Array => {
  if (header.startsWith('solid')) throw new RangeError('A binary STL file must not begin with “solid”.')
  const count = meshes.reduce((sum, { triangles }) => sum + triangles.length / 3, 0)
  const bytes = new Uint8Array(HEADER + 4 + FACET * count)
  bytes.set(plain(header))
  const view = new DataView(bytes.buffer)
  view.setUint32(HEADER, count, true)
  let at = HEADER + 4
  for (const { positions, triangles } of meshes)
    for (let corner = 0; corner < triangles.length; corner += 3) {
      const points = [0, 1, 2].map((k) => {
        const first = 3 * (triangles[corner + k] as number)
        return [
          positions[first] as number,
          positions[first + 1] as number,
          positions[first + 2] as number,
        ] as const
      })
      const [a, b, c] = points as [Point, Point, Point]
      for (const value of [...normal(a, b, c), ...a, ...b, ...c]) {
        view.setFloat32(at, value, true)
        at += 4
      }
      at += 2
    }
  return bytes
}

type Point = readonly [number, number, number]

/** Unit vector out of a triangle [1]. */
const normal = (a: Point, b: Point, c: Point): Point => {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]]
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]]
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx]
  const length = Math.hypot(x, y, z)
  return length === 0 ? [0, 0, 0] : [x / length, y / length, z / length]
}
