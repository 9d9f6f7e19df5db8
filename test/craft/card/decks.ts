import { type Cards, type CardsInput, cardsOf } from '#craft/card/cards.ts'
import { airOf, cardFigures } from '#craft/card/figures.ts'
import { lightTheme } from '#craft/section/theme.ts'
import { reportOf } from '#science/answers/burn/report.ts'
import { usualWish } from '#science/answers/figures.ts'
import { mildDay } from '#science/site.ts'
import { readStove } from '#stove/document/read.ts'
import type { Stove } from '#stove/model.ts'
import { stoveExamples } from '../../stove/document/examples.ts'
import { fonts } from '../fonts.ts'

export const plainInput = (stove: Stove): CardsInput => ({
  stove,
  burn: null,
  figures: null,
  shapes: ['wide', 'square'],
  theme: lightTheme,
  date: '2031-05-17',
  fonts,
})

/** The stove with what is said of its burn. */
const burningInput = (stove: Stove): CardsInput => {
  const outcome = reportOf(
    {
      stove,
      site: mildDay,
      moisture: null,
      burntOff: true,
      hot: false,
      turns: [],
      wish: { ...usualWish, potDiameter: stove.potDiameter ?? usualWish.potDiameter },
      trip: null,
    },
    4,
  )
  if (outcome.kind === 'no burn') throw new Error(`${stove.name} does not burn`)
  return { ...plainInput(stove), burn: airOf(outcome.report), figures: cardFigures(outcome.report) }
}

export interface Deck {
  readonly name: string
  readonly input: CardsInput
  readonly made: Cards
}

/** The cards of every example, with figures. */
export const decks: readonly Deck[] = stoveExamples.map(({ name, text }) => {
  const read = readStove(text)
  if (!read.ok) throw new Error(`${name} does not read`)
  const input = burningInput(read.value)
  return { name, input, made: cardsOf(input) }
})
