import { element, escaped, px } from '../svg/element.ts'
import { type Type, widthOf } from './type.ts'

/** Black on white first: a plan is printed. */
export const INK = '#1f1b17'
export const MUTED = '#5d554c'
const RULE = '#b9ae9f'
export const EMBER = '#a83a12'
export const WASH = '#f3eee5'

/** A box that text or a picture fills, for a test to measure [pt]. */
export interface Mark {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
  readonly what: string
}

/** A page being drawn, in points with y down. */
export interface Canvas {
  readonly parts: string[]
  readonly marks: Mark[]
}

export const openCanvas = (): Canvas => ({ parts: [], marks: [] })

export interface TextStyle {
  readonly type: Type
  readonly ink?: string
  readonly anchor?: 'start' | 'middle' | 'end'
}

/** One line of text, `y` its base line. */
export const drawLine = (canvas: Canvas, x: number, y: number, text: string, style: TextStyle): void => {
  const { type, ink = INK, anchor = 'start' } = style
  const width = widthOf(text, type)
  const left = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width
  canvas.marks.push({
    left,
    right: left + width,
    top: y - 0.72 * type.size,
    bottom: y + 0.2 * type.size,
    what: text,
  })
  canvas.parts.push(
    element(
      'text',
      {
        x,
        y,
        'font-size': type.size,
        'font-weight': type.bold ? 600 : undefined,
        fill: ink,
        'text-anchor': anchor === 'start' ? undefined : anchor,
      },
      escaped(text),
    ),
  )
}

export const drawRule = (
  canvas: Canvas,
  x1: number,
  x2: number,
  y: number,
  width = 0.5,
  ink = RULE,
): void => {
  canvas.parts.push(
    element('path', { d: `M${px(x1)} ${px(y)}H${px(x2)}`, stroke: ink, 'stroke-width': width, fill: 'none' }),
  )
}

export const drawBox = (
  canvas: Canvas,
  x: number,
  y: number,
  width: number,
  height: number,
  fill: string,
): void => {
  canvas.parts.push(element('rect', { x, y, width, height, fill }))
}
