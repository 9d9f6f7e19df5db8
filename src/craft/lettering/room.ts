import { type Box, directionOf, grow, liesIn, lineBoxes, type TextShape } from '../box.ts'
import type { Layer, Point, Shape } from '../drawing.ts'
import { emOf, textWidth } from './measure.ts'
import { nothingTaken } from './taken.ts'

/** Lines of text that stay together, the first on top. */
export interface Label {
  readonly lines: readonly string[]
  /** Height of a capital [mm]. */
  readonly size: number
  readonly layer?: Layer
  /** Anticlockwise; 90 for text that reads upwards [deg]. */
  readonly angle?: number
  /** Kept free before and after the text, where it would run into other text [mm]. */
  readonly beside?: number
}

/** Space kept on the paper all round text, and at least before and after it [mm]. */
const CLEAR = 1.2
const CLEAR_BESIDE = 2.2

/** From base line to base line [em]. */
export const LINE_SPACING = 1.15

/** The text of a label whose middle is at `middle`. */
export const labelShapes = (
  { lines, size, layer = 'text', angle = 0 }: Label,
  middle: Point,
): readonly TextShape[] => {
  const pitch = emOf(size) * LINE_SPACING
  const first = ((lines.length - 1) * pitch) / 2 - size / 2
  const { sin, cos } = directionOf(angle)
  return lines.map((text, index) => {
    const down = first - index * pitch
    const at = { x: middle.x - down * sin, y: middle.y + down * cos }
    return { kind: 'text', layer, at, text, size, anchor: 'middle', angle }
  })
}

/** Width and height of a label as it stands on the paper [mm]. */
export const labelSize = ({
  lines,
  size,
  angle = 0,
}: Label): { readonly width: number; readonly height: number } => {
  const long = Math.max(...lines.map((line) => textWidth(line, size)))
  const tall = emOf(size) * (0.95 + (lines.length - 1) * LINE_SPACING)
  return Math.abs(angle) < 45 ? { width: long, height: tall } : { width: tall, height: long }
}

/** Where a label may have its middle, and how far it is turned there besides its own angle [mm, deg]. */
export interface Spot extends Point {
  readonly turn?: number
}

/** A piece of paper on which text looks for places that nothing else has taken. */
export interface Room {
  /** Keeps text off a box. */
  readonly block: (box: Box) => void
  /** Keeps text off a disc. */
  readonly blockCircle: (centre: Point, radius: number) => void
  readonly isFree: (box: Box) => boolean
  /** Takes a box if it is free, and says whether it was. */
  readonly claim: (box: Box) => boolean
  /** Sets a label with its middle on the first spot where it is clear of everything; nothing if there is none. */
  readonly letter: (label: Label, spots: Iterable<Spot>) => readonly Shape[]
}

/** `within` is asked besides the bounds, for paper that is not a rectangle. */
export const openRoom = (bounds: Box, within: (box: Box) => boolean = () => true): Room => {
  const taken = nothingTaken()
  const free = (box: Box, along = CLEAR, across = CLEAR): boolean => {
    const wide = grow(box, CLEAR)
    const apart = {
      left: box.left - along,
      right: box.right + along,
      bottom: box.bottom - across,
      top: box.top + across,
    }
    // The dear question last: paper that is not a rectangle has to work out where every corner lies.
    return liesIn(wide, bounds) && !taken.boxMeets(apart) && !taken.circleMeets(wide) && within(wide)
  }
  return {
    block: taken.box,
    blockCircle: taken.circle,
    isFree: (box) => free(box, CLEAR_BESIDE),
    claim: (box) => {
      const isFree = free(box)
      if (isFree) taken.box(box)
      return isFree
    },
    letter: (label, spots) => {
      const { lines, size, beside = CLEAR_BESIDE } = label
      const widths = lines.map((line) => textWidth(line, size))
      const pitch = emOf(size) * LINE_SPACING
      const first = ((lines.length - 1) * pitch) / 2 - size / 2
      for (const spot of spots) {
        const angle = (label.angle ?? 0) + (spot.turn ?? 0)
        const way = directionOf(angle)
        const isLevel = Math.abs(way.cos) > Math.SQRT1_2
        const [along, across] = isLevel ? [beside, CLEAR] : [CLEAR, beside]
        const filled: Box[] = []
        const fits = widths.every((width, index) => {
          const down = first - index * pitch
          const middle = { x: spot.x - down * way.sin, y: spot.y + down * way.cos }
          for (const box of lineBoxes(middle, width, size, way)) {
            if (!free(box, along, across)) return false
            filled.push(box)
          }
          return true
        })
        if (!fits) continue
        for (const box of filled) taken.box(box)
        return labelShapes({ ...label, angle }, spot)
      }
      return []
    },
  }
}

/** Spots on a line at height `y`, from `x` outwards to both sides, none further than `reach`. */
export function* besides(x: number, y: number, reach: number, step = 2): Generator<Point> {
  yield { x, y }
  for (let away = step; away <= reach; away += step) {
    yield { x: x + away, y }
    yield { x: x - away, y }
  }
}
