import { px } from '../svg/element.ts'
import { type Frame, pixelY } from './frame.ts'
import type { Sheet } from './sheet.ts'

interface Tick {
  readonly z: number
  readonly length: number
  readonly text: string
}

const MM_PER_INCH = 25.4

/** Every 5 mm, longer at 10, numbered at 50. */
const metricTicks = (top: number): readonly Tick[] =>
  Array.from({ length: Math.floor(top / 5) + 1 }, (_, i) => ({
    z: i * 5,
    length: i % 10 === 0 ? 11 : i % 2 === 0 ? 7 : 4,
    text: i % 10 === 0 ? String(i * 5) : '',
  }))

/** Every quarter inch, longer at halves, numbered at whole ones. */
const inchTicks = (top: number): readonly Tick[] =>
  Array.from({ length: Math.floor((top * 4) / MM_PER_INCH) + 1 }, (_, i) => ({
    z: (i * MM_PER_INCH) / 4,
    length: i % 4 === 0 ? 11 : i % 2 === 0 ? 7 : 4,
    text: i % 4 === 0 ? String(i / 4) : '',
  }))

const NUMBER_SIZE = 13

/** The rule reaches to the next whole centimetre over the tin [mm]. */
export const rulerTop = (top: number): number => Math.ceil(top / 10) * 10

/** Room its units take over its upper end [px]. */
export const RULER_HEAD = 28

/** Room the ruler takes left and right of its line [px]. */
export const RULER_SIDE = 36

/** A rule that stands on the ground: millimetres on its left, inches on its right. */
export const drawRuler = (sheet: Sheet, frame: Frame, x: number, top: number): void => {
  const { faint } = sheet.theme
  const sides = [
    { sign: -1, ticks: metricTicks(top), unit: 'mm', anchor: 'end' },
    { sign: 1, ticks: inchTicks(top), unit: 'in', anchor: 'start' },
  ] as const
  const marks = sides.flatMap(({ sign, ticks }) =>
    ticks.map(({ z, length }) => `M${px(x)} ${px(pixelY(frame, z))}h${px(sign * length)}`),
  )
  sheet.draw('path', {
    d: `M${px(x)} ${px(pixelY(frame, 0))}V${px(pixelY(frame, top))}${marks.join('')}`,
    fill: 'none',
    stroke: faint,
    'stroke-width': 0.9,
  })
  for (const { sign, ticks, unit, anchor } of sides) {
    for (const { z, text } of ticks)
      if (text !== '')
        sheet.letter({
          x: x + sign * 15,
          y: pixelY(frame, z) + NUMBER_SIZE * 0.34,
          text,
          size: NUMBER_SIZE,
          ink: 'muted',
          anchor,
        })
    sheet.letter({
      x: x + sign * 15,
      y: pixelY(frame, top) - 12,
      text: unit,
      size: NUMBER_SIZE,
      ink: 'muted',
      anchor,
    })
  }
}

/** Level ground from one x to another, with the short strokes that mean earth. */
export const drawGround = (sheet: Sheet, frame: Frame, from: number, to: number): void => {
  const y = pixelY(frame, 0) + 1.2
  const strokes = Array.from({ length: Math.floor((to - from - 8) / 14) }, (_, i) => {
    const x = from + 12 + i * 14
    return `M${px(x)} ${px(y)}l-7 7`
  })
  sheet.draw('path', {
    d: `M${px(from)} ${px(y)}H${px(to)}`,
    fill: 'none',
    stroke: sheet.theme.ink,
    'stroke-width': 1.3,
  })
  sheet.draw('path', { d: strokes.join(''), fill: 'none', stroke: sheet.theme.faint, 'stroke-width': 0.8 })
}
