import type { Field } from '../block.ts'
import { drawLine, drawRule, MUTED } from '../paint.ts'
import { SMALL, widthOf } from '../type.ts'
import type { Strip } from './strip.ts'

const FIELD_HEIGHT = 23

/** Lines to write on, two abreast. */
export const fieldLines = (fields: readonly Field[], width: number): readonly Strip[] => {
  const half = (width - 18) / 2
  const pairs = Array.from({ length: Math.ceil(fields.length / 2) }, (_, i) => fields.slice(2 * i, 2 * i + 2))
  return pairs.map(
    (pair): Strip => ({
      height: FIELD_HEIGHT,
      before: 0,
      keep: false,
      draw: (canvas, x, y) => {
        for (const [i, { label, unit, beside }] of pair.entries()) {
          const left = x + i * (half + 18)
          const base = y + FIELD_HEIGHT - 5
          drawLine(canvas, left, base, label, { type: SMALL })
          const note = [unit, beside === undefined ? '' : `(${beside})`]
            .filter((part) => part !== '')
            .join(' ')
          drawLine(canvas, left + half, base, note, { type: SMALL, ink: MUTED, anchor: 'end' })
          const from = left + widthOf(label, SMALL) + 5
          const to = left + half - (note === '' ? 0 : widthOf(note, SMALL) + 4)
          if (to > from + 12) drawRule(canvas, from, to, base + 2, 0.6, MUTED)
        }
      },
    }),
  )
}
