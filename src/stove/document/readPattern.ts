import { bad, good, type Outcome } from '#basis/problem.ts'
import { quantities } from '#basis/quantities.ts'
import { closely } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import type { Face, PatternOpening, PolarPoint } from '#stove/model.ts'
import type { FaceRing } from '#stove/opening/face.ts'
import {
  closestHoles,
  hexagonalByCount,
  hexagonalByPitch,
  hexagonalCounts,
  ringsLayout,
  sunflowerByCount,
  sunflowerByPitch,
} from '#stove/opening/layout.ts'
import type { PatternRead } from './openingSchema.ts'
import { type Place, problemAt, within } from './place.ts'

/** Floor patterns: the holes are placed here, once, when the file is read. */
type Layout = PatternRead['layout']
type Filling = Extract<Layout, { hexagonal: unknown }>['hexagonal']
type Kind = PatternOpening['layout']

const MOST = quantities.patternCount.max

const tooMany = (place: Place, holes: number): Outcome<never> =>
  bad(
    problemAt(
      place,
      'pattern.too-many',
      `at most ${MOST} holes in one pattern`,
      'Use a wider pitch or fewer holes.',
      holes < 1e6 ? `${Math.round(holes)} holes` : 'more than a million holes',
    ),
  )

const placeRings = (
  layout: Extract<Layout, { rings: unknown }>,
  place: Place,
): Outcome<readonly PolarPoint[]> => {
  const rings = layout.rings.map(({ radius, count, bearing }) => ({ radius, count, bearing: bearing ?? 0 }))
  const total = rings.reduce((sum, { count }) => sum + count, layout.centre === true ? 1 : 0)
  if (total > MOST) return tooMany(within(place, 'rings'), total)
  return good(ringsLayout(rings, layout.centre === true))
}

/** The whole counts of a honeycomb on either side of one that leaves gaps. */
const honeycombFix = (count: number): string => {
  const counts = hexagonalCounts(Math.min(MOST, count + 200)).filter((one) => one > 1)
  const below = counts.filter((one) => one < count).at(-1)
  const above = counts.find((one) => one > count)
  const near = [below, above].filter((one) => one !== undefined).join(' or ')
  return `Use ${near}, or a sunflower, which takes any count.`
}

const placeFilling = (
  kind: 'hexagonal' | 'sunflower',
  { pitch, count, margin }: Filling,
  diameter: Metres,
  ring: FaceRing,
  place: Place,
): Outcome<readonly PolarPoint[]> => {
  const fillRadius = (ring.outer - margin - diameter / 2) as Metres
  if (fillRadius <= 0)
    return bad(
      problemAt(
        within(place, 'margin'),
        'pattern.no-room',
        `less than ${closely(Math.max(0, ring.outer - diameter / 2))}, or no hole fits inside the margin`,
        'Make the margin or the holes smaller.',
      ),
    )
  if (count !== undefined) {
    if (kind === 'sunflower') return good(sunflowerByCount(count, fillRadius))
    const holes = hexagonalByCount(count, fillRadius)
    return holes === null
      ? bad(
          problemAt(
            within(place, 'count'),
            'pattern.honeycomb-count',
            'a count that fills whole rings of a honeycomb: 7, 13, 19, 31, 37, 43, 55, 61, …',
            honeycombFix(count),
          ),
        )
      : good(holes)
  }
  if (pitch === undefined) throw new Error('A pattern with neither pitch nor count passed the schema')
  // Every hole has at least the cell √3/2 p² of the densest packing to itself, give or take the rim.
  const estimate = (Math.PI * (fillRadius + pitch) ** 2) / ((Math.sqrt(3) / 2) * pitch ** 2)
  if (estimate > MOST) return tooMany(within(place, 'pitch'), estimate)
  const holes =
    kind === 'hexagonal' ? hexagonalByPitch(pitch, fillRadius) : sunflowerByPitch(pitch, fillRadius)
  return holes.length > 0
    ? good(holes)
    : bad(
        problemAt(
          within(place, 'pitch'),
          'pattern.no-room',
          `a pitch that lets at least one hole into a circle of ${closely(2 * fillRadius)}`,
          'Use a smaller pitch or margin.',
        ),
      )
}

const placeHoles = (
  layout: Layout,
  diameter: Metres,
  ring: FaceRing,
  place: Place,
): { readonly kind: Kind; readonly holes: Outcome<readonly PolarPoint[]> } => {
  if ('rings' in layout) return { kind: 'rings', holes: placeRings(layout, place) }
  const kind = 'hexagonal' in layout ? 'hexagonal' : 'sunflower'
  const filling = 'hexagonal' in layout ? layout.hexagonal : layout.sunflower
  return { kind, holes: placeFilling(kind, filling, diameter, ring, within(place, kind)) }
}

/** A pattern with every hole in its place. */
export const readPattern = (
  read: PatternRead,
  face: Face,
  ring: FaceRing,
  place: Place,
): Outcome<PatternOpening> => {
  const hole = read.hole
  const [diameter, bit, holeField] =
    'bit' in hole
      ? ([hole.bit.diameter, hole.bit.name, 'bit'] as const)
      : ([hole.diameter, null, 'diameter'] as const)
  const at = within(place, 'layout')
  if (diameter >= 2 * ring.outer)
    return bad(
      problemAt(
        within(place, 'hole', holeField),
        'opening.wider-than-can',
        `less than the ${closely(2 * ring.outer)} of the disc`,
        'Look at the unit, or take a smaller hole.',
      ),
    )
  const { kind, holes: placed } = placeHoles(read.layout, diameter, ring, at)
  if (!placed.ok) return placed
  const holes = placed.value
  const slack = 1e-9
  const furthest = Math.max(...holes.map(({ radius }) => radius))
  if (furthest + diameter / 2 > ring.outer + slack)
    return bad(
      problemAt(
        at,
        'pattern.outside',
        `hole middles at most ${closely(ring.outer - diameter / 2)} from the middle of the disc`,
        'Bring the outer ring in, or use smaller holes.',
        `holes of ${closely(diameter)} as far out as ${closely(furthest)}`,
      ),
    )
  const nearestToMiddle = Math.min(...holes.map(({ radius }) => radius))
  if (ring.inner > 0 && nearestToMiddle - diameter / 2 < ring.inner - slack)
    return bad(
      problemAt(
        at,
        'pattern.in-opening',
        `hole middles at least ${closely(ring.inner + diameter / 2)} from the middle: inside that the end is open already`,
        'Lay the holes in rings on the tin that is left.',
        `holes as far in as ${closely(nearestToMiddle)}`,
      ),
    )
  const closest = closestHoles(holes)
  if (closest <= diameter)
    return bad(
      problemAt(
        at,
        'pattern.overlap',
        `hole middles more than ${closely(diameter)} apart`,
        'Use fewer or smaller holes, or spread them wider.',
        `${holes.length} holes of ${closely(diameter)}, the closest ${closely(closest)} apart`,
      ),
    )
  return good({ kind: 'pattern', duty: read.duty, face, layout: kind, diameter, bit, holes })
}
