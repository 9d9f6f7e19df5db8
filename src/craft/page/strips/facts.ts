import type { Fact } from '../block.ts'
import { drawLine, INK, MUTED } from '../paint.ts'
import { breakLines, FIGURE, SMALL, SUBHEADING, type Type, widthOf } from '../type.ts'
import type { Strip } from './strip.ts'

const FACT_WIDTH = 118

/** Figures with their labels, as many abreast as have room. */
export const facts = (all: readonly Fact[], width: number): readonly Strip[] => {
  const columns = Math.max(1, Math.floor((width + 12) / (FACT_WIDTH + 12)))
  const step = (width + 12) / columns
  const rows = Array.from({ length: Math.ceil(all.length / columns) }, (_, i) =>
    all.slice(i * columns, (i + 1) * columns),
  )
  return rows.map((row, r): Strip => {
    const set = row.map(({ label, value, aside }) => ({
      label: breakLines(label, SMALL, step - 12),
      value: breakLines(value, widthOf(value, FIGURE) <= step - 12 ? FIGURE : SUBHEADING, step - 12),
      type: widthOf(value, FIGURE) <= step - 12 ? FIGURE : SUBHEADING,
      aside: aside === undefined ? [] : breakLines(aside, SMALL, step - 12),
    }))
    const tall = ({ label, value, type, aside }: (typeof set)[number]): number =>
      (label.length + aside.length) * SMALL.leading + value.length * type.leading
    return {
      height: Math.max(...set.map(tall)) + 4,
      before: r === 0 ? 6 : 8,
      keep: false,
      draw: (canvas, x, y) => {
        for (const [i, fact] of set.entries()) {
          let at = y
          const put = (lines: readonly string[], type: Type, ink: string): void => {
            for (const line of lines) {
              drawLine(canvas, x + i * step, at + type.leading * 0.76, line, { type, ink })
              at += type.leading
            }
          }
          put(fact.label, SMALL, MUTED)
          put(fact.value, fact.type, INK)
          put(fact.aside, SMALL, MUTED)
        }
      },
    }
  })
}
