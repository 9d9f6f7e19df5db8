import type { Own, Solid, SolidKernel } from './kernel.ts'

type Corner = readonly [number, number]

/** A closed mesh as the kernel takes it. */
const solidFrom = (
  { Manifold, Mesh }: SolidKernel,
  own: Own,
  corners: readonly number[],
  triangles: readonly number[],
): Solid =>
  own(
    new Manifold(
      new Mesh({
        numProp: 3,
        vertProperties: Float32Array.from(corners),
        triVerts: Uint32Array.from(triangles),
      }),
    ),
  )

/** Nearer to the axis than this is on it [mm]. */
const ON_AXIS = 1e-6

/**
 * Turns outlines in the (radius, height) plane all the way round [mm]; outer outlines run anticlockwise, those of hollows
 * clockwise, as the kernel gives them. The kernel could do it too, but its own way in leaks memory with every call.
 */
export const revolved = (
  kernel: SolidKernel,
  own: Own,
  outlines: readonly (readonly Corner[])[],
  facets: number,
): Solid => {
  const corners: number[] = []
  const triangles: number[] = []
  const directions = Array.from({ length: facets }, (_, step) => {
    const angle = (2 * Math.PI * step) / facets
    return [Math.cos(angle), Math.sin(angle)] as const
  })
  for (const outline of outlines) {
    /** First corner of each point of the outline, and whether it has but one. */
    const points = outline.map(([r, z]) => {
      const first = corners.length / 3
      if (r < ON_AXIS) {
        corners.push(0, 0, z)
        return { first, single: true }
      }
      for (const [cos, sin] of directions) corners.push(r * cos, r * sin, z)
      return { first, single: false }
    })
    for (const [index, low] of points.entries()) {
      const high = points[(index + 1) % points.length] as (typeof points)[number]
      if (low.single && high.single) continue
      for (let step = 0; step < facets; step += 1) {
        const next = (step + 1) % facets
        const at = (point: typeof low, column: number): number => point.first + (point.single ? 0 : column)
        if (!low.single) triangles.push(at(low, step), at(low, next), at(high, next))
        if (!high.single) triangles.push(at(low, step), at(high, next), at(high, step))
      }
    }
  }
  return solidFrom(kernel, own, corners, triangles)
}

/**
 * A prism between two like outlines [mm]: every corner of `low` joined to the same of `high`. `pairs` says how many
 * corners from either end face each other across the outline (a strip), so that it need not be convex; a fan otherwise.
 */
export const prism = (
  kernel: SolidKernel,
  own: Own,
  low: readonly (readonly [number, number, number])[],
  high: readonly (readonly [number, number, number])[],
  cap: 'fan' | 'strip',
): Solid => {
  const count = low.length
  const triangles: number[] = []
  for (let index = 0; index < count; index += 1) {
    const next = (index + 1) % count
    triangles.push(index, next, count + next, index, count + next, count + index)
  }
  const lid = (a: number, b: number, c: number): void => {
    triangles.push(a, c, b, count + a, count + b, count + c)
  }
  if (cap === 'fan') for (let index = 2; index < count; index += 1) lid(0, index - 1, index)
  else
    for (let index = 0; index + 1 < count / 2; index += 1) {
      const across = count - 1 - index
      lid(index, index + 1, across - 1)
      lid(index, across - 1, across)
    }
  return solidFrom(kernel, own, [...low, ...high].flat(), triangles)
}
