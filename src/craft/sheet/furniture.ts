import type { Shape } from '../drawing.ts'
import { breakLines, shortened, textWidth } from '../lettering/measure.ts'
import { NOTE_SIZE, SMALL_SIZE as SMALL } from '../lettering/sizes.ts'
import { checkBar, FOUR_INCHES } from './checkBar.ts'
import type { PageFrame } from './paper.ts'
import { cautionLines, column, PITCH, text } from './words.ts'

/** What every page says about itself. */
export interface PageWords {
  readonly label: string
  readonly stove: string
  readonly date: string
  readonly version: string
  readonly page: number
  readonly pages: number
}

const PRINTING =
  'Print at 100 %, “actual size”: no “fit to page”, no “shrink”. Measure both bars, this one and the upright one: ' +
  'accept the page if each is right within 0.5 mm (1/64 in); otherwise its holes will be in the wrong place.'

const head = ({ head: { left, right, top } }: PageFrame, { label }: PageWords): readonly Shape[] => [
  text(shortened(label, NOTE_SIZE, right - left), { x: left, y: top - 1.15 * NOTE_SIZE }, NOTE_SIZE),
]

const foot = (frame: PageFrame, words: PageWords): readonly Shape[] => {
  const { left, right, bottom, top } = frame.foot
  const { stove, date, version, page, pages } = words
  const beside = left + FOUR_INCHES + 5
  const issue = `${date} · Tinwright ${version} · page ${page} of ${pages}`
  const name = shortened(stove, SMALL, right - left - textWidth(issue, SMALL) - 5)
  const cautions = cautionLines(right - left)
  const cautionTop = bottom + 1 + PITCH * cautions.length + 1.2
  return [
    ...checkBar({ x: left, y: top - 6.5 }, false),
    ...column(breakLines(PRINTING, SMALL, right - beside), { x: beside, y: top - 4.2 }, SMALL),
    ...column(cautions, { x: left, y: cautionTop }, SMALL),
    text(name, { x: left, y: bottom + 0.7 }, SMALL),
    text(issue, { x: right, y: bottom + 0.7 }, SMALL, { anchor: 'end' }),
  ]
}

/** Everything on a page but the drawings: label, check bars, how to print, cautions, whose page it is. */
export const pageFurniture = (frame: PageFrame, words: PageWords): readonly Shape[] => {
  const { left, right, bottom } = frame.barColumn
  return [
    ...head(frame, words),
    ...checkBar({ x: (left + right) / 2 - 1.4, y: bottom + 6 }, true),
    ...foot(frame, words),
  ]
}
