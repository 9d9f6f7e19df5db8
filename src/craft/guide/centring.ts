import { bad, good, type Outcome } from '#basis/problem.ts'
import { toMillimetres } from '#basis/units.ts'
import { bodyAtEnd } from '#stove/can/taper.ts'
import type { Face, Measured, Opening, Part } from '#stove/model.ts'
import { facetsRound } from '../solid/facets.ts'
import { type Solid, type SolidKernel, withSolids } from '../solid/kernel.ts'
import type { Mesh } from '../solid/mesh.ts'
import { meshFrom } from '../solid/meshFrom.ts'
import { revolved } from '../solid/revolve.ts'
import type { GuideHole } from './guide.ts'
import { BIT_PLAY, type GuideOptions } from './options.ts'

/** A disc that is dropped into the recess of a can’s end, or a cap that goes over an edge; radii [mm]. */
export interface CentringShape {
  readonly kind: 'plug' | 'cap'
  readonly face: Face
  /** Of the plug, or of the cap’s inside. */
  readonly radius: number
  readonly measured: Measured
  /** How far a cap reaches over the edge. */
  readonly skirt: number
  readonly holes: readonly GuideHole[]
}

/** Wall of a cap [mm], and how far it reaches over the edge of a can and of a flat disc. */
const CAP_WALL = 3
const SKIRT = { can: 8, disc: 4 }
/** Between two guide holes [mm]. */
const LEAST_WEB = 1
/** A notch in the edge, at the front [mm]. */
const NOTCH = 1.5

/** Which face sits how, and by what measure. */
const seat = (
  part: Part,
  face: Face,
): { kind: 'plug' | 'cap'; measured: Measured; less: number; skirt: number } | null => {
  if (part.form === 'band') return null
  if (part.form === 'disc') return { kind: 'cap', measured: part.diameter, less: 0, skirt: SKIRT.disc }
  if (face === 'face') return null
  const { can } = part
  switch (can[face].kind) {
    case 'plain':
      // Inside the chuck wall, which is as thick as the end.
      return {
        kind: 'plug',
        measured: bodyAtEnd(can, face),
        less: 2 * toMillimetres(can.bodyWall) + 2 * toMillimetres(can.endWall),
        skirt: 0,
      }
    case 'drawn':
      return { kind: 'cap', measured: bodyAtEnd(can, face), less: 0, skirt: SKIRT.can }
    case 'pull-off':
    case 'friction':
      return {
        kind: 'cap',
        measured: can.seamDiameter,
        less: 0,
        skirt: Math.min(SKIRT.can, toMillimetres(can.seamHeight)),
      }
    case 'open':
    case 'cut':
      return null
  }
}

/** Whether the guide is drawn the other way up than the part stands: a plug as it is seen from outside, a cap open side up. */
const isTurned = (kind: 'plug' | 'cap', face: Face): boolean => (face === 'bottom') === (kind === 'plug')

const holesOf = (
  openings: readonly (readonly [string, Opening])[],
  turned: boolean,
  { bit, pilot }: GuideOptions,
): readonly GuideHole[] =>
  openings.flatMap(([opening, what]): readonly GuideHole[] => {
    const hole = (position: number, bearing: number, at: number, own: number): GuideHole => ({
      opening,
      position,
      bearing,
      at,
      diameter: (bit === 'full' ? own : Math.min(own, toMillimetres(pilot))) + BIT_PLAY,
      printedBearing: (((turned ? 180 - bearing : bearing) % 360) + 360) % 360,
      printedAt: at,
    })
    if (what.kind === 'pattern')
      return what.holes.map(({ radius, bearing }, index) =>
        hole(index + 1, bearing, toMillimetres(radius), toMillimetres(what.diameter)),
      )
    // A bore is cut out: what is drilled is its middle.
    return what.kind === 'bore' ? [{ ...hole(1, 0, 0, 0), diameter: toMillimetres(pilot) + BIT_PLAY }] : []
  })

const place = ({ printedAt, printedBearing }: GuideHole): { x: number; y: number } => ({
  x: printedAt * Math.sin((printedBearing * Math.PI) / 180),
  y: printedAt * Math.cos((printedBearing * Math.PI) / 180),
})

