import { type Box, boxesMeet, circleMeetsBox, grow, liesIn, shapeBox } from '../box.ts'
import type { Layer, Point, Shape } from '../drawing.ts'
import { emOf, textWidth } from './measure.ts'

/** Lines of text that stay together, the first on top. */
export interface Label {
  readonly lines: readonly string[]
  /** Height of a capital [mm]. */
  readonly size: number
  readonly layer?: Layer
  /** 0, or 90 for text that reads upwards. */
  readonly angle?: 0 | 90
  /** Kept free before and after the text, where it would run into other text [mm]. */
  readonly beside?: number
}

/** Space kept on the paper all round text, and at least before and after it [mm]. */
const CLEAR = 1.2
const CLEAR_BESIDE = 2.2

/** From base line to base line [em]. */
export const LINE_SPACING = 1.15

type TextShape = Extract<Shape, { kind: 'text' }>

/** The text of a label whose middle is at `middle`. */
export const labelShapes = (
  { lines, size, layer = 'text', angle = 0 }: Label,
  middle: Point,
): readonly TextShape[] => {
  const pitch = emOf(size) * LINE_SPACING
  const first = ((lines.length - 1) * pitch) / 2 - size / 2
  return lines.map((text, index) => {
    const down = first - index * pitch
    const at = angle === 0 ? { x: middle.x, y: middle.y + down } : { x: middle.x - down, y: middle.y }
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
  return angle === 0 ? { width: long, height: tall } : { width: tall, height: long }
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
  readonly letter: (label: Label, spots: Iterable<Point>) => readonly Shape[]
}

const shifted = ({ left, right, bottom, top }: Box, { x, y }: Point): Box => ({
  left: left + x,
  right: right + x,
  bottom: bottom + y,
  top: top + y,
})

/** `within` is asked besides the bounds, for paper that is not a rectangle. */
export const openRoom = (bounds: Box, within: (box: Box) => boolean = () => true): Room => {
  const blocked: Box[] = []
  const circles: { readonly centre: Point; readonly radius: number }[] = []
  const free = (box: Box, along = CLEAR, across = CLEAR): boolean => {
    const wide = grow(box, CLEAR)
    const apart = {
      left: box.left - along,
      right: box.right + along,
      bottom: box.bottom - across,
      top: box.top + across,
    }
    return (
      liesIn(wide, bounds) &&
      within(wide) &&
      !blocked.some((other) => boxesMeet(apart, other)) &&
      !circles.some(({ centre, radius }) => circleMeetsBox(centre, radius, wide))
    )
  }
  return {
    block: (box) => {
      blocked.push(box)
    },
    blockCircle: (centre, radius) => {
      circles.push({ centre, radius })
    },
    isFree: (box) => free(box, CLEAR_BESIDE),
    claim: (box) => {
      const isFree = free(box)
      if (isFree) blocked.push(box)
      return isFree
    },
    letter: (label, spots) => {
      const origin = { x: 0, y: 0 }
      const boxes = labelShapes(label, origin).map(shapeBox)
      const { angle = 0, beside = CLEAR_BESIDE } = label
      const [along, across] = angle === 0 ? [beside, CLEAR] : [CLEAR, beside]
      for (const spot of spots) {
        const taken = boxes.map((box) => shifted(box, spot))
        if (!taken.every((box) => free(box, along, across))) continue
        blocked.push(...taken)
        return labelShapes(label, spot)
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
