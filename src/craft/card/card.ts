import { CARD_CAUTIONS } from '../caution.ts'
import type { Outlines } from '../lettering/outline.ts'
import type { Theme } from '../section/theme.ts'
import { element, escaped } from '../svg/element.ts'
import type { Block } from './block.ts'
import { type Board, type Lettered, openBoard, type Spot, type Words } from './board.ts'
import type { Content } from './content.ts'
import { type CardFormat, type CardShape, cardFormats, SMALLEST_SIZE } from './format.ts'
import { type Head, headOf } from './head.ts'
import { type Page, spreadOut } from './page.ts'
import { BLOCK_GAP, broken, type Column, columnWidth, RUN_GAP, shortened } from './setting.ts'
import { spoken } from './spoken.ts'

/** One card, with what a test needs to know of it. */
export interface Card {
  readonly shape: CardShape
  readonly width: number
  readonly height: number
  /** Name of the part; null for the whole stove. */
  readonly part: string | null
  readonly title: string
  /** Its number among the cards of the same part, from 1. */
  readonly number: number
  readonly of: number
  readonly svg: string
  readonly lettered: readonly Lettered[]
  /** Lines of the picture that no lettering may touch. */
  readonly rules: readonly (readonly [Spot, Spot])[]
}

export interface CardSettings {
  readonly stove: string
  readonly theme: Theme
  readonly outlines: Outlines
  readonly date: string
}

const drawColumn = (
  board: Board,
  format: CardFormat,
  column: Column,
  { left, top }: { readonly left: number; readonly top: number },
): void => {
  let y = top
  for (const { set } of column) {
    for (const { runs, height } of set.rows) {
      const largest = Math.max(...runs.map(({ em }) => em))
      let x = left
      for (const words of runs)
        x = board.letter(words, { x, y: y + 0.86 * largest }).right + RUN_GAP * words.em
      y += height
    }
    y += BLOCK_GAP * format.em.line
  }
}

const drawFoot = (board: Board, { foot, em, margin, width }: CardFormat, date: string): void => {
  board.rule(
    [
      { x: margin, y: foot.rule },
      { x: width - margin, y: foot.rule },
    ],
    false,
    { fill: 'none', stroke: board.theme.hairline, 'stroke-width': 3 },
  )
  const caution: Words = { text: CARD_CAUTIONS.join(' '), em: em.caution, weight: 'semibold', ink: 'ink' }
  for (const [i, text] of broken(board.outlines, caution, width - 2 * margin).entries())
    board.letter({ ...caution, text }, { x: margin, y: foot.lines[i] as number })
  board.letter(
    { text: `Tinwright, ${date}`, em: em.imprint, weight: 'regular', ink: 'muted' },
    { x: width - margin, y: foot.imprint },
    'end',
  )
}

const describe = (content: Content, blocks: readonly Block[]): string =>
  spoken(
    [
      content.sub,
      ...blocks.map(
        ({ name, key, lines }) => `${name}: ${[key, ...lines].filter((line) => line !== null).join('; ')}.`,
      ),
      ...CARD_CAUTIONS,
    ]
      .filter((line) => line !== null && line !== '')
      .join(' '),
  )

const svgOf = (board: Board, { width, height }: CardFormat, title: string, description: string): string =>
  `${element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: 'img',
      'aria-labelledby': 'title desc',
    },
    [
      '',
      element('title', { id: 'title' }, escaped(title)),
      element('desc', { id: 'desc' }, escaped(description)),
      ...(board.definitions() === '' ? [] : [element('defs', {}, `\n${board.definitions()}\n`)]),
      element('rect', { width, height, fill: board.theme.paper }),
      board.body(),
      '',
    ].join('\n'),
  )}\n`

interface Dealt extends Page {
  readonly content: Content
  readonly head: Head
}

const drawCard = (
  { content, head, picture, top, columns }: Dealt,
  number: number,
  of: number,
  format: CardFormat,
  { stove, theme, outlines, date }: CardSettings,
): Card => {
  const board = openBoard(theme, outlines)
  const { em, shape, width, height, text } = format
  const blocks = columns.flat().map(({ block }) => block)
  const told = new Set(blocks.flatMap(({ opening }) => (opening === null ? [] : [opening])))
  content.draw(board, format, picture, told)
  const counted = of === 1 ? '' : `${number}/${of}`
  const room = text.right - text.left - 2 * em.eyebrow
  const weight = content.eyebrow.strong ? 'semibold' : 'regular'
  const eyebrowWidth = outlines.width(content.eyebrow.text, em.eyebrow, weight)
  const eyebrow: Words = {
    text: content.eyebrow.text,
    em: Math.max(SMALLEST_SIZE * width, Math.min(em.eyebrow, (em.eyebrow * room) / eyebrowWidth)),
    weight,
    ink: content.eyebrow.strong ? 'ember' : 'muted',
  }
  board.letter(
    { ...eyebrow, text: shortened(outlines, eyebrow, room) },
    { x: format.head.left, y: format.head.eyebrow },
  )
  if (counted !== '')
    board.letter(
      { text: counted, em: em.eyebrow, weight: 'semibold', ink: 'muted' },
      { x: text.right, y: format.head.eyebrow },
      'end',
    )
  for (const { words, y } of head.rows) board.letter(words, { x: format.head.left, y })
  const step = columnWidth(format) + format.columns.gap
  for (const [i, column] of columns.entries())
    drawColumn(board, format, column, { left: text.left + i * step, top })
  drawFoot(board, format, date)
  const title = `${content.part === null ? stove : `${stove}, ${content.part}`}${counted === '' ? '' : ` (${counted})`}`
  return {
    shape,
    width,
    height,
    part: content.part,
    title,
    number,
    of,
    svg: svgOf(board, format, title, describe(content, blocks)),
    lettered: board.lettered,
    rules: board.rules,
  }
}

/** The cards of one part, or of the whole stove, in one shape. */
export const cardsOfContents = (
  contents: readonly Content[],
  shape: CardShape,
  settings: CardSettings,
): readonly Card[] => {
  const format = cardFormats[shape]
  const width = format.text.right - format.text.left
  const all = contents.flatMap((content): readonly Dealt[] => {
    const head = headOf(settings.outlines, content, format, width)
    return spreadOut(settings.outlines, content.blocks, head, format).map((page) => ({
      content,
      head,
      ...page,
    }))
  })
  return all.map((one, i) => drawCard(one, i + 1, all.length, format, settings))
}
