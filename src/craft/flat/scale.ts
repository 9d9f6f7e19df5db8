import { around, type Box, grow, shapeBox } from '../box.ts'
import type { Point, Shape } from '../drawing.ts'
import { type Label, labelShapes, type Room } from '../lettering/room.ts'
import { NOTE_SIZE } from '../lettering/sizes.ts'
import { alongStrip, type Unrolled } from './bearing.ts'

const TICK = 1.6
const LONG_TICK = 2.6
const POINTER = 3.6
/** From an edge to the middle of the numbers, with their heads or their feet towards it [mm]. */
const NUMBERS = { heads: 5.5, feet: 5.9 }
/** Kept free round the name of the front by the line there [mm]. */
const BESIDE_NAME = 0.6

/** A small pointer on an edge, its tip inward. */
const pointer = (x: number, { at, inward }: Edge): Shape => ({
  kind: 'polyline',
  layer: 'dimension',
  closed: true,
  points: [
    { x: x - 1.8, y: at },
    { x: x + 1.8, y: at },
    { x, y: at + inward * POINTER },
  ],
})

type Edge = { readonly at: number; readonly inward: 1 | -1 }

interface Name {
  readonly label: Label
  readonly spots: readonly Point[]
}

/** The name of a bearing and where its middle may go: under its tick; that of the front under the pointer or beside it. */
const nameOf = (strip: Unrolled, { at, inward }: Edge, bearing: number): Name => {
  const x = alongStrip(strip, bearing)
  const away = inward === 1 ? NUMBERS.feet : NUMBERS.heads
  const under = (depth: number, aside = 0): Point => ({ x: x + aside, y: at + inward * depth })
  return {
    label: { lines: [bearing === 0 ? 'FRONT' : `${bearing}°`], size: NOTE_SIZE, layer: 'dimension' },
    spots:
      bearing === 0 ? [under(away + POINTER - LONG_TICK), under(away, 8), under(away, -8)] : [under(away)],
  }
}

const NUMBERED = Array.from({ length: 12 }, (_, index) => 30 * index)

/** How many numbers find room along an edge. */
const roomAlong = (strip: Unrolled, edge: Edge, room: Room): number =>
  NUMBERED.filter((bearing) => {
    const { label, spots } = nameOf(strip, edge, bearing)
    return spots.some((spot) => labelShapes(label, spot).every((shape) => room.isFree(shapeBox(shape))))
  }).length

/** From where to where an upright line can run without meeting a name near one of its ends. */
const clearOf = (name: Shape | undefined, x: number, height: number): readonly [number, number] => {
  if (name === undefined) return [0, height]
  const { left, right, bottom, top } = grow(shapeBox(name), BESIDE_NAME)
  if (x < left || x > right) return [0, height]
  return bottom > height / 2 ? [0, bottom] : [top, height]
}

/**
 * Bearings along the edge of a strip that has more room for them, every 10° with a number every 30°; the
 * front is a line with a pointer on either edge. A number whose place a hole has taken is left out.
 */
export const bearingScale = (strip: Unrolled, height: number, room: Room): readonly Shape[] => {
  const [upper, lower]: readonly [Edge, Edge] = [
    { at: height, inward: -1 },
    { at: 0, inward: 1 },
  ]
  const edge = roomAlong(strip, upper, room) >= roomAlong(strip, lower, room) ? upper : lower
  const front = alongStrip(strip, 0)
  const inward = (x: number, half: number, { at, inward: way }: Edge, long: number): Box =>
    around([
      { x: x - half, y: at },
      { x: x + half, y: at + way * long },
    ])
  for (const each of [upper, lower]) room.block(inward(front, 2, each, POINTER))
  const ticks = Array.from({ length: 35 }, (_, index): Shape => {
    const bearing = 10 * (index + 1)
    const x = alongStrip(strip, bearing)
    const long = bearing % 30 === 0 ? LONG_TICK : TICK
    room.block(inward(x, 0.2, edge, long))
    return {
      kind: 'line',
      layer: 'dimension',
      from: { x, y: edge.at },
      to: { x, y: edge.at + edge.inward * long },
    }
  })
  const names = NUMBERED.map((bearing) => {
    const { label, spots } = nameOf(strip, edge, bearing)
    return room.letter(label, spots)
  })
  // The front's line leaves its name open.
  const [low, high] = clearOf(names[0]?.[0], front, height)
  room.block({ left: front - 0.2, right: front + 0.2, bottom: low, top: high })
  return [
    { kind: 'line', layer: 'mark', from: { x: front, y: low }, to: { x: front, y: high } },
    pointer(front, upper),
    pointer(front, lower),
    ...ticks,
    ...names.flat(),
  ]
}