/** The nearest two holes, edge to edge [mm]. */
const narrowestWeb = (holes: readonly GuideHole[]): number => {
  let web = Number.POSITIVE_INFINITY
  for (const [index, a] of holes.entries())
    for (const b of holes.slice(index + 1)) {
      const [p, q] = [place(a), place(b)]
      web = Math.min(web, Math.hypot(p.x - q.x, p.y - q.y) - (a.diameter + b.diameter) / 2)
    }
  return web
}

/** A pilot in the middle of a hole that a bore shares would be drilled twice. */
const withoutTwins = (holes: readonly GuideHole[]): readonly GuideHole[] =>
  holes.filter(
    (hole, index) =>
      holes.findIndex((other) => {
        const [p, q] = [place(hole), place(other)]
        return Math.hypot(p.x - q.x, p.y - q.y) < 1e-6
      }) === index,
  )

/** Works out the disc for one face of a part, null where nothing in it is drilled, or says why there is none. */
export const centringShape = (
  name: string,
  part: Part,
  face: Face,
  options: GuideOptions,
): Outcome<CentringShape | null> => {
  const openings = [...part.openings].filter(([, opening]) => opening.kind !== 'row' && opening.face === face)
  const seated = seat(part, face)
  if (seated === null) return good(null)
  const { kind, measured, less, skirt } = seated
  const holes = withoutTwins(holesOf(openings, isTurned(kind, face), options))
  if (holes.length === 0) return good(null)
  const spare = toMillimetres(measured.tolerance) + toMillimetres(options.clearance)
  const radius = (toMillimetres(measured.value) - less + (kind === 'plug' ? -spare : spare)) / 2
  const across = 2 * (radius + (kind === 'cap' ? CAP_WALL : 0))
  const refused = (code: string, value: string, allowed: string, fix: string) =>
    bad({ code, field: `guide for the ${face} of ${name}`, value, allowed, fix })
  const web = narrowestWeb(holes)
  if (web < LEAST_WEB)
    return refused(
      'guide.web',
      `guide holes with ${web.toFixed(1)} mm between them`,
      `${LEAST_WEB} mm or more`,
      'Use a smaller pilot, or drill this face by the template.',
    )
  const [width, depth] = [toMillimetres(options.bed.width), toMillimetres(options.bed.depth)]
  if (across > Math.min(width, depth))
    return refused(
      'guide.bed',
      `a disc ${across.toFixed(0)} mm across on a bed of ${width} × ${depth} mm`,
      `up to ${Math.min(width, depth)} mm across; a centring disc is of no use in pieces`,
      'Print it on a larger printer, or drill by the template.',
    )
  return good({ kind, face, radius, measured, skirt, holes })
}

/** The disc as a closed mesh, flat on the bed [mm]. */
export const centringMesh = (
  kernel: SolidKernel,
  name: string,
  { kind, face, radius, skirt, holes }: CentringShape,
  { facets, wall }: GuideOptions,
): Mesh =>
  withSolids((own) => {
    const thick = toMillimetres(wall)
    const round = facetsRound(radius, facets)
    const outer = radius + (kind === 'cap' ? CAP_WALL : 0)
    // Sides of a cap’s inside, not corners, touch the circle.
    const inside = radius / Math.cos(Math.PI / round)
    const outline: [number, number][] =
      kind === 'plug'
        ? [
            [0, 0],
            [outer, 0],
            [outer, thick],
            [0, thick],
          ]
        : [
            [0, 0],
            [outer, 0],
            [outer, thick + skirt],
            [inside, thick + skirt],
            [inside, thick],
            [0, thick],
          ]
    const body = revolved(kernel, own, [outline], round)
    const cylinder = (diameter: number): Solid => {
      const sides = facetsRound(diameter / 2, facets)
      const around = diameter / 2 / Math.cos(Math.PI / sides)
      return own(kernel.Manifold.cylinder(thick + skirt + 2, around, around, sides))
    }
    const cutters = holes.map((hole) => {
      const { x, y } = place(hole)
      return own(cylinder(hole.diameter).translate(x, y, -1))
    })
    const notch = own(cylinder(2 * NOTCH).translate(0, isTurned(kind, face) ? -outer : outer, -1))
    const cut = own(kernel.Manifold.difference([body, ...cutters, notch]))
    return meshFrom(name, own(cut.simplify(1e-3)))
  })
