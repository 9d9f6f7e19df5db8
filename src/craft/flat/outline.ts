import type { Layer, Point, Shape } from '../drawing.ts'
import { alongStrip } from './bearing.ts'
import type { Strip } from './strip.ts'

/** A finger tab to turn a hot band by with a stick or pliers, and how its corners are taken off [mm]. Workshop judgement, no source. */
export const FINGER_TAB = { width: 16, height: 12, corner: 3 }

/** The four corners of a finger tab, from the right; the first and last lie on the upper edge. */
export const tabCorners = (
  { development: { at, height, length, roundAt } }: Strip,
  along: number,
): readonly Point[] => {
  const { width, height: tall, corner } = FINGER_TAB
  const wide = length / roundAt(height)
  return [
    at(along + (width / 2) * wide, height),
    at(along + (width / 2) * wide, height + tall - corner),
    at(along + (width / 2 - corner) * wide, height + tall),
    at(along - (width / 2 - corner) * wide, height + tall),
    at(along - (width / 2) * wide, height + tall - corner),
    at(along - (width / 2) * wide, height),
  ]
}

/** The overlap beyond the join, its corners slanted, from below. */
const overlap = ({ development: { at, length, height }, tab }: Strip): readonly Point[] => {
  const slant = Math.min(3, height / 4)
  return [at(length, 0), at(length + tab, slant), at(length + tab, height - slant), at(length, height)]
}

/** The outline of a wall that tapers: its edges are arcs, so it is drawn piece by piece. */
const taperedOutline = (strip: Strip, layer: Layer, tabs: readonly number[]): readonly Shape[] => {
  const { at, length, height, round, roundAt } = strip.development
  const half = (FINGER_TAB.width / 2) * (length / roundAt(height))
  const stops = [0, ...[...tabs].reverse().flatMap((along) => [along - half, along + half]), length]
  const between = stops.flatMap((from, index) =>
    index % 2 === 0 ? [round(layer, height, from, stops[index + 1] ?? length)] : [],
  )
  return [
    { kind: 'line', layer, from: at(0, 0), to: at(0, height) },
    round(layer, 0, 0, length),
    ...between,
    { kind: 'polyline', layer, closed: false, points: overlap(strip) },
    ...tabs.map(
      (along): Shape => ({ kind: 'polyline', layer, closed: false, points: tabCorners(strip, along) }),
    ),
  ]
}

/**
 * The strip's outline with its overlap and tabs, the line where the ends meet, the lines tabs are folded
 * along, and the edges that the can is cut off along.
 */
export const outline = (strip: Strip): readonly Shape[] => {
  const { stuff, development, cutEdges } = strip
  const { at, length, height, round, roundAt } = development
  const layer: Layer = stuff === 'tin' ? 'cut' : 'paper'
  // From the right, as the upper edge is drawn.
  const tabs = strip.fingerTabs.map((bearing) => alongStrip(strip, bearing)).sort((a, b) => b - a)
  const half = (FINGER_TAB.width / 2) * (length / roundAt(height))
  const edge: readonly Shape[] = development.isTapered
    ? taperedOutline(strip, layer, tabs)
    : [
        {
          kind: 'polyline',
          layer,
          closed: true,
          points: [
            at(0, 0),
            ...overlap(strip),
            ...tabs.flatMap((along) => tabCorners(strip, along)),
            at(0, height),
          ],
        },
      ]
  return [
    ...edge,
    { kind: 'line', layer: 'mark', from: at(length, 0), to: at(length, height) },
    ...tabs.map((along) => round('fold', height, along - half, along + half)),
    ...(cutEdges.lower ? [round('cut', 0, 0, length)] : []),
    ...(cutEdges.upper ? [round('cut', height, 0, length)] : []),
  ]
}
