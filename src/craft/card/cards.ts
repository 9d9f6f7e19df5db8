import type { Stove } from '#stove/model.ts'
import { dayOf } from '../day.ts'
import { openOutlines } from '../lettering/outline.ts'
import type { LetteringFonts } from '../pdf/face.ts'
import type { BurnSummary } from '../section/airState.ts'
import type { Theme } from '../section/theme.ts'
import { type Card, cardsOfContents } from './card.ts'
import { contentsOf } from './content.ts'
import type { CardFigures } from './figures.ts'
import type { CardShape } from './format.ts'
import { readAloud } from './list.ts'

export interface CardsInput {
  readonly stove: Stove
  /** What flows where, for the section of the whole stove; null draws it cold. */
  readonly burn: BurnSummary | null
  /** Null where there is no prediction: the cards then say sizes only. */
  readonly figures: CardFigures | null
  readonly shapes: readonly CardShape[]
  readonly theme: Theme
  /** Day the cards bear, `2031-05-17`. */
  readonly date: string
  readonly fonts: LetteringFonts
}

export interface Cards {
  /** The whole stove first, then part by part, shape by shape. */
  readonly cards: readonly Card[]
  /** The same sizes as a plain text list. */
  readonly list: string
  /** Letters of the stove's own names that the fonts do not have; they are drawn as `?`. */
  readonly missingLetters: readonly string[]
}

/**
 * Cards of a stove, whole and part by part, to show in a video or a post. The same input gives the same bytes.
 * Throws `BadInput` for a band that goes round no can and for a date that is none.
 */
export const cardsOf = ({ stove, burn, figures, shapes, theme, date, fonts }: CardsInput): Cards => {
  dayOf(date)
  const outlines = openOutlines(fonts)
  const contents = contentsOf(stove, burn, figures)
  const settings = { stove: stove.name, theme, outlines, date }
  const parts = [...new Set(contents.map(({ part }) => part))]
  const cards = shapes.flatMap((shape) =>
    parts.flatMap((part) =>
      cardsOfContents(
        contents.filter((content) => content.part === part),
        shape,
        settings,
      ),
    ),
  )
  return { cards, list: readAloud({ stove, figures, date }), missingLetters: outlines.missing() }
}
