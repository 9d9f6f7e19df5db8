import { long } from '#basis/text/bothUnits.ts'
import { boxRound } from '../../box.ts'
import type { Drawing, Point, Shape } from '../../drawing.ts'
import { outline as outlineOf } from '../../flat/outline.ts'
import type { Strip } from '../../flat/strip.ts'
import { stripHoleShapes, stripHoles } from '../../flat/stripHoles.ts'
import { drawScene, line, PICTURE_WIDTH, tick, upright } from './page.ts'

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

/** A band rolled out flat, as it is cut: as wide as the picture, with its overlap, its finger tabs and its rows in place. */
export const stripPicture = ({ title, strip, there, made, look, outline, captions }: StripScene): Drawing => {
  const { length, tab, development } = strip
  const edges = outlineOf(strip)
  const box = boxRound(edges)
  const scale = Math.min(1, (PICTURE_WIDTH - 12) / (box.right - box.left))
  const around = edges.map((shape) => ({
    ...scaled(shape, scale),
    layer: shape.layer === 'cut' ? outline : shape.layer,
  }))
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
  const at = (along: number, up: number): Point => {
    const { x, y } = development.at(along, up)
    return { x: x * scale, y: y * scale }
  }
  const [join, end] = [at(length, 0), at(length + tab, 0)]
  const under = Math.min(join.y, end.y) - 2.5
  // Where the edges are arcs a height beside them would stand askew: the words say it.
  const height = development.isTapered
    ? []
    : upright(box.right * scale + 3, 0, at(length, development.height).y)
  return drawScene(title, {
    shapes: [
      ...around,
      ...holes,
      ...height,
      line('dimension', { x: join.x, y: under }, { x: end.x, y: under }),
      tick({ x: join.x, y: under }),
      tick({ x: end.x, y: under }),
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
