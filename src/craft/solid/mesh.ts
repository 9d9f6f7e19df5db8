/** A closed surface of triangles, seen from outside anticlockwise; x, y, z of every corner [mm]. z is up. */
export interface Mesh {
  readonly name: string
  readonly positions: Float32Array
  readonly triangles: Uint32Array
}

/** An upright box [mm]. */
export interface Bounds {
  readonly min: readonly [number, number, number]
  readonly max: readonly [number, number, number]
}

/** The box round some meshes [mm]; of none, a box without room. */
export const boundsOf = (meshes: readonly Mesh[]): Bounds => {
  const min: [number, number, number] = [Infinity, Infinity, Infinity]
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  for (const { positions } of meshes)
    for (let at = 0; at < positions.length; at += 1) {
      const axis = at % 3
      const value = positions[at] as number
      if (value < (min[axis] as number)) min[axis] = value
      if (value > (max[axis] as number)) max[axis] = value
    }
  return { min, max }
}

/** How a part is turned and set down: first upside down about the x axis, then turned, then shifted. */
export interface Pose {
  readonly upsideDown?: boolean
  /** Clockwise seen from above [deg]. */
  readonly turned?: number
  readonly x?: number
  readonly y?: number
  readonly z?: number
}

/** A mesh moved as a rigid thing. */
export const posed = (mesh: Mesh, { upsideDown = false, turned = 0, x = 0, y = 0, z = 0 }: Pose): Mesh => {
  const { positions, triangles, name } = mesh
  const quarter = turned % 360
  // A whole turn, and none, must not blur what lies on an axis.
  const cos = quarter === 0 ? 1 : Math.cos((quarter * Math.PI) / 180)
  const sin = quarter === 0 ? 0 : Math.sin((quarter * Math.PI) / 180)
  const flip = upsideDown ? -1 : 1
  const out = new Float32Array(positions.length)
  for (let at = 0; at < positions.length; at += 3) {
    const px = positions[at] as number
    const py = flip * (positions[at + 1] as number)
    out[at] = cos * px + sin * py + x
    out[at + 1] = cos * py - sin * px + y
    out[at + 2] = flip * (positions[at + 2] as number) + z
  }
  return { name, positions: out, triangles }
}

/** Volume inside a closed mesh, by the divergence theorem [mm³]. */
export const meshVolume = ({ positions, triangles }: Mesh): number => {
  let six = 0
  for (let at = 0; at < triangles.length; at += 3) {
    const [a, b, c] = [0, 1, 2].map((corner) => 3 * (triangles[at + corner] as number)) as [
      number,
      number,
      number,
    ]
    const [ax, ay, az] = [positions[a]!, positions[a + 1]!, positions[a + 2]!]
    const [bx, by, bz] = [positions[b]!, positions[b + 1]!, positions[b + 2]!]
    const [cx, cy, cz] = [positions[c]!, positions[c + 1]!, positions[c + 2]!]
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
  }
  return six / 6
}
