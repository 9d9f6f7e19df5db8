import { MAKING_CAUTIONS } from '../caution.ts'
import type { Layer, Point, Shape } from '../drawing.ts'
import { breakLines, emOf, shortened, textWidth } from '../lettering/measure.ts'
import { NOTE_SIZE, SMALL_SIZE as SMALL } from '../lettering/sizes.ts'
import type { PageFrame } from './paper.ts'

/** What every page says about itself. */
export interface PageWords {
  readonly label: string
  readonly stove: string
  readonly date: string
  readonly version: string
  readonly page: number
  readonly pages: number
}

/** From base line to base line [em]. */
const LEADING = 1.12
/** Length of a check bar [mm], and of the 4 in one beside it. */
const CHECK_BAR = 100
const FOUR_INCHES = 101.6
const END_TICK = 1.4

const line = (from: Point, to: Point, layer: Layer = 'dimension'): Shape => ({
  kind: 'line',
  layer,
  from,
  to,
})

const text = (
  words: string,
  at: Point,
  size: number,
  {
    anchor = 'start',
    angle = 0,
  }: { readonly anchor?: 'start' | 'middle' | 'end'; readonly angle?: number } = {},
): Shape => ({ kind: 'text', layer: 'text', at, text: words, size, anchor, angle })

/** Lines of text from the top down. */
const column = (words: readonly string[], at: Point, size: number, pitch: number): readonly Shape[] =>
  words.map((line, index) => text(line, { x: at.x, y: at.y - index * pitch }, size))

/** A bar of 100 mm and one of 4 in beside it, from the same end. `along` is 1 for x, 0 for y. */
const checkBar = (start: Point, upright: boolean): readonly Shape[] => {
  const at = (along: number, aside: number): Point =>
    upright ? { x: start.x - aside, y: start.y + along } : { x: start.x + along, y: start.y + aside }
  const bar = (long: number, aside: number, ticks: number): readonly Shape[] => [
    line(at(0, aside), at(long, aside), 'drill'),
    line(at(0, aside), at(0, aside + ticks)),
    line(at(long, aside), at(long, aside + ticks)),
  ]
  const angle = upright ? 90 : 0
  return [
    ...bar(CHECK_BAR, 0, END_TICK),
    text('100 mm', at(CHECK_BAR / 2, 0.9), SMALL, { anchor: 'middle', angle }),
    ...bar(FOUR_INCHES, -1, -END_TICK),
    text('4 in', at(FOUR_INCHES / 2, -1 - 0.9 - SMALL), SMALL, { anchor: 'middle', angle }),
  ]
}

const PRINTING =
  'Print at 100 %, “actual size”: no “fit to page”, no “shrink”. Measure both bars, this one and the upright one: ' +
  'accept the page if each is right within 0.5 mm (1/64 in); otherwise its holes will be in the wrong place.'

const head = ({ head: { left, right, top } }: PageFrame, { label }: PageWords): readonly Shape[] => [
  text(shortened(label, NOTE_SIZE, right - left), { x: left, y: top - 1.15 * NOTE_SIZE }, NOTE_SIZE),
]

/** Each caution on a line of its own where the page is narrow, else one after the other. */
const cautionLines = (width: number): readonly string[] => {
  const apart = MAKING_CAUTIONS.flatMap((caution) => breakLines(caution, SMALL, width))
  const together = breakLines(MAKING_CAUTIONS.join(' '), SMALL, width)
  return apart.length - together.length > 1 ? together : apart
}

const foot = (frame: PageFrame, words: PageWords): readonly Shape[] => {
  const { left, right, bottom, top } = frame.foot
  const { stove, date, version, page, pages } = words
  const pitch = emOf(SMALL) * LEADING
  const beside = left + FOUR_INCHES + 5
  const issue = `${date} · Tinwright ${version} · page ${page} of ${pages}`
  const name = shortened(stove, SMALL, right - left - textWidth(issue, SMALL) - 5)
  const cautions = cautionLines(right - left)
  const cautionTop = bottom + 1 + pitch * cautions.length + 1.2
  return [
    ...checkBar({ x: left, y: top - 6.5 }, false),
    ...column(breakLines(PRINTING, SMALL, right - beside), { x: beside, y: top - 4.2 }, SMALL, pitch),
    ...column(cautions, { x: left, y: cautionTop }, SMALL, pitch),
    text(name, { x: left, y: bottom + 0.7 }, SMALL),
    text(issue, { x: right, y: bottom + 0.7 }, SMALL, { anchor: 'end' }),
  ]
}

/** Everything on a page but the drawings: label, check bars, how to print, cautions, whose page it is. */
export const pageFurniture = (frame: PageFrame, words: PageWords): readonly Shape[] => {
  const { left, right, bottom } = frame.barColumn
  return [
    ...head(frame, words),
    ...checkBar({ x: (left + right) / 2 - 0.6, y: bottom + 6 }, true),
    ...foot(frame, words),
  ]
}
