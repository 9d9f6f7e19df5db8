import { drawBox, drawLine, EMBER, WASH } from '../paint.ts'
import { breakLines, SMALL, STRONG } from '../type.ts'
import type { Strip } from './strip.ts'

const CAUTION_PAD = 7

/** The box of cautions; it is never cut. */
export const cautions = (title: string, items: readonly string[], width: number): readonly Strip[] => {
  const inner = width - 2 * CAUTION_PAD - 4
  const lines = items.map((item) => breakLines(item, SMALL, inner - 9))
  const height =
    2 * CAUTION_PAD +
    STRONG.leading +
    lines.reduce((sum, { length }) => sum + length * SMALL.leading + 1.5, 0)
  return [
    {
      height,
      before: 8,
      keep: false,
      draw: (canvas, x, y) => {
        drawBox(canvas, x, y, width, height, WASH)
        drawBox(canvas, x, y, 3, height, EMBER)
        let at = y + CAUTION_PAD
        drawLine(canvas, x + CAUTION_PAD + 4, at + STRONG.leading * 0.76, title, { type: STRONG })
        at += STRONG.leading
        for (const item of lines) {
          for (const [k, line] of item.entries()) {
            if (k === 0)
              drawLine(canvas, x + CAUTION_PAD + 4, at + SMALL.leading * 0.76, '•', {
                type: SMALL,
                ink: EMBER,
              })
            drawLine(canvas, x + CAUTION_PAD + 13, at + SMALL.leading * 0.76, line, { type: SMALL })
            at += SMALL.leading
          }
          at += 1.5
        }
      },
    },
  ]
}
