import { drawLine, INK, MUTED } from '../paint.ts'
import { BODY, breakLines, STRONG, type Type } from '../type.ts'
import type { Strip } from './strip.ts'

const lineStrip = (
  text: string,
  type: Type,
  before: number,
  keep: boolean,
  indent = 0,
  ink = INK,
): Strip => ({
  height: type.leading,
  before,
  keep,
  draw: (canvas, x, y) => drawLine(canvas, x + indent, y + type.leading * 0.76, text, { type, ink }),
})

/** Lines of one paragraph: the first two and the last two stay together. */
export const paragraph = (
  text: string,
  type: Type,
  width: number,
  before: number,
  ink = INK,
  indent = 0,
): readonly Strip[] => {
  const lines = breakLines(text, type, width - indent)
  return lines.map((line, i) =>
    lineStrip(
      line,
      type,
      i === 0 ? before : 0,
      i === 0 || i === lines.length - 2 ? lines.length > 1 : false,
      indent,
      ink,
    ),
  )
}

/** Lines that stay with what follows them. */
export const heading = (text: string, type: Type, before: number, width: number): readonly Strip[] =>
  breakLines(text, type, width).map((line, i) => lineStrip(line, type, i === 0 ? before : 0, true))

const BULLET = 12

/** Points or numbers, each item a paragraph. */
export const list = (items: readonly string[], numbered: boolean, width: number): readonly Strip[] =>
  items.flatMap((item, n) => {
    const mark = numbered ? `${n + 1}` : '•'
    return paragraph(item, BODY, width, n === 0 ? 3 : 2.2, INK, numbered ? 16 : BULLET).map((strip, i) =>
      i > 0
        ? strip
        : {
            ...strip,
            draw: (canvas, x, y) => {
              drawLine(canvas, x + (numbered ? 10 : 2), y + BODY.leading * 0.76, mark, {
                type: numbered ? STRONG : BODY,
                ink: MUTED,
                anchor: numbered ? 'end' : 'start',
              })
              strip.draw(canvas, x, y)
            },
          },
    )
  })
