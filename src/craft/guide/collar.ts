import { toMillimetres } from '#basis/units.ts'
import { CAN_DEFAULTS } from '#stove/can/defaults.ts'
import { facetsRound } from '../solid/facets.ts'
import { type Own, type Solid, type SolidKernel, withSolids } from '../solid/kernel.ts'
import type { Mesh } from '../solid/mesh.ts'
import { meshFrom } from '../solid/meshFrom.ts'
import { prism, revolved } from '../solid/revolve.ts'
import type { CollarShape } from './collarShape.ts'
import type { GuideOptions } from './options.ts'
import { EAR_REACH, EAR_THICKNESS, SCREW_AT, SCREW_HOLE, SPLIT_GAP } from './split.ts'

type Corner = [number, number, number]

/** A cut deeper than what it cuts, so that no faces coincide [mm]. */
const BEYOND = 1
/** A groove on the outside, down the front: depth, and half its width [mm]. */
const MARK = 1.2
/** A groove inside for the overlap of a welded side seam: deep enough for one more tin and what it bulges [mm]. */
const SEAM_GROOVE = { depth: 0.6, beside: 1.5 }

/** The polygon whose sides, not corners, touch the circle: a hole that nothing is taken off. */
const roundAbout = (radius: number, facets: number): number => radius / Math.cos(Math.PI / facets)

/** The collar’s section, one outline in the (radius, height) plane, inner corners set out so that sides touch. */
const section = ({ inner, outer, top, recess, lip }: CollarShape, facets: number): [number, number][] => {
  const at = (radius: number, z: number): [number, number] => [roundAbout(radius, facets), z]
  const inside: [number, number][] =
    recess === null
      ? [at(inner, 0)]
      : // From the seam's room in to the body at 45°, which prints without support.
        [at(inner, recess.to + recess.radius - inner), at(recess.radius, recess.to), at(recess.radius, 0)]
  const under: [number, number][] =
    lip === null
      ? [[outer, 0]]
      : [at(Math.max(1, lip.radius), 0), at(Math.max(1, lip.radius), -lip.thickness), [outer, -lip.thickness]]
  return [...under, [outer, top], at(inner, top), ...inside]
}

const bottomOf = ({ lip }: CollarShape): number => (lip === null ? 0 : -lip.thickness)

/** A bar along +x, round or nearly: sides touch the circle. */
const bar = (
  { Manifold }: SolidKernel,
  own: Own,
  diameter: number,
  from: number,
  to: number,
  chord: number,
): Solid => {
  const facets = facetsRound(diameter / 2, { chord })
  const radius = roundAbout(diameter / 2, facets)
  const upright = own(own(Manifold.cylinder(to - from, radius, radius, facets)).rotate(0, 0, 180 / facets))
  return own(own(upright.rotate(0, 90, 0)).translate(from, 0, 0))
}

/** An ear across a plane that holds the axis and +x, with the collar’s wall behind it. */
const ear = (kernel: SolidKernel, own: Own, shape: CollarShape): Solid => {
  const { inner, outer, top, split } = shape
  const from = split?.earsFrom ?? 0
  const low = from === 0 ? bottomOf(shape) : from
  const root = (inner + outer) / 2
  const reach = outer + EAR_REACH
  const outline: [number, number][] = [
    [root, low],
    [outer, low],
    [reach, from === 0 ? low : low + EAR_REACH],
    [reach, top],
    [root, top],
  ]
  const half = EAR_THICKNESS + SPLIT_GAP / 2
  const at = (y: number): Corner[] => outline.map(([x, z]) => [x, y, z])
  return prism(kernel, own, at(half), at(-half), 'fan')
}

const screwCutters = (
  kernel: SolidKernel,
  own: Own,
  { outer, split }: CollarShape,
  chord: number,
): readonly Solid[] =>
  (split?.screws ?? []).map((z) => {
    const long = EAR_THICKNESS + SPLIT_GAP + BEYOND
    const along = own(bar(kernel, own, SCREW_HOLE, -long, long, chord).rotate(0, 0, 90))
    return own(along.translate(outer + SCREW_AT, 0, z))
  })

