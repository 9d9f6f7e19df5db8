import { placeRow } from '#stove/opening/row.ts'
import { around } from '../box.ts'
import type { Point } from '../drawing.ts'
import { alongStrip } from '../flat/bearing.ts'
import { FINGER_TAB, tabCorners } from '../flat/outline.ts'
import type { Strip } from '../flat/strip.ts'
import { flatOutline } from '../section/beyond.ts'
import type { PixelBox } from '../section/sheet.ts'
import type { Board, Spot } from './board.ts'
import { roomUnder, widthUnder } from './dimension.ts'
import { drawElevation } from './elevation.ts'
import type { CardFormat } from './format.ts'
import { size } from './length.ts'
import { drawLeftOut, holeLook, tinFill, tinLine } from './tin.ts'
import { type Wall, widest } from './wall.ts'

export interface BandView {
  readonly strip: Strip
  readonly wall: Wall
  readonly told: ReadonlySet<string>
}

/** How finely the edges of a band that tapers are drawn: they are arcs. */
const ARC_STEPS = 48

/** The tin's outline without its overlap, finger tabs and all [mm, y up]. */
const flatEdge = (strip: Strip): readonly Point[] => {
  const { at, length, height, isTapered, roundAt } = strip.development
  const steps = isTapered ? ARC_STEPS : 1
  const edge = (up: number, from: number, to: number): readonly Point[] =>
    Array.from({ length: steps + 1 }, (_, i) => at(from + ((to - from) * i) / steps, up))
  const tabs = strip.fingerTabs.map((bearing) => alongStrip(strip, bearing)).sort((x, y) => y - x)
  const half = (FINGER_TAB.width / 2) * (length / roundAt(height))
  let from = length
  const upper = tabs.flatMap((along) => {
    const before = edge(height, from, along + half)
    from = along - half
    return [...before.slice(0, -1), ...tabCorners(strip, along)]
  })
  return [...edge(0, 0, length), ...upper, ...edge(height, from, 0).slice(1)]
}

/** The flat strip, from end to end. */
const drawStripFlat = (
  board: Board,
  format: CardFormat,
  { strip, told }: BandView,
  place: (point: Point) => Spot,
): void => {
  const { at, length, height, upOf } = strip.development
  board.rule(flatEdge(strip).map(place), true, { ...tinFill(board), ...tinLine(board, format) })
  for (const { name, row } of strip.rows) {
    const outline = flatOutline(row.hole)
    for (const { position, bearing } of placeRow({ ...row, leftOut: [] }, row.height)) {
      const [middle, up] = [alongStrip(strip, bearing), upOf(row.height)]
      // What runs over an edge ends there.
      const points = outline.map(([aside, over]) =>
        place(at(Math.max(0, Math.min(length, middle + aside)), Math.max(0, Math.min(height, up + over)))),
      )
      if (row.leftOut.includes(position)) drawLeftOut(board, format, points)
      else board.rule(points, true, holeLook(board, format, told.has(name)))
    }
  }
}

/** Room that a bent band needs, its figures beside it [px]: they take about this much of the width on either side. */
const BENT_SIDES = 4.4

/** A band twice: bent round its can, and flat as it is cut. */
export const drawBand = (board: Board, format: CardFormat, region: PixelBox, view: BandView): void => {
  const em = format.em.dimension
  const { strip, wall, told } = view
  const [across, down] = [region.right - region.left, region.bottom - region.top]
  const bounds = around(flatEdge(strip))
  const [length, high] = [bounds.right - bounds.left, bounds.top - bounds.bottom]
  const caption = 1.8 * em
  const under = roomUnder(format)
  // A strip as tall as half the picture would push the bent band out.
  const scale = Math.min(across / length, (0.4 * (down - under)) / high)
  const flat = high * scale
  const most = down - under - caption - flat
  const bent = Math.min(
    most,
    Math.max(3.2 * em, 1.5 * em + (wall.height * (across - 2 * BENT_SIDES * em)) / (2 * widest(wall))),
  )
  const top = region.top + (most - bent) / 2
  const bottom = top + bent + caption + flat
  drawElevation(board, format, { ...region, top, bottom: top + bent }, { wall, told, width: false })
  board.letter(
    { text: 'flat, without the overlap', em, weight: 'regular', ink: 'muted' },
    { x: (region.left + region.right) / 2, y: bottom - flat - 0.45 * em },
    'middle',
  )
  const left = (region.left + region.right - length * scale) / 2
  drawStripFlat(board, format, view, ({ x, y }) => ({
    x: left + (x - bounds.left) * scale,
    y: bottom - (y - bounds.bottom) * scale,
  }))
  // The edge of a band that tapers is an arc: its length is told beside the picture.
  if (!strip.development.isTapered)
    widthUnder(board, format, size(strip.length / 1000), { left, right: left + length * scale, y: bottom })
}
