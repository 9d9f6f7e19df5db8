import type { PaperName } from '../sheet/paper.ts'
import { pageSize } from '../sheet/paper.ts'
import { element } from '../svg/element.ts'
import type { Section } from './block.ts'
import { flow } from './flow.ts'
import { type Canvas, drawLine, drawRule, type Mark, MUTED, openCanvas } from './paint.ts'
import type { Strip } from './strips/strip.ts'
import { breakLines, SMALL } from './type.ts'

const POINTS_PER_MM = 72 / 25.4

/** A finished page: an SVG in points, and where its text and pictures stand. */
export interface LaidPage {
  readonly svg: string
  readonly width: number
  readonly height: number
  readonly marks: readonly Mark[]
  /** Title of the section it begins with or carries on. */
  readonly section: string
}

export interface PageWords {
  /** Of the plan, at the head of every page but the first. */
  readonly title: string
  /** `2031-05-17 · Tinwright 0.1.0` */
  readonly issue: string
  /** One line that goes on every page. */
  readonly foot: string
}

const MARGIN = { left: 51, right: 45, top: 58, bottom: 54 }

/** What a page of a paper holds between its margins [pt]. */
export interface PageRoom {
  readonly width: number
  readonly height: number
}

/** Room on a page of a paper, upright [pt]. */
export const pageRoom = (paper: PaperName): PageRoom => {
  const size = pageSize(paper, 'portrait')
  return {
    width: size.width * POINTS_PER_MM - MARGIN.left - MARGIN.right,
    height: size.height * POINTS_PER_MM - MARGIN.top - MARGIN.bottom,
  }
}

interface Filling {
  readonly canvas: Canvas
  readonly section: string
}

/** From the first strip up to the one before it may be parted: what must share a page. */
const bound = (strips: readonly Strip[], from: number): readonly Strip[] => {
  let end = from
  while (end < strips.length - 1 && (strips[end] as Strip).keep) end++
  return strips.slice(from, end + 1)
}

const heightOf = (strips: readonly Strip[], first: boolean): number =>
  strips.reduce((sum, { height, before }, i) => sum + height + (i === 0 && first ? 0 : before), 0)

/** What shares a page, its last picture made lower where that takes off what is too much; else as it was. */
const lowered = (strips: readonly Strip[], by: number): readonly Strip[] => {
  if (by <= 0) return strips
  for (const [i, strip] of [...strips.entries()].reverse()) {
    const lower = strip.lower?.(by) ?? null
    if (lower !== null) return strips.with(i, lower)
  }
  return strips
}

/**
 * Sets sections on pages of a paper: a section that stands apart begins a page, what is kept together stays together
 * where one page holds it, a table that runs on repeats its head. The same sections always give the same pages.
 */
export const layPages = (
  sections: readonly Section[],
  paper: PaperName,
  words: PageWords,
  pages: { readonly first: number; readonly of: number | null } = { first: 1, of: null },
): readonly LaidPage[] => {
  const size = pageSize(paper, 'portrait')
  const [width, height] = [size.width * POINTS_PER_MM, size.height * POINTS_PER_MM]
  const column = width - MARGIN.left - MARGIN.right
  const bottom = height - MARGIN.bottom
  const filled: Filling[] = []
  let y = bottom
  let current: Filling | null = null
  const open = (section: string): Filling => {
    const fresh = { canvas: openCanvas(), section }
    filled.push(fresh)
    y = MARGIN.top
    return fresh
  }
  for (const { title, blocks, apart } of sections) {
    const strips = blocks.flatMap((block) => flow(block, column))
    const leftOver = (bottom - y) / (bottom - MARGIN.top)
    if (current === null || apart === true || (apart === 'half' && leftOver < 0.5)) current = open(title)
    for (let i = 0; i < strips.length; ) {
      const atTop = y <= MARGIN.top + 0.01
      const whole = bound(strips, i)
      const group = lowered(whole, y + heightOf(whole, atTop) - bottom)
      const fits = y + heightOf(group, atTop) <= bottom + 0.01
      const splits = heightOf(group, true) > bottom - MARGIN.top
      if (
        !fits &&
        !atTop &&
        !(splits && group.length > 1 && y + heightOf(group.slice(0, 1), false) <= bottom)
      ) {
        current = open(title)
        const head = (strips[i] as Strip).head
        if (head !== undefined && i > 0 && (strips[i - 1] as Strip).head === head) {
          head.draw(current.canvas, MARGIN.left, y)
          y += head.height
        }
        continue
      }
      // A group too tall for any page is set strip by strip.
      const set = fits ? group : group.slice(0, 1)
      for (const [k, strip] of set.entries()) {
        if (!(k === 0 && atTop)) y += strip.before
        strip.draw(current.canvas, MARGIN.left, y)
        y += strip.height
      }
      i += set.length
    }
  }
  return filled.map(({ canvas, section }, i) => {
    const page = pages.first + i
    const { title, issue, foot } = words
    if (page > 1) {
      drawLine(canvas, MARGIN.left, 36, title, { type: SMALL, ink: MUTED })
      drawLine(canvas, width - MARGIN.right, 36, section, { type: SMALL, ink: MUTED, anchor: 'end' })
      drawRule(canvas, MARGIN.left, width - MARGIN.right, 42, 0.5)
    }
    const number = pages.of === null ? `${page}` : `${page} of ${pages.of}`
    const line = breakLines(foot, SMALL, column)
    for (const [k, text] of line.entries())
      drawLine(canvas, MARGIN.left, height - 34 + k * 9.5 - (line.length - 1) * 9.5, text, {
        type: SMALL,
        ink: MUTED,
      })
    drawLine(canvas, MARGIN.left, height - 23, issue, { type: SMALL, ink: MUTED })
    drawLine(canvas, width - MARGIN.right, height - 23, number, { type: SMALL, ink: MUTED, anchor: 'end' })
    const svg = element(
      'svg',
      { xmlns: 'http://www.w3.org/2000/svg', viewBox: `0 0 ${width.toFixed(2)} ${height.toFixed(2)}` },
      canvas.parts.join('\n'),
    )
    return { svg, width, height, marks: canvas.marks, section }
  })
}
