import { long } from '#basis/text/bothUnits.ts'
import type { Drawing, Shape } from '../../drawing.ts'
import type { Strip } from '../../flat/strip.ts'
import { stripHoleShapes, stripHoles } from '../../flat/stripHoles.ts'
import { drawScene, line, PICTURE_WIDTH, rectangle, tick, upright } from './page.ts'

export interface StripScene {
  readonly title: string
  readonly strip: Strip
  /** Rows that are there already, by name. */
  readonly there: ReadonlySet<string>
  /** Rows this step is about. */
  readonly made: ReadonlySet<string>
  /** Whether it cuts them or only marks them out. */
  readonly look: 'cut' | 'marked'
  readonly outline: 'cut' | 'paper'
  readonly captions: readonly string[]
}

const scaled = (shape: Shape, by: number): Shape => {
  const point = ({ x, y }: { readonly x: number; readonly y: number }) => ({ x: x * by, y: y * by })
  switch (shape.kind) {
    case 'line':
      return { ...shape, from: point(shape.from), to: point(shape.to) }
    case 'polyline':
      return { ...shape, points: shape.points.map(point) }
    case 'circle':
    case 'arc':
      return { ...shape, centre: point(shape.centre), radius: shape.radius * by }
    case 'text':
      return { ...shape, at: point(shape.at), size: shape.size * by }
  }
}

/** A band rolled out flat, as it is cut: as wide as the picture, its rows in place. */
export const stripPicture = ({ title, strip, there, made, look, outline, captions }: StripScene): Drawing => {
  const { length, tab } = strip
  const height = (strip.high - strip.low) * 1000
  const scale = Math.min(1, (PICTURE_WIDTH - 12) / (length + tab))
  const holes = stripHoles(strip)
    .filter(({ row, leftOut }) => !leftOut && (made.has(row.name) || there.has(row.name)))
    .flatMap((hole) =>
      stripHoleShapes(strip, hole).map((shape) => ({
        ...scaled(shape, scale),
        layer: made.has(hole.row.name)
          ? look === 'cut'
            ? ('cut' as const)
            : ('drill' as const)
          : ('paper' as const),
      })),
    )
  const rows = strip.rows.filter(({ name }) => made.has(name))
  return drawScene(title, {
    shapes: [
      rectangle(outline, { left: 0, right: (length + tab) * scale, bottom: 0, top: height * scale }),
      line('mark', { x: length * scale, y: 0 }, { x: length * scale, y: height * scale }),
      ...holes,
      ...upright((length + tab) * scale + 3, 0, height * scale),
      line('dimension', { x: length * scale, y: -2.5 }, { x: (length + tab) * scale, y: -2.5 }),
      tick({ x: length * scale, y: -2.5 }),
      tick({ x: (length + tab) * scale, y: -2.5 }),
    ],
    labels: [],
    captions: [
      `${long(strip.high - strip.low)} high, ${long(length / 1000)} once round and ${long(tab / 1000)} of overlap at the end.`,
      ...rows.map(
        ({ name, row }) =>
          `${name}: ${row.count - row.leftOut.length}, ${long(row.height)} up to the centre.`,
      ),
      ...captions,
    ],
  })
}