/** A groove down the outside on +x. */
const markCutter = (kernel: SolidKernel, own: Own, shape: CollarShape): Solid => {
  const outline: [number, number][] = [
    [shape.outer - MARK, 0],
    [shape.outer + BEYOND, -MARK - BEYOND],
    [shape.outer + BEYOND, MARK + BEYOND],
  ]
  const at = (z: number): Corner[] => outline.map(([x, y]) => [x, y, z])
  return prism(kernel, own, at(bottomOf(shape) - BEYOND), at(shape.top + BEYOND), 'fan')
}

const seamCutter = (kernel: SolidKernel, own: Own, { inner, top, recess }: CollarShape): Solid => {
  const half = toMillimetres(CAN_DEFAULTS.sideSeamWidth.value) / 2 + SEAM_GROOVE.beside
  const reach = Math.max(inner, recess?.radius ?? 0) + SEAM_GROOVE.depth
  const outline: [number, number][] = [
    [inner - 2 * BEYOND, -half],
    [reach, -half],
    [reach, half],
    [inner - 2 * BEYOND, half],
  ]
  const at = (z: number): Corner[] => outline.map(([x, y]) => [x, y, z])
  // A lip stays whole.
  return prism(kernel, own, at(recess === null ? 0 : -BEYOND), at(top + BEYOND), 'fan')
}

const wholeCollar = (kernel: SolidKernel, own: Own, shape: CollarShape, { facets }: GuideOptions): Solid => {
  const round = facetsRound(shape.outer, facets)
  const toward = (solid: Solid, bearing: number): Solid => own(solid.rotate(0, 0, 90 - bearing))
  const body = revolved(kernel, own, [section(shape, round)], round)
  const planes = shape.split?.bearings ?? []
  const withEars =
    planes.length === 0
      ? body
      : own(
          kernel.Manifold.union([body, ...planes.map((bearing) => toward(ear(kernel, own, shape), bearing))]),
        )
  const reach = shape.outer + BEYOND
  const cutters = [
    ...shape.holes.map(({ diameter, up, printedBearing }) => {
      const one = bar(kernel, own, diameter, shape.inner / 2, reach, facets.chord)
      return toward(own(one.translate(0, 0, up)), printedBearing)
    }),
    ...planes.flatMap((bearing) =>
      screwCutters(kernel, own, shape, facets.chord).map((screw) => toward(screw, bearing)),
    ),
    toward(markCutter(kernel, own, shape), shape.datum === 'top' ? 180 : 0),
    ...(shape.sideSeam === null ? [] : [toward(seamCutter(kernel, own, shape), shape.sideSeam)]),
  ]
  const cut = own(kernel.Manifold.difference([withEars, ...cutters]))
  // The bed is at height 0.
  return own(cut.translate(0, 0, -bottomOf(shape)))
}

/** The piece between one plane and the next, clockwise. */
const between = (own: Own, collar: Solid, from: number, to: number): Solid => {
  const side = (bearing: number, way: 1 | -1): [number, number, number] => {
    const angle = (bearing * Math.PI) / 180
    // To the right of a plane as one looks out along its bearing: clockwise.
    return [way * Math.cos(angle), -way * Math.sin(angle), 0]
  }
  const first = own(collar.trimByPlane(side(from, 1), SPLIT_GAP / 2))
  return own(first.trimByPlane(side(to, -1), SPLIT_GAP / 2))
}

/** A collar as closed meshes, one a piece, standing on the bed as they are printed [mm]. */
export const collarMeshes = (
  kernel: SolidKernel,
  name: string,
  shape: CollarShape,
  options: GuideOptions,
): readonly Mesh[] =>
  withSolids((own) => {
    const collar = wholeCollar(kernel, own, shape, options)
    const planes = (shape.split?.bearings ?? []).toSorted((a, b) => a - b)
    const simple = (solid: Solid): Solid => own(solid.simplify(1e-3))
    if (planes.length === 0) return [meshFrom(name, simple(collar))]
    return planes.map((from, index) => {
      const to = planes[(index + 1) % planes.length] as number
      return meshFrom(`${name} ${index + 1} of ${planes.length}`, simple(between(own, collar, from, to)))
    })
  })
