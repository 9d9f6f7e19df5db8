import { type Box, boxesMeet, circleMeetsBox } from '../box.ts'
import type { Point } from '../drawing.ts'

/** What is taken of a piece of paper, kept by squares so that a question looks only at what lies near. */
export interface Taken {
  readonly box: (box: Box) => void
  readonly circle: (centre: Point, radius: number) => void
  readonly boxMeets: (box: Box) => boolean
  readonly circleMeets: (box: Box) => boolean
}

/** Side of a square [mm]: about as wide as an opening. */
const SIDE = 10
/** More squares across than any sheet has. */
const ACROSS = 4096

interface Square {
  readonly boxes: Box[]
  readonly circles: { readonly centre: Point; readonly radius: number }[]
}

const range = (low: number, high: number): readonly [number, number] => [
  Math.floor(low / SIDE) + ACROSS / 2,
  Math.floor(high / SIDE) + ACROSS / 2,
]

export const nothingTaken = (): Taken => {
  const squares = new Map<number, Square>()
  const each = (box: Box, visit: (key: number) => void): void => {
    const [left, right] = range(box.left, box.right)
    const [bottom, top] = range(box.bottom, box.top)
    for (let column = left; column <= right; column += 1)
      for (let row = bottom; row <= top; row += 1) visit(column * ACROSS + row)
  }
  const squareAt = (key: number): Square => {
    const known = squares.get(key)
    if (known !== undefined) return known
    const fresh: Square = { boxes: [], circles: [] }
    squares.set(key, fresh)
    return fresh
  }
  const some = (box: Box, test: (square: Square) => boolean): boolean => {
    const [left, right] = range(box.left, box.right)
    const [bottom, top] = range(box.bottom, box.top)
    for (let column = left; column <= right; column += 1)
      for (let row = bottom; row <= top; row += 1) {
        const square = squares.get(column * ACROSS + row)
        if (square !== undefined && test(square)) return true
      }
    return false
  }
  return {
    box: (box) => each(box, (key) => squareAt(key).boxes.push(box)),
    circle: (centre, radius) => {
      const { x, y } = centre
      const round = { left: x - radius, right: x + radius, bottom: y - radius, top: y + radius }
      each(round, (key) => squareAt(key).circles.push({ centre, radius }))
    },
    boxMeets: (box) => some(box, ({ boxes }) => boxes.some((other) => boxesMeet(box, other))),
    circleMeets: (box) =>
      some(box, ({ circles }) => circles.some(({ centre, radius }) => circleMeetsBox(centre, radius, box))),
  }
}
