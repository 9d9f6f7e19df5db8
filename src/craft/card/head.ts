import type { Outlines } from '../lettering/outline.ts'
import type { Words } from './board.ts'
import type { Content } from './content.ts'
import type { CardFormat } from './format.ts'
import { broken, shortened } from './setting.ts'

/** A title in the largest letters in which it fits: on one line, or smaller on two. */
const titleRows = (outlines: Outlines, text: string, { em }: CardFormat, width: number): readonly Words[] => {
  const words = (size: number, line: string): Words => ({
    text: line,
    em: size,
    weight: 'semibold',
    ink: 'ink',
  })
  const large = words(em.title, text)
  if (outlines.width(text, em.title, 'semibold') <= width) return [large]
  const small = words(em.smallTitle, text)
  const lines = broken(outlines, small, width)
  return lines.slice(0, 2).map((line, i) => ({
    ...small,
    text:
      i === 1 && lines.length > 2
        ? shortened(outlines, { ...small, text: lines.slice(1).join(' ') }, width)
        : line,
  }))
}

/** Name of a card and what stands under it. */
export interface Head {
  readonly rows: readonly { readonly words: Words; readonly y: number }[]
  /** Where what follows may begin. */
  readonly bottom: number
}

export const headOf = (outlines: Outlines, content: Content, format: CardFormat, width: number): Head => {
  const { em, head } = format
  const titles = titleRows(outlines, content.title, format, width)
  const sub: Words | null =
    content.sub === null ? null : { text: content.sub, em: em.sub, weight: 'regular', ink: 'muted' }
  const subs = sub === null ? [] : broken(outlines, sub, width).map((text) => ({ ...sub, text }))
  let y = head.title
  const rows = [...titles, ...subs].map((words, i) => {
    if (i > 0) y += words.em * (i === titles.length ? 1.3 : 1.14)
    return { words, y }
  })
  return { rows, bottom: y + 0.55 * em.sub }
}
