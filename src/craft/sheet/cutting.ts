import { type Box, boxesMeet, grow, liesIn, shapeBox } from '../box.ts'
import type { Drawing, Shape } from '../drawing.ts'
import { CROSS_BEYOND } from '../flat/hole.ts'
import { registrationMarks } from './register.ts'
import { type Keep, type Stretch, type Tiling, tileSide } from './tile.ts'

/** What one page shows of a drawing: all of it, or a piece that is taped to others. */
export interface Cut {
  readonly clip: Box
  readonly shapes: readonly Shape[]
  /** Column from the left and row from the top, from 0. */
  readonly column: number
  readonly row: number
}

/** A drawing cut into pieces no larger than a page's field. */
export interface Cutting {
  readonly drawing: Drawing
  readonly columns: number
  readonly rows: number
  /** Row by row from the top, each from the left. */
  readonly cuts: readonly Cut[]
  /** What the cutting spoils. */
  readonly cost: number
}

export interface FieldSize {
  readonly width: number
  readonly height: number
}

/** What it costs to part a hole at a join, where a line of text costs 1: more than all the text that may be near. */
export const HOLE_COST = 100

/** An edge of a wall that tapers is drawn as arcs, longer than any opening and free to be parted [mm]. */
const LONGEST_OPENING_ARC = 60
const isLongEdge = (shape: Shape): boolean =>
  shape.kind === 'arc' && shapeBox(shape).right - shapeBox(shape).left > LONGEST_OPENING_ARC

/** Holes must be whole on some piece; a line of text had better be. */
const keepsOf = (shapes: readonly Shape[], low: 'left' | 'bottom', high: 'right' | 'top'): readonly Keep[] =>
  shapes.flatMap((shape): readonly Keep[] => {
    const isHole = shape.layer === 'drill' || shape.layer === 'cut'
    if ((!isHole && shape.kind !== 'text') || isLongEdge(shape)) return []
    // A drilled hole with its cross.
    const box = grow(shapeBox(shape), shape.layer === 'drill' ? CROSS_BEYOND : 0)
    return [{ from: box[low], to: box[high], cost: isHole ? HOLE_COST : 1, whole: isHole }]
  })

/** The stretch that is a tile's own: from one join to the next. */
const own = ({ tiles, joins }: Tiling, index: number): Stretch => ({
  from: joins[index - 1] ?? tiles[0]?.from ?? 0,
  to: joins[index] ?? tiles.at(-1)?.to ?? 0,
})

/** Words show where they are whole, or where the joins do not give them to a neighbour. */
const isShown = (shape: Shape, clip: Box, ownBox: Box): boolean => {
  const box = shapeBox(shape)
  if (shape.kind !== 'text') return boxesMeet(grow(box, 0.01), clip)
  return liesIn(box, grow(clip, 1e-6)) || boxesMeet(box, ownBox)
}

/** Bare paper kept round what a piece shows [mm]. */
const MARGIN = 2

/** The part of a clip that has anything on it. */
const used = (clip: Box, shapes: readonly Shape[]): Box => {
  const boxes = shapes.map((shape) => grow(shapeBox(shape), MARGIN))
  const least = (key: 'left' | 'bottom'): number =>
    Math.max(clip[key], Math.min(...boxes.map((box) => box[key])))
  const most = (key: 'right' | 'top'): number =>
    Math.min(clip[key], Math.max(...boxes.map((box) => box[key])))
  return { left: least('left'), right: most('right'), bottom: least('bottom'), top: most('top') }
}

const shared = (a: Stretch, b: Stretch): Stretch => ({
  from: Math.max(a.from, b.from),
  to: Math.min(a.to, b.to),
})

/** The line two neighbours are cut and laid along, with its marks. */
const joinShapes = (drawing: Drawing, one: Cut, other: Cut, at: number): readonly Shape[] => {
  const upright = one.row === other.row
  const [low, high] = upright ? (['bottom', 'top'] as const) : (['left', 'right'] as const)
  const stretch = shared(
    { from: one.clip[low], to: one.clip[high] },
    { from: other.clip[low], to: other.clip[high] },
  )
  const point = (along: number) => (upright ? { x: at, y: along } : { x: along, y: at })
  return [
    { kind: 'line', layer: 'fold', from: point(stretch.from), to: point(stretch.to) },
    ...registrationMarks(drawing.shapes, stretch, point),
  ]
}

/** Cuts a drawing into as few pieces as a field of the given size allows; one if it fits. */
export const cutDrawing = (drawing: Drawing, field: FieldSize): Cutting => {
  const across = tileSide(drawing.width, field.width, keepsOf(drawing.shapes, 'left', 'right'))
  const up = tileSide(drawing.height, field.height, keepsOf(drawing.shapes, 'bottom', 'top'))
  const [columns, rows] = [across.tiles.length, up.tiles.length]
  const bare = Array.from({ length: columns * rows }, (_, index): Cut => {
    const [column, row] = [index % columns, Math.floor(index / columns)]
    const [col, level] = [across.tiles[column] as Stretch, up.tiles[rows - 1 - row] as Stretch]
    const clip = { left: col.from, right: col.to, bottom: level.from, top: level.to }
    const [ownAcross, ownUp] = [own(across, column), own(up, rows - 1 - row)]
    const ownBox = { left: ownAcross.from, right: ownAcross.to, bottom: ownUp.from, top: ownUp.to }
    const shapes = drawing.shapes.filter((shape) => isShown(shape, clip, ownBox))
    return { clip: columns * rows === 1 ? clip : used(clip, shapes), shapes, column, row }
  })
  // Every piece shows all that is drawn on its paper, the joins of others included.
  const lines = bare.flatMap((cut, index): readonly Shape[] => {
    const { column, row } = cut
    const right = column + 1 < columns ? bare[index + 1] : undefined
    const under = bare[index + columns]
    const [acrossJoin, upJoin] = [across.joins[column], up.joins[rows - 2 - row]]
    return [
      ...(right === undefined || acrossJoin === undefined ? [] : joinShapes(drawing, cut, right, acrossJoin)),
      ...(under === undefined || upJoin === undefined ? [] : joinShapes(drawing, cut, under, upJoin)),
    ]
  })
  const cuts = bare.map((cut): Cut => {
    const seen = lines.filter((shape) => boxesMeet(grow(shapeBox(shape), 0.01), cut.clip))
    return { ...cut, shapes: [...cut.shapes, ...seen] }
  })
  return { drawing, columns, rows, cuts, cost: across.cost + up.cost }
}
