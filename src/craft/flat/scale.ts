import { around, boxRound, grow, shapeBox } from '../box.ts'
import type { Point, Shape } from '../drawing.ts'
import { type Label, labelShapes, type Room } from '../lettering/room.ts'
import { NOTE_SIZE } from '../lettering/sizes.ts'
import { setDown } from '../move.ts'
import { alongStrip } from './bearing.ts'
import type { Strip } from './strip.ts'

const TICK = 1.6
const LONG_TICK = 2.6
const POINTER = 3.6
/** From an edge to the middle of the numbers, with their heads or their feet towards it [mm]. */
const NUMBERS = { heads: 5.5, feet: 5.9 }
/** More than that for numbers that stand askew [mm]. */
const FOR_TURNED = 0.9
/** Kept free round the name of the front by the line there [mm]. */
const BESIDE_NAME = 0.6

type Edge = { readonly up: number; readonly inward: 1 | -1 }

/** A small pointer on an edge, its tip inward. */
const pointer = ({ development: { at, turnAt } }: Strip, along: number, { up, inward }: Edge): Shape =>
  setDown(
    {
      kind: 'polyline',
      layer: 'dimension',
      closed: true,
      points: [
        { x: -1.8, y: 0 },
        { x: 1.8, y: 0 },
        { x: 0, y: inward * POINTER },
      ],
    },
    at(along, up),
    turnAt(along),
  )

interface Name {
  readonly label: Label
  readonly spots: readonly Point[]
}

/** The name of a bearing and where its middle may go: under its tick; that of the front under the pointer or beside it. */
const nameOf = (strip: Strip, { up, inward }: Edge, bearing: number): Name => {
  const along = alongStrip(strip, bearing)
  const { isTapered, turnAt } = strip.development
  const away = (inward === 1 ? NUMBERS.feet : NUMBERS.heads) + (isTapered ? FOR_TURNED : 0)
  const under = (depth: number, aside = 0): Point => strip.development.at(along + aside, up + inward * depth)
  return {
    label: {
      lines: [bearing === 0 ? 'FRONT' : `${bearing}°`],
      size: NOTE_SIZE,
      layer: 'dimension',
      angle: turnAt(along),
    },
    spots:
      bearing === 0 ? [under(away + POINTER - LONG_TICK), under(away, 8), under(away, -8)] : [under(away)],
  }
}

const NUMBERED = Array.from({ length: 12 }, (_, index) => 30 * index)

/** How many numbers find room along an edge. */
const roomAlong = (strip: Strip, edge: Edge, room: Room): number =>
  NUMBERED.filter((bearing) => {
    const { label, spots } = nameOf(strip, edge, bearing)
    return spots.some((spot) => labelShapes(label, spot).every((shape) => room.isFree(shapeBox(shape))))
  }).length

/** How finely a line is looked at for where it meets a name [mm]. */
const STEP = 0.1

/** From where to where a line up the wall can run without meeting a name near one of its ends. */
const clearOf = (
  name: Shape | undefined,
  { development: { at, height } }: Strip,
  along: number,
): readonly [number, number] => {
  if (name === undefined) return [0, height]
  const box = grow(shapeBox(name), BESIDE_NAME)
  const met = Array.from({ length: Math.ceil(height / STEP) }, (_, index) => index * STEP).filter((up) => {
    const { x, y } = at(along, up)
    return x > box.left && x < box.right && y > box.bottom && y < box.top
  })
  const [first, last] = [met[0], met.at(-1)]
  if (first === undefined || last === undefined) return [0, height]
  return first > height / 2 ? [0, first] : [Math.min(height, last + STEP), height]
}

/**
 * Bearings along the edge of a strip that has more room for them, every 10° with a number every 30°; the
 * front is a line with a pointer on either edge. A number whose place a hole has taken is left out.
 */
export const bearingScale = (strip: Strip, room: Room): readonly Shape[] => {
  const { at, height } = strip.development
  const [upper, lower]: readonly [Edge, Edge] = [
    { up: height, inward: -1 },
    { up: 0, inward: 1 },
  ]
  const edge = roomAlong(strip, upper, room) >= roomAlong(strip, lower, room) ? upper : lower
  const front = alongStrip(strip, 0)
  const pointers = [upper, lower].map((each) => pointer(strip, front, each))
  for (const shape of pointers) room.block(boxRound([shape]))
  const ticks = Array.from({ length: 35 }, (_, index): Shape => {
    const bearing = 10 * (index + 1)
    const along = alongStrip(strip, bearing)
    const long = bearing % 30 === 0 ? LONG_TICK : TICK
    const [from, to] = [at(along, edge.up), at(along, edge.up + edge.inward * long)]
    room.block(around([from, to]))
    return { kind: 'line', layer: 'dimension', from, to }
  })
  const names = NUMBERED.map((bearing) => {
    const { label, spots } = nameOf(strip, edge, bearing)
    return room.letter(label, spots)
  })
  // The front's line leaves its name open.
  const [low, high] = clearOf(names[0]?.[0], strip, front)
  const line = { from: at(front, low), to: at(front, high) }
  const pieces = strip.development.isTapered ? Math.ceil((high - low) / 2) : 1
  for (let index = 0; index < pieces; index += 1) {
    const up = (share: number): Point => at(front, low + share * (high - low))
    room.block(grow(around([up(index / pieces), up((index + 1) / pieces)]), 0.2))
  }
  return [{ kind: 'line', layer: 'mark', ...line }, ...pointers, ...ticks, ...names.flat()]
}
