import type { Point, Shape } from '../drawing.ts'
import { SMALL_SIZE } from '../lettering/sizes.ts'
import type { Cut, Cutting } from './cutting.ts'
import type { Figure } from './notes.ts'

/** Largest size of the map, and how low it may be for its numbers to stand in it [mm]. */
const WIDEST = 24
const HIGHEST = 12
const LOWEST = 5
/** Of the second frame round the piece at hand [mm]. */
const INSET = 0.7

const frame = (left: number, bottom: number, right: number, top: number): Shape => ({
  kind: 'polyline',
  layer: 'dimension',
  closed: true,
  points: [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ],
})

/** Where pieces meet along one side, the two ends included: halfway through what neighbours share. */
const stops = (spans: readonly (readonly [from: number, to: number])[]): readonly number[] => [
  spans[0]?.[0] ?? 0,
  ...spans.slice(1).map(([from], index) => (from + (spans[index]?.[1] ?? from)) / 2),
  spans.at(-1)?.[1] ?? 0,
]

/**
 * How the pieces of a drawing lie, each with its number; the piece at hand has a double frame. Null for a drawing
 * in one piece. Wide drawings are shown higher than they are, for the numbers' sake.
 */
export const assemblyMap = ({ columns, rows, cuts }: Cutting, here: Cut): Figure | null => {
  if (cuts.length === 1) return null
  const column = (index: number) => cuts[index] as Cut
  const row = (index: number) => cuts[(rows - 1 - index) * columns] as Cut
  const across = stops(
    Array.from({ length: columns }, (_, index) => [column(index).clip.left, column(index).clip.right]),
  )
  const up = stops(Array.from({ length: rows }, (_, index) => [row(index).clip.bottom, row(index).clip.top]))
  const [left, bottom] = [across[0] as number, up[0] as number]
  const [wide, high] = [(across.at(-1) as number) - left, (up.at(-1) as number) - bottom]
  const scale = Math.min(WIDEST / wide, HIGHEST / high)
  const [width, height] = [wide * scale, Math.max(LOWEST * rows, high * scale)]
  const at = (x: number, y: number): Point => ({
    x: ((x - left) / wide) * width,
    y: ((y - bottom) / high) * height,
  })
  const shapes = cuts.flatMap((cut, index): readonly Shape[] => {
    const level = rows - 1 - cut.row
    const low = at(across[cut.column] as number, up[level] as number)
    const top = at(across[cut.column + 1] as number, up[level + 1] as number)
    return [
      frame(low.x, low.y, top.x, top.y),
      ...(cut === here ? [frame(low.x + INSET, low.y + INSET, top.x - INSET, top.y - INSET)] : []),
      {
        kind: 'text',
        layer: 'text',
        at: { x: (low.x + top.x) / 2, y: (low.y + top.y - SMALL_SIZE) / 2 },
        text: String(index + 1),
        size: SMALL_SIZE,
        anchor: 'middle',
        angle: 0,
      },
    ]
  })
  return { shapes, width, height }
}
