import { linesOf, lineWidth, type Sheet } from '#craft/section/sheet.ts'
import type { Theme } from '#craft/section/theme.ts'
import { element, px } from '#craft/svg/element.ts'
import { ticksOf, tickText } from './axis.ts'
import type { Note, Panel, Point, Series, Tone } from './panel.ts'

const HEADING = 14
const SMALL = 12.5
const LABEL_GAP = 8
const LABEL_LEADING = 15

/** A word that was set, for the test that no two stand on each other. */
export interface SetWord {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

export interface Frame {
  readonly left: number
  readonly top: number
  /** Of panel and labels together. */
  readonly width: number
  /** Room for tick text and for labels, where panels one under the other share an axis. */
  readonly margins?: { readonly left: number; readonly right: number }
}

const colourOf = (theme: Theme, tone: Tone): string =>
  ({
    ember: theme.ember,
    cool: theme.airEdge,
    ink: theme.ink,
    muted: theme.muted,
    fuel: '#8a6a2f',
    char: theme.char,
  })[tone]

export const rightMargin = ({ series }: Panel): number =>
  Math.max(
    14,
    ...series.map(({ label }) => (label === undefined ? 0 : lineWidth(label, SMALL) + LABEL_GAP + 4)),
  )

export const leftMargin = ({ y }: Panel): number =>
  Math.max(26, ...ticksOf(y).map((value) => lineWidth(tickText(y, value), SMALL) + 9))

/** Text, and a note of where it stands. */
export const setText = (
  sheet: Sheet,
  words: SetWord[],
  x: number,
  y: number,
  text: string,
  {
    size = SMALL,
    fill = sheet.theme.ink,
    anchor = 'start',
    bold = false,
  }: {
    readonly size?: number
    readonly fill?: string
    readonly anchor?: 'start' | 'middle' | 'end'
    readonly bold?: boolean
  } = {},
): void => {
  const width = lineWidth(text, size, bold ? 'semibold' : 'regular')
  const left = anchor === 'start' ? x : anchor === 'middle' ? x - width / 2 : x - width
  words.push({ text, left, right: left + width, top: y - size * 0.74, bottom: y + size * 0.2 })
  const escaped = text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')
  // A rim of paper, so that a word reads on a line or a shade.
  const halo = {
    stroke: sheet.theme.paper,
    'stroke-width': 3.5,
    'stroke-linejoin': 'round',
    'paint-order': 'stroke',
  }
  sheet.draw(
    'text',
    {
      x,
      y,
      'font-size': size,
      fill,
      'font-weight': bold ? 600 : undefined,
      'text-anchor': anchor === 'start' ? undefined : anchor,
      ...halo,
    },
    escaped,
  )
}

/** Heights of labels as near to where they belong as no two touching allows. */
export const spreadLabels = (
  wanted: readonly number[],
  leading: number,
  top: number,
  bottom: number,
): number[] => {
  const order = wanted.map((y, i) => ({ y, i })).sort((a, b) => a.y - b.y)
  const placed = order.map(({ y }) => y)
  for (let round = 0; round < 60; round++) {
    for (let k = 1; k < placed.length; k++) {
      const short = leading - ((placed[k] as number) - (placed[k - 1] as number))
      if (short <= 0) continue
      placed[k] = (placed[k] as number) + short / 2
      placed[k - 1] = (placed[k - 1] as number) - short / 2
    }
    for (let k = 0; k < placed.length; k++) placed[k] = Math.min(bottom, Math.max(top, placed[k] as number))
  }
  const answer = new Array<number>(wanted.length)
  for (const [k, { i }] of order.entries()) answer[i] = placed[k] as number
  return answer
}

const pathOf = (points: readonly Point[], at: (point: Point) => readonly [number, number]): string => {
  let d = ''
  let pen = false
  for (const point of points) {
    if (!point.every(Number.isFinite)) {
      pen = false
      continue
    }
    const [x, y] = at(point)
    d += `${pen ? 'L' : 'M'}${px(x)} ${px(y)}`
    pen = true
  }
  return d
}

const lastOf = ({ points }: Series): Point | undefined =>
  [...points].reverse().find((point) => point.every(Number.isFinite))

/** Draws one panel and returns its lower edge, axis text included [px]. */
export const drawPanel = (sheet: Sheet, words: SetWord[], frame: Frame, panel: Panel): number => {
  const { theme } = sheet
  const { x: xAxis, y: yAxis, series, height = 210 } = panel
  const headings = linesOf(panel.heading, HEADING, frame.width, 'semibold')
  for (const [i, text] of headings.entries())
    setText(sheet, words, frame.left, frame.top + HEADING + i * 17, text, { size: HEADING, bold: true })
  const top = frame.top + HEADING + (headings.length - 1) * 17 + 14
  const bottom = top + height
  const left = frame.left + (frame.margins?.left ?? leftMargin(panel))
  const right = frame.left + frame.width - (frame.margins?.right ?? rightMargin(panel))
  const atX = (value: number): number =>
    left + ((value - xAxis.from) / (xAxis.to - xAxis.from)) * (right - left)
  const atY = (value: number): number =>
    bottom - ((value - yAxis.from) / (yAxis.to - yAxis.from)) * (bottom - top)
  const at = ([x, y]: Point): readonly [number, number] => [atX(x), atY(y)]
  // Lines that leave the panel are cut at its edge; a little room for a line along it.
  const clip = `clip-${px(left)}-${px(top)}`
  sheet.define(
    'clipPath',
    { id: clip },
    element('rect', { x: left - 2, y: top - 2, width: right - left + 4, height: height + 4 }),
  )

  for (const { area, tone, strength = 0.12 } of panel.shades ?? []) {
    const fill = colourOf(theme, tone)
    if ('axis' in area) {
      const box =
        area.axis === 'x'
          ? { x: atX(area.from), y: top, width: atX(area.to) - atX(area.from), height }
          : { x: left, y: atY(area.to), width: right - left, height: atY(area.from) - atY(area.to) }
      sheet.draw('rect', { ...box, fill, opacity: strength })
    } else {
      const there = pathOf(area.high, at)
      const back = pathOf([...area.low].reverse(), at).replace(/^M/, 'L')
      sheet.draw('path', { d: `${there}${back}Z`, fill, opacity: strength, 'clip-path': `url(#${clip})` })
    }
  }
  for (const value of ticksOf(yAxis)) {
    sheet.draw('path', {
      d: `M${px(left)} ${px(atY(value))}H${px(right)}`,
      stroke: theme.hairline,
      'stroke-width': 1,
    })
    setText(sheet, words, left - 7, atY(value) + 4, tickText(yAxis, value), {
      fill: theme.muted,
      anchor: 'end',
    })
  }
  sheet.draw('path', { d: `M${px(left)} ${px(bottom)}H${px(right)}`, stroke: theme.ink, 'stroke-width': 1.2 })
  for (const value of ticksOf(xAxis)) {
    sheet.draw('path', { d: `M${px(atX(value))} ${px(bottom)}v5`, stroke: theme.ink, 'stroke-width': 1 })
    if (!panel.bareX)
      setText(sheet, words, atX(value), bottom + 18, tickText(xAxis, value), {
        fill: theme.muted,
        anchor: 'middle',
      })
  }
  if (!panel.bareX) setText(sheet, words, right, bottom + 35, xAxis.label, { anchor: 'end', fill: theme.ink })
  for (const { axis, at: value, dash } of panel.rules ?? [])
    sheet.draw('path', {
      d:
        axis === 'x'
          ? `M${px(atX(value))} ${px(top)}V${px(bottom)}`
          : `M${px(left)} ${px(atY(value))}H${px(right)}`,
      stroke: theme.faint,
      'stroke-width': 1.2,
      'stroke-dasharray': dash ? '4 4' : undefined,
    })
  for (const one of series)
    sheet.draw('path', {
      d: pathOf(one.points, at),
      'clip-path': `url(#${clip})`,
      fill: 'none',
      stroke: colourOf(theme, one.tone),
      'stroke-width': one.width ?? 2.4,
      'stroke-linejoin': 'round',
      // A bar ends where its value is.
      'stroke-linecap': (one.width ?? 0) > 6 ? 'butt' : 'round',
      'stroke-dasharray': one.dash ? '6 5' : undefined,
    })
  for (const { at: point, tone, hollow } of panel.dots ?? []) {
    const [cx, cy] = at(point)
    const colour = colourOf(theme, tone)
    sheet.draw('circle', {
      cx,
      cy,
      r: 4.6,
      fill: hollow ? theme.paper : colour,
      stroke: hollow ? colour : theme.paper,
      'stroke-width': hollow ? 2 : 1.5,
    })
  }
  drawLabels(
    sheet,
    words,
    series,
    right,
    (point) => atX(point[0]),
    (point) => atY(point[1]),
    top,
    bottom,
  )
  for (const note of panel.notes ?? []) drawNote(sheet, words, note, at(note.at))
  return bottom + (panel.bareX ? 8 : 42)
}

const drawLabels = (
  sheet: Sheet,
  words: SetWord[],
  series: readonly Series[],
  right: number,
  atX: (point: Point) => number,
  atY: (point: Point) => number,
  top: number,
  bottom: number,
): void => {
  const labelled = series.flatMap((one) => {
    const end = lastOf(one)
    return one.label === undefined || end === undefined ? [] : [{ ...one, label: one.label, end }]
  })
  const heights = spreadLabels(
    labelled.map(({ end }) => atY(end) + 4),
    LABEL_LEADING,
    top + 4,
    bottom + 2,
  )
  for (const [i, { label, tone, end }] of labelled.entries()) {
    const y = heights[i] as number
    const from = atX(end)
    // A line that ends early is joined to its label.
    if (right - from > 12 || Math.abs(y - 4 - atY(end)) > 6)
      sheet.draw('path', {
        d: `M${px(from + 4)} ${px(atY(end))}L${px(right + 5)} ${px(y - 4)}`,
        stroke: sheet.theme.faint,
        'stroke-width': 0.9,
        fill: 'none',
      })
    setText(sheet, words, right + LABEL_GAP, y, label, { fill: colourOf(sheet.theme, tone) })
  }
}

const drawNote = (
  sheet: Sheet,
  words: SetWord[],
  { text, anchor = 'start', dx = 0, dy = 0, tone = 'ink' }: Note,
  [x, y]: readonly [number, number],
): void => {
  const lines = text.split('\n')
  for (const [i, line] of lines.entries())
    setText(sheet, words, x + dx, y + dy + i * 15, line, { anchor, fill: colourOf(sheet.theme, tone) })
}
