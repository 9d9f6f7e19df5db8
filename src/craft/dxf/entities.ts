import type { Point, Shape } from '../drawing.ts'
import { textWidth } from '../lettering/measure.ts'
import { decimal, type Group, point, whole, word } from './groups.ts'
import { LAYER_LOOKS } from './layers.ts'
import { plainText } from './plainText.ts'

const RADIANS = Math.PI / 180

/** R12 has angles from 0 up to 360 [deg]. */
const turn = (angle: number): number => ((angle % 360) + 360) % 360

/**
 * Text between two points (FIT, code 72 = 5): whatever letters the reader has, the words keep the height and the
 * length that room was kept for.
 */
const textEntity = (shape: Extract<Shape, { kind: 'text' }>, layer: Group): readonly Group[] => {
  const { at, text, size, anchor, angle } = shape
  const width = textWidth(text, size)
  const before = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width
  const along = (distance: number): Point => ({
    x: at.x + distance * Math.cos(angle * RADIANS),
    y: at.y + distance * Math.sin(angle * RADIANS),
  })
  return [
    word(0, 'TEXT'),
    layer,
    ...point(10, along(before)),
    decimal(40, size),
    word(1, plainText(text)),
    decimal(50, turn(angle)),
    word(7, 'STANDARD'),
    whole(72, 5),
    ...point(11, along(before + width)),
  ]
}

/** A shape as R12 has it: circles and arcs stay what they are, bent lines are POLYLINEs. */
export const entity = (shape: Shape): readonly Group[] => {
  const layer = word(8, LAYER_LOOKS[shape.layer].name)
  switch (shape.kind) {
    case 'line':
      return [word(0, 'LINE'), layer, ...point(10, shape.from), ...point(11, shape.to)]
    case 'polyline':
      return [
        word(0, 'POLYLINE'),
        layer,
        whole(66, 1),
        ...point(10, { x: 0, y: 0 }),
        whole(70, shape.closed ? 1 : 0),
        ...shape.points.flatMap((corner) => [word(0, 'VERTEX'), layer, ...point(10, corner)]),
        word(0, 'SEQEND'),
        layer,
      ]
    case 'circle':
      return [word(0, 'CIRCLE'), layer, ...point(10, shape.centre), decimal(40, shape.radius)]
    case 'arc':
      return [
        word(0, 'ARC'),
        layer,
        ...point(10, shape.centre),
        decimal(40, shape.radius),
        decimal(50, turn(shape.from)),
        decimal(51, turn(shape.to)),
      ]
    case 'text':
      return textEntity(shape, layer)
  }
}
