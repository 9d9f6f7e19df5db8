import type { PixelBox } from '../section/sheet.ts'
import { type Board, pathOf, type Spot } from './board.ts'
import type { CardFormat } from './format.ts'

/** How tin, holes and places that stay whole look on every card. */

/** Tin is paper with a breath of grey over it. */
export const tinFill = ({ theme }: Board) => ({ fill: theme.faint, 'fill-opacity': 0.26 })

export const tinLine = ({ theme }: Board, { stroke }: CardFormat) => ({
  stroke: theme.ink,
  'stroke-width': stroke.tin,
  'stroke-linejoin': 'round',
})

/** An opening that this card tells of stands out; one that another card tells of does not. */
export const holeLook = (board: Board, { stroke }: CardFormat, told: boolean) =>
  told
    ? {
        fill: board.theme.paper,
        stroke: board.theme.ink,
        'stroke-width': stroke.hole,
        'stroke-linejoin': 'round',
      }
    : { fill: board.theme.paper, stroke: board.theme.faint, 'stroke-width': stroke.thin }

const boxOf = (outline: readonly Spot[]): PixelBox => ({
  left: Math.min(...outline.map(({ x }) => x)),
  right: Math.max(...outline.map(({ x }) => x)),
  top: Math.min(...outline.map(({ y }) => y)),
  bottom: Math.max(...outline.map(({ y }) => y)),
})

/** A place that stays whole: its outline broken, and crossed out. */
export const drawLeftOut = (board: Board, { stroke }: CardFormat, outline: readonly Spot[]): void => {
  const { left, right, top, bottom } = boxOf(outline)
  const line = { fill: 'none', stroke: board.theme.ember, 'stroke-width': stroke.hole }
  board.rule(outline, true, { ...line, 'stroke-dasharray': `${stroke.hole * 2} ${stroke.hole * 1.6}` })
  const [dx, dy] = [(right - left) * 0.14, (bottom - top) * 0.14]
  const cross =
    pathOf(
      [
        { x: left + dx, y: top + dy },
        { x: right - dx, y: bottom - dy },
      ],
      false,
    ) +
    pathOf(
      [
        { x: left + dx, y: bottom - dy },
        { x: right - dx, y: top + dy },
      ],
      false,
    )
  board.draw('path', { d: cross, ...line, 'stroke-linecap': 'round' })
}
