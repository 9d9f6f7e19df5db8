import type { Metres } from '#basis/units.ts'
import type { PatternOpening } from '#stove/model.ts'
import type { FaceOpening, FlatDisc } from './disc.ts'
import { bearingText, both } from './wording.ts'

/** Two radii closer than this are one ring [m]. */
const SAME_RING = 1e-6

/** The rings of a pattern, innermost first; the hole in the middle is no ring. */
export const rings = (
  pattern: PatternOpening,
): readonly { readonly radius: Metres; readonly bearings: readonly number[] }[] => {
  const found: { radius: Metres; bearings: number[] }[] = []
  for (const { radius, bearing } of [...pattern.holes].sort((a, b) => a.radius - b.radius)) {
    if (radius < SAME_RING) continue
    const last = found.at(-1)
    if (last !== undefined && radius - last.radius < SAME_RING) last.bearings.push(bearing)
    else found.push({ radius, bearings: [bearing] })
  }
  return found
}

/** Radii that a maker can strike with a compass: rings of holes, the ends of vanes [m]. */
export const ringRadii = (opening: FaceOpening): readonly Metres[] => {
  switch (opening.kind) {
    case 'pattern':
      return opening.layout === 'rings' ? rings(opening).map(({ radius }) => radius) : []
    case 'bore':
      return []
    case 'vanes':
      return [opening.innerRadius, opening.outerRadius]
  }
}

const holes = (count: number): string => `${count} hole${count === 1 ? '' : 's'}`

const patternNote = (pattern: PatternOpening): string => {
  const size = `drill ${holes(pattern.holes.length)} Ø ${both(pattern.diameter)}${pattern.bit === null ? '' : `, bit ${pattern.bit}`}`
  if (pattern.layout !== 'rings') {
    const manner = pattern.layout === 'hexagonal' ? 'like a honeycomb' : 'like the seeds of a sunflower'
    return `${size}, spread ${manner}: punch every cross.`
  }
  const middle = pattern.holes.some(({ radius }) => radius < SAME_RING) ? ['1 in the middle'] : []
  const each = rings(pattern).map(
    ({ radius, bearings }) =>
      `${bearings.length} on radius ${both(radius)} from ${bearingText(Math.min(...bearings))}`,
  )
  return `${size}: ${[...middle, ...each].join('; ')}.`
}

/** Which side of the paper a tongue is bent to. */
const SIDE: Readonly<Record<'up' | 'down', Readonly<Record<FlatDisc['seen'], string>>>> = {
  up: {
    'from above': 'Up is towards you as you read the print.',
    'from below': 'Up is away from you as you read the print, into the can.',
  },
  down: {
    'from above': 'Down is away from you as you read the print.',
    'from below': 'Down is towards you as you read the print.',
  },
}

/** All there is to say about an opening in a face, for the notes under the disc. */
export const faceNote = (name: string, opening: FaceOpening, seen: FlatDisc['seen']): string => {
  switch (opening.kind) {
    case 'pattern':
      return `${name}: ${patternNote(opening)}`
    case 'bore':
      return `${name}: cut the bore Ø ${both(opening.diameter)} in the middle.`
    case 'vanes': {
      const { count, innerRadius, outerRadius, width, angle, bend, hand } = opening
      return (
        `${name}: ${count} vanes ${both(width)} wide, from radius ${both(innerRadius)} to ${both(outerRadius)}. ` +
        `Cut each tongue free along its three solid sides and bend it ${bend} ${bearingText(angle)} along the dash-dot line, ` +
        `so that the gas turns ${hand} seen from above. ${SIDE[bend][seen]}`
      )
    }
  }
}
