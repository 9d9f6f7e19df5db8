import { toMillimetres } from '#basis/units.ts'
import { placeRow } from '#stove/opening/row.ts'
import { alongStrip } from '../flat/bearing.ts'
import type { Strip } from '../flat/strip.ts'
import { flatOutline } from '../section/beyond.ts'
import { mm } from '../section/half.ts'
import type { PixelBox } from '../section/sheet.ts'
import type { Board } from './board.ts'
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

/** The flat strip, from end to end. */
const drawStripFlat = (
  board: Board,
  format: CardFormat,
  { strip, told }: BandView,
  at: { readonly left: number; readonly bottom: number; readonly scale: number },
): void => {
  const { left, bottom, scale } = at
  const [length, height] = [strip.length * scale, toMillimetres(strip.high) * scale]
  board.rule(
    [
      { x: left, y: bottom },
      { x: left + length, y: bottom },
      { x: left + length, y: bottom - height },
      { x: left, y: bottom - height },
    ],
    true,
    { ...tinFill(board), ...tinLine(board, format) },
  )
  for (const { name, row } of strip.rows) {
    const outline = flatOutline(row.hole)
    for (const { position, bearing } of placeRow({ ...row, leftOut: [] }, row.height)) {
      const middle = { x: left + alongStrip(strip, bearing) * scale, y: bottom - mm(row.height) * scale }
      // What runs over an edge ends there.
      const points = outline.map(([along, up]) => ({
        x: Math.max(left, Math.min(left + length, middle.x + along * scale)),
        y: Math.max(bottom - height, Math.min(bottom, middle.y - up * scale)),
      }))
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
  const [length, high] = [strip.length, toMillimetres(strip.high)]
  const caption = 1.8 * em
  const under = roomUnder(format)
  // A strip as tall as half the picture would push the bent band out.
  const scale = Math.min(across / length, (0.4 * (down - under)) / high)
  const flat = high * scale
  const most = down - under - caption - flat
  const bent = Math.min(
    most,
    Math.max(3.2 * em, 1.5 * em + (high * (across - 2 * BENT_SIDES * em)) / (2 * widest(wall))),
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
  drawStripFlat(board, format, view, { left, bottom, scale })
  widthUnder(board, format, size(length / 1000), { left, right: left + length * scale, y: bottom })
}
