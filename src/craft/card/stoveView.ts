import type { Stove } from '#stove/model.ts'
import type { BurnSummary } from '../section/airState.ts'
import type { Frame } from '../section/frame.ts'
import { drawPicture } from '../section/picture.ts'
import { sceneOf } from '../section/scene.ts'
import { openSheet, type PixelBox } from '../section/sheet.ts'
import { px } from '../svg/element.ts'
import type { Board } from './board.ts'
import { heightBeside, roomBeside } from './dimension.ts'
import type { CardFormat } from './format.ts'
import { size } from './length.ts'

/** The section's own strokes are made for a page half as wide as a card: so much stronger are they here [1]. */
const STRONGER: Readonly<Record<CardFormat['shape'], number>> = { wide: 2, square: 1.4 }
const CAPTION = 1.25

/** The stove cut down its centre line, with its air where a burn says what flows, and how high it stands. */
export const drawStove = (
  board: Board,
  format: CardFormat,
  region: PixelBox,
  stove: Stove,
  burn: BurnSummary | null,
): void => {
  const em = format.em.dimension
  const { section, air, state, extent } = sceneOf(stove, burn)
  const heightText = size(section.top / 1000)
  const right = roomBeside(board, format, [heightText])
  const top = region.top + CAPTION * em
  const scale = Math.min(
    (region.right - region.left - right) / (2 * extent.radius),
    (region.bottom - 0.2 * em - top) / extent.top,
  )
  const axis = region.left + (region.right - region.left - right) / 2
  const height = extent.top * scale
  const ground = top + (region.bottom - 0.2 * em - top - height) / 2 + height
  const strong = STRONGER[format.shape]
  const frame: Frame = { axis: axis / strong, ground: ground / strong, scale: scale / strong }
  // The section letters the pot in letters of its own page; a card says the pot beside the picture.
  const sheet = { ...openSheet(board.theme), letter: () => undefined }
  const edge = axis + extent.radius * scale
  const groundLine = { fill: 'none', stroke: board.theme.faint, 'stroke-width': format.stroke.thin }
  board.letter(
    { text: 'cut down its centre line', em, weight: 'regular', ink: 'muted' },
    { x: axis, y: ground - height - 0.45 * em },
    'middle',
  )
  board.rule(
    [
      { x: axis - extent.radius * scale, y: ground + strong },
      { x: edge, y: ground + strong },
    ],
    false,
    groundLine,
  )
  drawPicture(sheet, frame, section, air, state)
  if (sheet.definitions() !== '') board.define('g', {}, sheet.definitions())
  board.draw('g', { transform: `scale(${px(strong)})` }, sheet.body())
  heightBeside(board, format, heightText, { top: ground - section.top * scale, bottom: ground, x: edge })
  const half = extent.radius * scale
  board.guard(
    [
      { x: axis - half, y: ground },
      { x: axis + half, y: ground },
      { x: axis + half, y: ground - height },
      { x: axis - half, y: ground - height },
    ],
    true,
  )
}
