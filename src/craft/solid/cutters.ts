import type { Opening } from '#stove/model.ts'
import { type FacetOptions, facetsRound } from './facets.ts'
import type { Own, Solid, SolidKernel } from './kernel.ts'
import { prism } from './revolve.ts'
import { faceCircles } from './volume.ts'
import type { StraightCut, WallCut, WrappedCut } from './wallCut.ts'

type Corner = [number, number, number]

/** Room beyond what is cut, so that no face of a cutter lies in a face of tin [mm]. */
const BEYOND = 1

/** The lower half of a circle closed a hair above its diameter, to run into the window there; across and up [mm]. */
const footOutline = (radius: number, facets: number): readonly (readonly [number, number])[] => {
  // An odd number of sides has none of its corners at the very foot.
  const half = facets / 2 + 1 - ((facets / 2) % 2)
  const foot = Array.from({ length: half + 1 }, (_, step): [number, number] => {
    const angle = Math.PI + (Math.PI * step) / half
    return [radius * Math.cos(angle), radius * Math.sin(angle)]
  })
  return [...foot, [radius * 0.8, radius * 0.05], [-radius * 0.8, radius * 0.05]]
}

/** Bored along +x through the wall beyond the given radius [mm]. */
const straightCutter = (
  kernel: SolidKernel,
  own: Own,
  cut: StraightCut,
  beyond: number,
  outer: number,
  facets: FacetOptions,
): Solid => {
  // Its inner end is flat: set back until its corners, too, lie within the wall.
  const start = Math.sqrt(Math.max(0, beyond ** 2 - cut.radius ** 2))
  const end = outer + BEYOND
  const round = facetsRound(cut.radius, facets)
  if (cut.outline === 'round') {
    const bar = own(kernel.Manifold.cylinder(end - start, cut.radius, cut.radius, round))
    // Turned by half a facet: a corner at the very top would meet an edge of the wall, as bearings often are round.
    const upright = own(bar.rotate(0, 0, 180 / round))
    return own(own(upright.rotate(0, 90, 0)).translate(start, 0, cut.middle))
  }
  const outline = footOutline(cut.radius, round)
  const at = (x: number): Corner[] => outline.map(([across, up]) => [x, across, cut.middle + up])
  return prism(kernel, own, at(start), at(end), 'fan')
}

/** Widest step of a sector's arc [rad]. */
export const SECTOR_STEP = Math.PI / 18

/** A piece of ring about the axis, its middle on +x, from its bottom to its top [mm]. */
const wrappedCutter = (
  kernel: SolidKernel,
  own: Own,
  { halfAngle, bottom, top }: WrappedCut,
  beyond: number,
  outer: number,
): Solid => {
  const half = Math.min(halfAngle, Math.PI - 1e-4)
  const steps = Math.max(1, Math.ceil((2 * half) / SECTOR_STEP))
  const step = (2 * half) / steps
  const arc = (radius: number, z: number): Corner[] =>
    Array.from({ length: steps + 1 }, (_, index): Corner => {
      const angle = -half + index * step
      return [radius * Math.cos(angle), radius * Math.sin(angle), z]
    })
  // Chords of the outer arc must clear the seam.
  const rim = (outer + BEYOND) / Math.cos(step / 2)
  const at = (z: number): Corner[] => [...arc(rim, z), ...arc(beyond, z).reverse()]
  return prism(kernel, own, at(bottom), at(top), 'strip')
}

/** Cutters of everything in a wall: all tin between the two radii goes [mm]. */
export const wallCutters = (
  kernel: SolidKernel,
  own: Own,
  cuts: readonly WallCut[],
  beyond: number,
  outer: number,
  facets: FacetOptions,
): readonly Solid[] =>
  cuts.flatMap((cut) => {
    const one =
      cut.kind === 'straight'
        ? straightCutter(kernel, own, cut, beyond, outer, facets)
        : wrappedCutter(kernel, own, cut, beyond, outer)
    return cut.bearings.map((bearing) => own(one.rotate(0, 0, 90 - bearing)))
  })

/** Cutters of the round holes of a flat face that lies between two heights [mm]. */
export const faceCutters = (
  { Manifold }: SolidKernel,
  own: Own,
  openings: readonly Opening[],
  bottom: number,
  top: number,
  facets: FacetOptions,
): readonly Solid[] => {
  const tin = top - bottom
  const made = new Map<number, Solid>()
  return faceCircles(openings).map(({ x, y, radius }) => {
    const one =
      made.get(radius) ?? own(Manifold.cylinder(3 * tin, radius, radius, facetsRound(radius, facets)))
    made.set(radius, one)
    return own(one.translate(x, y, bottom - tin))
  })
}
