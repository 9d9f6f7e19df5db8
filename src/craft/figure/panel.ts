import { type Sheet, SMALL_SIZE } from '../section/sheet.ts'
import { px } from '../svg/element.ts'
import type { Scale } from './scale.ts'

/** A field of the figure that shares the time axis with the others. */
export interface Panel {
  readonly time: Scale
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Room for a heading alone, and for each line that explains how to read the panel. */
const HEADING = 28
const EXPLANATION = 17

/** Room that a heading takes above its panel. */
export const headingHeight = (lines: readonly string[]): number => HEADING + lines.length * EXPLANATION

/** What a panel shows, in words, above it; what follows explains how to read it. */
export const drawHeading = (
  sheet: Sheet,
  { left, top }: Panel,
  lines: readonly string[],
  what: string,
): void => {
  const y = top - 10 - lines.length * EXPLANATION
  sheet.letter({ x: left, y, text: what, weight: 'semibold' })
  for (const [i, text] of lines.entries())
    sheet.letter({ x: left, y: y + (i + 1) * EXPLANATION, text, size: SMALL_SIZE, ink: 'muted' })
}

export interface Tick {
  /** [px] */
  readonly y: number
  readonly text: string
}

/** Between a panel and the figures beside it. */
const TICK_GAP = 8

/** Figures beside a panel, on one side of it. */
export const drawTicks = (
  sheet: Sheet,
  { left, right }: Panel,
  side: 'left' | 'right',
  ticks: readonly Tick[],
): void => {
  for (const { y, text } of ticks)
    sheet.letter({
      x: side === 'left' ? left - TICK_GAP : right + TICK_GAP,
      y: y + SMALL_SIZE * 0.34,
      text,
      size: SMALL_SIZE,
      ink: 'muted',
      anchor: side === 'left' ? 'end' : 'start',
    })
}

/** Hairlines across a panel. */
export const drawGrid = (sheet: Sheet, { left, right }: Panel, ys: readonly number[]): void => {
  if (ys.length === 0) return
  sheet.draw('path', {
    d: ys.map((y) => `M${px(left)} ${px(y)}H${px(right)}`).join(''),
    stroke: sheet.theme.hairline,
    'stroke-width': 1,
    fill: 'none',
  })
}

export interface Pixel {
  readonly x: number
  readonly y: number
}

export const polyline = (points: readonly Pixel[]): string =>
  points.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('')
