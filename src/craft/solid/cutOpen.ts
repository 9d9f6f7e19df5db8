import { type SolidKernel, withSolids } from './kernel.ts'
import type { Mesh } from './mesh.ts'
import { meshFrom } from './meshFrom.ts'

/** A plane through the stove's axis; the half on the side of its bearing is taken away [deg]. */
export interface AxisCut {
  readonly bearing: number
}

/** Meshes cut by a plane through the axis, the half that is left closed again. What is cut away whole is left out. */
export const cutOpen = (
  kernel: SolidKernel,
  meshes: readonly Mesh[],
  { bearing }: AxisCut,
): readonly Mesh[] => {
  const angle = (bearing * Math.PI) / 180
  // Away from what is taken; rounded, so that a cut along an axis meets the corners that lie on it.
  const normal = [-Math.sin(angle), -Math.cos(angle), 0].map((value) => (Math.abs(value) < 1e-12 ? 0 : value))
  return meshes.flatMap((mesh) =>
    withSolids((own) => {
      const input = new kernel.Mesh({
        numProp: 3,
        vertProperties: mesh.positions,
        triVerts: mesh.triangles,
      })
      const whole = own(new kernel.Manifold(input))
      const half = own(whole.trimByPlane(normal as [number, number, number], 0))
      return half.isEmpty() ? [] : [meshFrom(mesh.name, half)]
    }),
  )
}
