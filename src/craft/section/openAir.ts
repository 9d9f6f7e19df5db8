import { bend, type End, endAt, widthOf } from './bend.ts'
import { gateEnd, gateSpan, type WidthPerFlow, wayInto, wayOutOf } from './border.ts'
import type { Gate } from './gates.ts'
import type { SectionGeometry } from './geometry.ts'
import type { Course } from './ribbon.ts'
import { spanLength } from './span.ts'

/** How far air outside is shown coming, beyond the stove's widest tin [mm]. */
export const OUTSIDE_REACH = 15
/** Between hot gas and the pot or tin it rises beside [mm]. */
const CLEARANCE = 3
/** How far the barbs of an arrow head stand out on either side of its ribbon, in widths [1]. */
export const HEAD_BARB = 0.32
/** How much of the pot is drawn [mm]. */
export const POT_SHOWN = 24

/** Widest tin or pot at or above a height: what leaves there has to get past it [mm]. */
const widestAbove = (section: SectionGeometry, z: number): number =>
  Math.max(
    0,
    section.pot !== null && section.pot.bottom >= z ? section.pot.radius : 0,
    ...section.walls
      .filter(({ reach }) => reach.to > z)
      .map(({ radius, seams }) => Math.max(radius, ...seams.map(({ outer }) => outer))),
    ...section.plates.filter(({ height }) => height > z).map(({ reach }) => reach.to),
  )

/** Hot gas rises: out, then up beside whatever is wider above. */
const outflow = (section: SectionGeometry, gate: Gate, start: End, aside: number): Course => {
  const width = widthOf(start)
  if (gate.tin === 'plate') {
    const r = gate.onAxis ? width / 2 : gate.r
    const finish = endAt({ r, z: gate.z + (start.way === 'up' ? 16 : -6) }, width, start.way)
    return { stretches: bend(start, finish), start, finish }
  }
  const edge = Math.max(widestAbove(section, gate.z), gate.r + CLEARANCE)
  const pot = section.pot
  const z = pot !== null && pot.bottom > gate.z ? pot.bottom + POT_SHOWN * 0.7 : gate.z + 22
  const apart = Math.max(CLEARANCE, HEAD_BARB * width + 1)
  const finish = endAt(
    { r: edge + apart + width / 2 + aside, z: Math.max(z, gate.z + width + 8) },
    width,
    'up',
  )
  // Level until past the corner above, or the turn would cut through it.
  const past = endAt({ r: edge + aside, z: gate.z }, width, 'out')
  return { stretches: [...bend(start, past), ...bend(past, finish)], start, finish }
}

/** Air comes in level from outside; under a plate it comes from beside the stove, above one it comes down. */
const inflow = (section: SectionGeometry, gate: Gate, finish: End): End => {
  const width = widthOf(finish)
  const r = section.radius + OUTSIDE_REACH
  if (gate.tin === 'wall') return endAt({ r, z: gate.z }, width, 'in')
  if (finish.way === 'down') return endAt({ r: gate.r, z: gate.z + 12 }, width, 'down')
  return endAt({ r, z: Math.max(width / 2, gate.z - width / 2 - 5) }, width, 'in')
}

/** Ways between the gates and the open air: what comes in, and what goes out. */
export const openAirCourses = (
  section: SectionGeometry,
  gates: readonly Gate[],
  scale: WidthPerFlow,
): readonly { readonly gate: Gate; readonly into: boolean; readonly course: Course }[] => {
  let aside = 0
  return gates
    .filter(({ before, behind }) => before === null || behind === null)
    .sort((a, b) => b.z - a.z)
    .map((gate) => {
      // Into the stove: out of the open air, which is the room named null.
      const into = gate.before === null ? gate.flow > 0 : gate.flow < 0
      if (into) {
        const finish = gateEnd(gate, scale, wayOutOf(gate, null))
        const start = inflow(section, gate, finish)
        return { gate, into, course: { stretches: bend(start, finish), start, finish } }
      }
      const course = outflow(section, gate, gateEnd(gate, scale, wayInto(gate, null)), aside)
      // What leaves lower down rises outside of what left higher up.
      if (gate.tin === 'wall') aside += spanLength(gateSpan(gate, scale)) + 1
      return { gate, into, course }
    })
}
