import { px } from '../svg/element.ts'
import { type Frame, pixelX, pixelY } from './frame.ts'
import { labelLines } from './labelColumn.ts'
import type { SectionLabel } from './labels.ts'
import { BODY_SIZE, type Sheet } from './sheet.ts'
import { spread } from './spread.ts'

/** Where there is no room for words in the picture, letters stand there, and the words in a list below. */

const RADIUS = 10
const GAP = 5
const LETTER_SIZE = 13

const letterOf = (i: number): string => String.fromCharCode(65 + i)

const balloon = (sheet: Sheet, x: number, y: number, letter: string): void => {
  const { paper, muted } = sheet.theme
  sheet.draw('circle', { cx: x, cy: y, r: RADIUS, fill: paper, stroke: muted, 'stroke-width': 1 })
  sheet.letter({
    x,
    y: y + LETTER_SIZE * 0.34,
    text: letter,
    size: LETTER_SIZE,
    weight: 'semibold',
    anchor: 'middle',
  })
}

/** Lettered balloons in a column on the right, none over another, each with a leader to its place. */
export const drawBalloons = (
  sheet: Sheet,
  frame: Frame,
  labels: readonly SectionLabel[],
  {
    x,
    elbow,
    top,
    bottom,
  }: { readonly x: number; readonly elbow: number; readonly top: number; readonly bottom: number },
): void => {
  const tops = spread(
    labels.map(({ at, lift }) => ({ want: pixelY(frame, at.z + lift), height: 2 * RADIUS })),
    GAP,
    top,
    bottom,
  )
  for (const [i, { at, lift, dot }] of labels.entries()) {
    const y = (tops[i] ?? top) + RADIUS
    const [placeX, placeY] = [pixelX(frame, at.r), pixelY(frame, at.z)]
    const from = dot ? placeX : Math.min(placeX + 3, elbow)
    const d = `M${px(from)} ${px(placeY)}V${px(placeY - lift * frame.scale)}H${px(elbow)}L${px(x - RADIUS)} ${px(y)}`
    sheet.draw('path', { d, fill: 'none', stroke: sheet.theme.paper, 'stroke-width': 2.6, opacity: 0.7 })
    sheet.draw('path', { d, fill: 'none', stroke: sheet.theme.muted, 'stroke-width': 0.8 })
    if (dot)
      sheet.draw('circle', {
        cx: placeX,
        cy: placeY,
        r: 2.2,
        fill: sheet.theme.ink,
        stroke: sheet.theme.paper,
        'stroke-width': 1,
      })
    balloon(sheet, x, y, letterOf(i))
  }
}

const NAME_LEADING = 20
const LINE_LEADING = 17
const BETWEEN = 7

/** The words of labels as a list; returns where it ends [px]. */
export const drawKey = (
  sheet: Sheet,
  labels: readonly SectionLabel[],
  {
    x,
    y,
    width,
    lettered,
  }: { readonly x: number; readonly y: number; readonly width: number; readonly lettered: boolean },
): number => {
  const indent = lettered ? 2 * RADIUS + 10 : 0
  let at = y
  for (const [i, label] of labels.entries()) {
    for (const [n, line] of labelLines(label, width - indent).entries()) {
      at += n === 0 ? NAME_LEADING : LINE_LEADING
      if (n === 0 && lettered) balloon(sheet, x + RADIUS, at - BODY_SIZE * 0.34, letterOf(i))
      sheet.letter({ ...line, x: x + indent, y: at })
    }
    at += BETWEEN
  }
  return at
}
