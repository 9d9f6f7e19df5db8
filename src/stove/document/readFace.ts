import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { closely } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import type { BoreOpening, Face, VanesOpening } from '#stove/model.ts'
import type { FaceRing } from '#stove/opening/face.ts'
import { wrapBearing } from '#stove/opening/row.ts'
import type { OpeningRead, VanesRead } from './openingSchema.ts'
import { type Place, problemAt, within } from './place.ts'

/** Openings in a flat face that are not patterns: bores and vanes. */
type BoreRead = Extract<OpeningRead, { kind: 'bore' }>

/** An opening in an end that is not there. */
export const openFace = (place: Place, face: Face): Problem =>
  problemAt(
    within(place, 'face'),
    'opening.open-face',
    'an end that is still there: plain, drawn, or the ring of a pull-off or friction end',
    `The ${face} of this can is open, so there is no tin to cut: choose the other end, or say how this one is left.`,
  )

export const readBore = (read: BoreRead, face: Face, ring: FaceRing, place: Place): Outcome<BoreOpening> => {
  const { diameter } = read
  const at = within(place, 'diameter')
  if (diameter >= 2 * ring.outer)
    return bad(
      problemAt(
        at,
        'bore.too-wide',
        `less than ${closely(2 * ring.outer)}, the width of the tin it is cut in`,
        'Look at the unit, or take a smaller bore.',
      ),
    )
  if (diameter <= 2 * ring.inner)
    return bad(
      problemAt(
        at,
        'bore.in-opening',
        `more than the opening that is there already, ${closely(2 * ring.inner)}`,
        'This end is open so far anyway: leave the bore out, or make it wider.',
      ),
    )
  return good({ kind: 'bore', duty: read.duty, face, diameter })
}

const vaneProblems = (read: VanesRead, ring: FaceRing, place: Place): readonly Problem[] => {
  const { count, innerRadius, outerRadius, width } = read
  if (innerRadius >= outerRadius)
    return [
      problemAt(
        within(place, 'innerRadius'),
        'vanes.radii',
        `less than the outer radius, ${closely(outerRadius)}`,
        'A vane reaches outward from its inner radius: swap the two, or measure again.',
      ),
    ]
  const problems: Problem[] = []
  // The tongue is a strip along its hinge, which lies on a radius: its far corner is the furthest out.
  const reach = Math.hypot(outerRadius, width)
  if (reach >= ring.outer)
    problems.push(
      problemAt(
        within(place, 'outerRadius'),
        'vanes.outside',
        `less than ${closely(Math.sqrt(Math.max(0, ring.outer ** 2 - width ** 2)))}, so that the corners of the ${closely(width)} wide vanes stay inside the disc`,
        'Make the vanes shorter or narrower, or the disc larger.',
      ),
    )
  if (innerRadius < ring.inner)
    problems.push(
      problemAt(
        within(place, 'innerRadius'),
        'vanes.in-opening',
        `at least the radius of the opening that is there already, ${closely(ring.inner)}`,
        'Begin the vanes outside the opening.',
      ),
    )
  // Seen from the middle, the far corner of the inner end lies atan(w / ri) beyond the hinge; the next
  // hinge lies 360°/n beyond it. From a quarter turn on, a strip cannot reach the next hinge at all.
  const step = (2 * Math.PI) / count
  const widest = step < Math.PI / 2 ? innerRadius * Math.tan(step) : Number.POSITIVE_INFINITY
  if (width >= widest)
    problems.push(
      problemAt(
        within(place, 'width'),
        'vanes.overlap',
        `less than ${closely(widest)}: at their inner ends the ${count} hinges are no further apart`,
        'Use fewer or narrower vanes, or begin them further out.',
      ),
    )
  return problems
}

export const readVanes = (
  read: VanesRead,
  face: Face,
  ring: FaceRing,
  place: Place,
): Outcome<VanesOpening> => {
  const problems = vaneProblems(read, ring, place)
  if (problems.length > 0) return bad(...problems)
  const { duty, count, innerRadius, outerRadius, width, angle, hand } = read
  return good({
    kind: 'vanes',
    duty,
    face,
    count,
    innerRadius: innerRadius as Metres,
    outerRadius,
    width,
    angle,
    bend: read.bend ?? 'up',
    hand,
    bearing: wrapBearing(read.bearing ?? 0),
  })
}
