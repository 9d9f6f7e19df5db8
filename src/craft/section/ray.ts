import type { PatternOpening } from '#stove/model.ts'
import { mm } from './half.ts'
import { type Span, spanAbout } from './span.ts'

/** One hole of a floor pattern, turned into the cut: a stretch of radius without tin [mm]. */
export interface RayHole extends Span {
  /** Middle of the hole out from the axis [mm]. */
  readonly middle: number
}

/** Holes turned into the cut stand at least this many diameters apart, or they would read as one slot [1]. */
const APART = 1.8
/** A hole nearer to the axis than this is in the middle [mm]. */
const CENTRE = 1e-6

/**
 * Holes of a pattern as a section shows them. Drawings turn what lies on a circle into the cutting plane: each hole
 * keeps its radius and size, the outermost comes first, and what would run into another is left out. By radius.
 */
export const rayHoles = (pattern: PatternOpening): readonly RayHole[] => {
  const diameter = mm(pattern.diameter)
  const kept: RayHole[] = []
  for (const middle of pattern.holes.map(({ radius }) => mm(radius)).sort((a, b) => b - a)) {
    const inner = kept.at(-1)?.middle ?? Number.POSITIVE_INFINITY
    // Beside the axis a hole meets its own mirror image.
    const clearOfAxis = middle < CENTRE || 2 * middle >= APART * diameter
    if (inner - middle < APART * diameter || !clearOfAxis) continue
    kept.push({ middle: middle < CENTRE ? 0 : middle, ...spanAbout(middle, diameter) })
  }
  return kept.reverse()
}
