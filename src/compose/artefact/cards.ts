import { strToU8 } from 'fflate'
import type { Card } from '#craft/card/card.ts'
import { type Cards, type CardsInput, cardsOf } from '#craft/card/cards.ts'
import { airOf, cardFigures } from '#craft/card/figures.ts'
import type { CardShape } from '#craft/card/format.ts'
import { cardPng, type PngPainter } from '#craft/card/png.ts'
import { fileNameOf } from '#craft/fileName.ts'
import type { ReportOutcome } from '#science/answers/burn/report.ts'
import type { Stove } from '#stove/model.ts'
import { type ArtefactFile, textFile } from './file.ts'

/** Cards of a stove with what its burn is predicted to be; of one that does not burn, with sizes only. */
export const drawCards = (
  stove: Stove,
  outcome: ReportOutcome,
  given: Pick<CardsInput, 'shapes' | 'theme' | 'date' | 'fonts'>,
): Cards => {
  const report = outcome.kind === 'burn' ? outcome.report : null
  return cardsOf({
    stove,
    burn: report === null ? null : airOf(report),
    figures: report === null ? null : cardFigures(report),
    ...given,
  })
}

/** Of files without what says the format; numbered within each shape, so that a folder shows them in order. */
export const cardNames = (stove: string, cards: readonly Card[]): readonly string[] => {
  const counts = new Map<CardShape, number>()
  return cards.map(({ shape, part }) => {
    const number = (counts.get(shape) ?? 0) + 1
    counts.set(shape, number)
    return [fileNameOf(stove), String(number).padStart(2, '0'), fileNameOf(part ?? 'stove'), shape].join('-')
  })
}

export type CardFormat = 'svg' | 'png'

/** One card in one format. */
export const cardFile = (
  card: Card,
  name: string,
  format: CardFormat,
  paint: PngPainter | null,
): ArtefactFile => ({
  name: `${name}.${format}`,
  bytes: format === 'png' && paint !== null ? cardPng(card, paint) : strToU8(card.svg),
})

/** Every size as a plain list, to read aloud. */
export const sizesFile = (stove: string, { list }: Cards): ArtefactFile =>
  textFile(`${fileNameOf(stove)}-sizes.txt`, list)
