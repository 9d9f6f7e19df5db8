import { balancedLines, openSheet, PROSE } from '#craft/section/sheet.ts'
import { svgPage } from '#craft/section/svg.ts'
import { lightTheme } from '#craft/section/theme.ts'
import { drawPanel, leftMargin, rightMargin, type SetWord, setText } from './drawPanel.ts'
import type { Panel } from './panel.ts'

export interface FigurePage {
  readonly title: string
  /** What is seen, in a sentence or two. */
  readonly lead: string
  /** Panels side by side, row by row. */
  readonly rows: readonly (readonly Panel[])[]
  /** One panel under the other on one axis: their sides stand in line. */
  readonly aligned?: boolean
  /** What it was worked out for, at the foot. */
  readonly foot: string
}

/** A finished figure, with what a test needs to know of it. */
export interface Figure {
  readonly svg: string
  readonly width: number
  readonly height: number
  readonly words: readonly SetWord[]
}

const WIDTH = 820
const MARGIN = 26
const BETWEEN = 30
const LEAD = 14.5
const FOOT = 12.5

/** A figure on warm paper: title, what is seen, panels, what it was worked out for. */
export const figurePage = ({ title, lead, rows, aligned = false, foot }: FigurePage): Figure => {
  const sheet = openSheet(lightTheme)
  const words: SetWord[] = []
  const inner = WIDTH - 2 * MARGIN
  let y = MARGIN + 16
  setText(sheet, words, MARGIN, y, title, { size: 22, bold: true })
  y += 6
  for (const line of balancedLines(lead, LEAD, inner * PROSE)) {
    y += 19
    setText(sheet, words, MARGIN, y, line, { size: LEAD, fill: lightTheme.muted })
  }
  y += 14
  const all = rows.flat()
  const margins = aligned
    ? { left: Math.max(...all.map(leftMargin)), right: Math.max(...all.map(rightMargin)) }
    : null
  for (const row of rows) {
    const shares = row.map(({ share = 1 }) => share)
    const whole = shares.reduce((a, b) => a + b, 0)
    const room = inner - BETWEEN * (row.length - 1)
    let left = MARGIN
    let lowest = y
    for (const [i, panel] of row.entries()) {
      const width = (room * (shares[i] as number)) / whole
      lowest = Math.max(
        lowest,
        drawPanel(sheet, words, { left, top: y, width, ...(margins === null ? {} : { margins }) }, panel),
      )
      left += width + BETWEEN
    }
    y = lowest + 8
  }
  y -= 4
  for (const line of balancedLines(foot, FOOT, inner * PROSE)) {
    y += 16
    setText(sheet, words, MARGIN, y, line, { size: FOOT, fill: lightTheme.muted })
  }
  const height = Math.ceil(y + MARGIN - 6)
  return {
    svg: svgPage(sheet, { width: WIDTH, height, title, description: lead }),
    width: WIDTH,
    height,
    words,
  }
}
