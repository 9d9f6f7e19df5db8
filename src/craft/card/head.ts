import type { Outlines } from '../lettering/outline.ts'
import type { Words } from './board.ts'
import type { Content } from './content.ts'
import type { CardFormat } from './format.ts'
import { broken } from './setting.ts'

/** A title may take so many lines before it is set smaller. */
const MOST_LINES = 2
/** By how much at a time [1]. */
const SMALLER = 0.92

/** A title in the largest letters in which it fits: on one line, or smaller on two, and never smaller than what stands under it. */
const titleRows = (outlines: Outlines, text: string, { em }: CardFormat, width: number): readonly Words[] => {
  const words = (size: number): Words => ({ text, em: size, weight: 'semibold', ink: 'ink' })
  if (outlines.width(text, em.title, 'semibold') <= width) return [words(em.title)]
  for (let size = em.smallTitle; ; size *= SMALLER) {
    const lines = broken(outlines, words(size), width)
    if (lines.length <= MOST_LINES || size * SMALLER < em.sub)
      return lines.map((line) => ({ ...words(size), text: line }))
  }
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
