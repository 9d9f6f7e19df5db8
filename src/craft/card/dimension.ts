import type { PixelBox } from '../section/sheet.ts'
import { spread } from '../section/spread.ts'
import type { Board, Spot, Words } from './board.ts'
import { pathOf } from './board.ts'
import type { CardFormat } from './format.ts'
import { stacked } from './length.ts'

/** From base line to base line of a stacked size [em]. */
const LEADING = 1.08
/** Length of an arrow head, and half its width [em]. */
const HEAD = 0.34
const HALF_HEAD = 0.12
/** Room between a dimension line and what it measures, and its figure [em]. */
export const OFF = 0.7
const BESIDE = 0.3

const words = (format: CardFormat, text: string): Words => ({
  text,
  em: format.em.dimension,
  weight: 'semibold',
  ink: 'ink',
})

/** Width of a size set over two lines [px]. */
export const stackWidth = (board: Board, format: CardFormat, text: string): number =>
  Math.max(...stacked(text).map((line) => board.outlines.width(line, format.em.dimension, 'semibold')))

export const stackHeight = (format: CardFormat): number => format.em.dimension * (1 + LEADING)

/** Room that figures beside a picture take, line and all [px]. */
export const roomBeside = (board: Board, format: CardFormat, texts: readonly string[]): number =>
  texts.length === 0
    ? 0
    : Math.max(...texts.map((text) => stackWidth(board, format, text))) +
      (OFF + BESIDE + HALF_HEAD) * format.em.dimension

/** Room under a picture for its width [px]. */
export const roomUnder = (format: CardFormat): number => format.em.dimension * (OFF + BESIDE + 1.1)

const thin = (board: Board, format: CardFormat) => ({
  fill: 'none',
  stroke: board.theme.muted,
  'stroke-width': format.stroke.thin,
})

/** How far a thin line stands off what it comes from, and runs past the line it meets [em]. */
const PAST = 0.15

const thinLine = (board: Board, format: CardFormat, from: Spot, to: Spot): void =>
  board.rule([from, to], false, thin(board, format))

/** An arrow head whose tip is at `tip`, from the side that `from` lies on. */
const head = (board: Board, format: CardFormat, tip: Spot, from: Spot): void => {
  const long = Math.hypot(tip.x - from.x, tip.y - from.y)
  if (long < 1e-6) return
  const em = format.em.dimension
  const back = Math.min(HEAD * em, long)
  const [ux, uy] = [(from.x - tip.x) / long, (from.y - tip.y) / long]
  const base = { x: tip.x + ux * back, y: tip.y + uy * back }
  const half = HALF_HEAD * em
  board.draw('path', {
    d: pathOf(
      [
        tip,
        { x: base.x - uy * half, y: base.y + ux * half },
        { x: base.x + uy * half, y: base.y - ux * half },
      ],
      true,
    ),
    fill: board.theme.muted,
  })
}

const arrow = (board: Board, format: CardFormat, from: Spot, to: Spot): void => {
  thinLine(board, format, from, to)
  head(board, format, from, to)
  head(board, format, to, from)
}

/** A size over two lines; `middle` is its height. */
const stack = (board: Board, format: CardFormat, text: string, at: Spot, anchor: 'start' | 'end'): void => {
  const em = format.em.dimension
  const lines = stacked(text)
  // Capitals are 0.66 em high: so much of the first line stands over its base line.
  const first = at.y + 0.33 * em - ((lines.length - 1) * LEADING * em) / 2
  for (const [i, line] of lines.entries())
    board.letter(words(format, line), { x: at.x, y: first + i * LEADING * em }, anchor)
}

/** The width of something, under it. `y` is its lower edge. */
export const widthUnder = (
  board: Board,
  format: CardFormat,
  text: string,
  { left, right, y }: { readonly left: number; readonly right: number; readonly y: number },
): void => {
  const em = format.em.dimension
  const line = y + OFF * em
  for (const x of [left, right]) thinLine(board, format, { x, y: y + PAST * em }, { x, y: line + PAST * em })
  arrow(board, format, { x: left, y: line }, { x: right, y: line })
  board.letter(words(format, text), { x: (left + right) / 2, y: line + (BESIDE + 0.8) * em }, 'middle')
}

/** The height of something, to its right. */
export const heightBeside = (
  board: Board,
  format: CardFormat,
  text: string,
  { top, bottom, x }: { readonly top: number; readonly bottom: number; readonly x: number },
): void => {
  const em = format.em.dimension
  const line = x + OFF * em
  for (const y of [top, bottom]) thinLine(board, format, { x: x + PAST * em, y }, { x: line + PAST * em, y })
  arrow(board, format, { x: line, y: top }, { x: line, y: bottom })
  const room = stackHeight(format)
  const y = bottom - top < room ? bottom - room / 2 : (top + bottom) / 2
  stack(board, format, text, { x: line + BESIDE * em, y }, 'start')
}

/** Between figures over one another [em]. */
export const LEVEL_GAP = 0.1

export interface Level {
  readonly text: string
  /** Where it is measured to. */
  readonly y: number
  /** Where on the picture its level is seen. */
  readonly x: number
}

/**
 * Heights over one lower edge, to the left of a picture: one line from the edge up, a tip at every level and its figure
 * beside it, moved apart where they would meet.
 */
export const levelsBeside = (
  board: Board,
  format: CardFormat,
  levels: readonly Level[],
  {
    x,
    datum,
    room,
  }: { readonly x: number; readonly datum: number; readonly room: Pick<PixelBox, 'top' | 'bottom'> },
): void => {
  const em = format.em.dimension
  const line = x - OFF * em
  const sorted = [...levels].sort((a, b) => a.y - b.y)
  const [highest] = sorted
  if (highest === undefined) return
  thinLine(board, format, { x: line - PAST * em, y: datum }, { x: x - PAST * em, y: datum })
  thinLine(board, format, { x: line, y: datum }, { x: line, y: highest.y })
  const height = stackHeight(format)
  const tops = spread(
    sorted.map(({ y }) => ({ want: y, height })),
    LEVEL_GAP * em,
    room.top,
    room.bottom,
  )
  for (const [i, { text, y, x: seen }] of sorted.entries()) {
    head(board, format, { x: line, y }, { x: line, y: datum })
    board.rule(
      [
        { x: line - 0.15 * em, y },
        { x: Math.max(seen, x), y },
      ],
      false,
      { ...thin(board, format), 'stroke-dasharray': `${em * 0.22} ${em * 0.12}` },
    )
    const middle = (tops[i] as number) + height / 2
    if (Math.abs(middle - y) > 0.5 * em)
      thinLine(board, format, { x: line - PAST * em, y }, { x: line - 0.45 * em, y: middle })
    stack(board, format, text, { x: line - 0.55 * em, y: middle }, 'end')
  }
}
