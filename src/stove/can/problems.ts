import type { Problem } from '#basis/problem.ts'
import { closely } from '#basis/text/bothUnits.ts'
import type { Metres } from '#basis/units.ts'
import type { Can, CanEnd, Measured } from '#stove/model.ts'
import { insideHeight, isSeamed } from './ends.ts'
import {
  bodyAtEnd,
  insideAtEnd,
  narrowestBody,
  narrowestInside,
  STEEPEST_TAPER,
  taperAngle,
} from './taper.ts'

const told = (length: Metres): string => (Number.isFinite(length) ? closely(length) : String(length))

const sizeProblem = (field: string, length: Metres): readonly Problem[] =>
  Number.isFinite(length) && length > 0
    ? []
    : [
        {
          code: 'can.size',
          field,
          value: told(length),
          allowed: 'a length above 0 mm',
          fix: 'Measure the can again.',
        },
      ]

const measuredProblems = (field: string, { value, tolerance }: Measured): readonly Problem[] => {
  const sized = sizeProblem(field, value)
  if (sized.length > 0) return sized
  if (Number.isFinite(tolerance) && tolerance >= 0 && tolerance < value) return []
  return [
    {
      code: 'can.tolerance',
      field: `${field}.tolerance`,
      value: told(tolerance),
      allowed: `from 0 mm to less than ${told(value)}`,
      fix: 'Say how far the true length may be from the measured one, 0.5 mm for a ruler.',
    },
  ]
}

const endProblems = (can: Can, which: 'bottom' | 'top', field: string): readonly Problem[] => {
  const end: CanEnd = can[which]
  if (end.kind === 'plain')
    return Number.isFinite(end.countersink) && end.countersink >= 0
      ? []
      : [
          {
            code: 'can.countersink',
            field: `${field}.${which}.countersink`,
            value: told(end.countersink),
            allowed: '0 mm or more',
            fix: 'Measure from the edge of the can down to the flat of its end.',
          },
        ]
  if (end.kind !== 'pull-off' && end.kind !== 'friction') return []
  const sized = measuredProblems(`${field}.${which}.opening`, end.opening)
  if (sized.length > 0) return sized
  const inside = insideAtEnd(can, which)
  return end.opening.value - end.opening.tolerance <= inside.value + inside.tolerance
    ? []
    : [
        {
          code: 'can.opening',
          field: `${field}.${which}.opening`,
          value: told(end.opening.value),
          allowed: `up to the inside of the body, ${told(inside.value)}`,
          fix: 'Measure across the hole that is left in the end; where nothing is left of the end, call it open.',
        },
      ]
}

/**
 * What keeps these dimensions from being a can, each said where it stands; none for a can that can be.
 * Every reader of cans asks this once, so that no calculation meets a can that cannot be.
 */
export const canProblems = (can: Can, field: string): readonly Problem[] => {
  const across = measuredProblems(`${field}.seamDiameter`, can.seamDiameter)
  const sizes = [
    // Where only one of the two was measured the other follows from it, and so does what is wrong with it.
    ...(across.length > 0
      ? across
      : measuredProblems(`${field}.bodyDiameter`, can.taper?.bottom ?? can.bodyDiameter)),
    ...(can.taper === undefined ? [] : measuredProblems(`${field}.topBodyDiameter`, can.taper.top)),
    ...measuredProblems(`${field}.height`, can.height),
    ...sizeProblem(`${field}.bodyWall`, can.bodyWall),
    ...sizeProblem(`${field}.endWall`, can.endWall),
    ...sizeProblem(`${field}.seamHeight`, can.seamHeight),
  ]
  // The rest compares lengths with one another, which needs them to be lengths.
  if (sizes.length > 0) return sizes
  const found: Problem[] = []
  const seamed = (['top', 'bottom'] as const).filter((which) => isSeamed(can[which]))
  const bodies = (seamed.length > 0 ? seamed : (['top'] as const)).map((which) => bodyAtEnd(can, which))
  // Of a can that tapers, the seam is that of the widest edge that has one.
  const body = bodies.reduce((wide, one) => (one.value > wide.value ? one : wide))
  const seam = can.seamDiameter
  if (Math.abs(taperAngle(can)) > STEEPEST_TAPER)
    found.push({
      code: 'can.taper',
      field: `${field}.topBodyDiameter`,
      value: `${told(bodyAtEnd(can, 'top').value)} over ${told(bodyAtEnd(can, 'bottom').value)}, a side that leans ${Math.abs(taperAngle(can)).toFixed(1)}°`,
      allowed: `a side that leans at most ${STEEPEST_TAPER}°`,
      fix: 'Measure the body across at both edges again, and the height.',
    })
  if (body.value - body.tolerance > seam.value + seam.tolerance)
    found.push({
      code: 'can.body-over-seam',
      field: `${field}.bodyDiameter`,
      value: told(body.value),
      allowed: `up to the diameter over the seam, ${told(seam.value)}`,
      fix: 'The seam stands out beyond the body: the two may have been swapped.',
    })
  if (narrowestInside(can).value <= 0)
    found.push({
      code: 'can.wall',
      field: `${field}.bodyWall`,
      value: told(can.bodyWall),
      allowed: `less than half of the body’s ${told(narrowestBody(can).value)}`,
      fix: 'Tin of a can is 0.15 to 0.3 mm thick: look at the unit.',
    })
  found.push(...endProblems(can, 'bottom', field), ...endProblems(can, 'top', field))
  if (insideHeight(can) <= 0)
    found.push({
      code: 'can.height',
      field: `${field}.height`,
      value: told(can.height.value),
      allowed: `more than its countersinks, ${told((can.height.value - insideHeight(can)) as Metres)}`,
      fix: 'Measure the height over both edges, and the countersinks down from them.',
    })
  for (const [index, { from, to }] of can.beads.entries())
    if (!(from >= 0 && from < to && to <= can.height.value))
      found.push({
        code: 'can.bead',
        field: `${field}.beads.${index}`,
        value: `${told(from)} to ${told(to)}`,
        allowed: `a stretch between 0 mm and ${told(can.height.value)}, lower height first`,
        fix: 'Give where the bead begins and ends above the bottom edge.',
      })
  return found
}
