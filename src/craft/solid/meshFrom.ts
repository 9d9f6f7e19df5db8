import type { Solid } from './kernel.ts'
import type { Mesh } from './mesh.ts'
import { welded } from './weld.ts'

/**
 * A solid of the kernel as plain data. Throws `RangeError` where the kernel could not make it: what a stove file may say
 * never leads there.
 */
export const meshFrom = (name: string, solid: Solid): Mesh => {
  const status = solid.status()
  if (status !== 'NoError') throw new RangeError(`The solid of ${name} came out as ${status}.`)
  const { vertProperties, triVerts, numProp } = solid.getMesh()
  if (numProp !== 3) throw new RangeError(`The solid of ${name} carries more than corners.`)
  return welded({ name, positions: vertProperties, triangles: triVerts })
}
