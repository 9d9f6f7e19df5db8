import { px } from '../svg/element.ts'
import { type Frame, pixelX, pixelY } from './frame.ts'
import type { SectionLabel } from './labels.ts'
import { BODY_SIZE, linesOf, lineWidth, type Run, runsWidth, type Sheet, SMALL_SIZE } from './sheet.ts'
import { spread } from './spread.ts'

/** A column of labels beside the section, and where its leaders bend. */
export interface LabelColumn {
  readonly side: 'left' | 'right'
  /** From the axis to the edge of the text next to the section [px]. */
  readonly x: number
  readonly width: number
  /** From the axis to where leaders leave their level [px]. */
  readonly elbow: number
  readonly top: number
  readonly bottom: number
}

const LEADING = 1.24
const GAP = 11

type SetLine = Run & { readonly then?: Run }

const name = (text: string): Run => ({ text, size: BODY_SIZE, weight: 'semibold', ink: 'ink' })
const body = (text: string): Run => ({ text, size: BODY_SIZE, weight: 'regular', ink: 'ink' })
const small = (text: string): Run => ({ text, size: SMALL_SIZE, weight: 'regular', ink: 'muted' })

/** The first of several ways to go on after the name that fits in its line. */
const firstFitting = (first: Run, ways: readonly Run[], width: number): Run | undefined =>
  ways.find((then) => runsWidth({ ...first, then }) <= width)

/** The rest of a label in small letters; a dot that ends up at the end of a line parts nothing. */
const under = (texts: readonly string[], width: number): readonly SetLine[] =>
  texts.flatMap((text) => linesOf(text, SMALL_SIZE, width)).map((line) => small(line.replace(/ ·$/, '')))

/**
 * Name first; beside it, as far as there is room, the size of an opening or the size code of a can; the rest below it
 * in small letters.
 */
export const labelLines = (label: SectionLabel, width: number): readonly SetLine[] => {
  const first = name(label.name)
  const { of, code, size, more } = label
  const [metric, inch] = size ?? ['', '']
  if (size === null) return [first, ...under(more, width)]
  if (of !== 'opening') {
    const then = code === '' ? undefined : firstFitting(first, [small(code)], width)
    const both = `${metric} (${inch})`
    const sizes = lineWidth(both, SMALL_SIZE) <= width ? [both] : [metric, inch]
    return [
      then === undefined ? first : { ...first, then },
      ...under([...sizes, ...(code !== '' && then === undefined ? [code] : []), ...more], width),
    ]
  }
  const then = firstFitting(first, [body(`${metric} (${inch})`), body(metric)], width)
  if (then === undefined) return [first, ...under([`${metric} (${inch})`, ...more], width)]
  const rest = then.text === metric ? [`(${inch})`, ...more] : more
  return [{ ...first, then }, ...under(rest, width)]
}

const heightOf = (lines: readonly SetLine[]): number =>
  lines.reduce((sum, { size }) => sum + size * LEADING, 0)

/** Height that labels take up one below the other [px]. */
export const columnHeight = (labels: readonly SectionLabel[], width: number): number =>
  labels.reduce((sum, label) => sum + heightOf(labelLines(label, width)) + GAP, -GAP)

/** Sets labels in a column, none over another, each with a leader to its place. */
export const drawLabelColumn = (
  sheet: Sheet,
  frame: Frame,
  labels: readonly SectionLabel[],
  { side, x: fromAxis, width, elbow: bendFromAxis, top, bottom }: LabelColumn,
): void => {
  const sign = side === 'right' ? 1 : -1
  const [x, elbow] = [frame.axis + sign * fromAxis, frame.axis + sign * bendFromAxis]
  const set = labels.map((label) => ({ label, lines: labelLines(label, width) }))
  const tops = spread(
    set.map(({ label, lines }) => ({
      want: pixelY(frame, label.at.z + label.lift) + 6,
      height: heightOf(lines),
    })),
    GAP,
    top,
    bottom,
  )
  for (const [i, { label, lines }] of set.entries()) {
    const labelTop = tops[i] ?? top
    const level = labelTop + BODY_SIZE * 0.52
    const [placeX, placeY] = [pixelX(frame, label.at.r * sign), pixelY(frame, label.at.z)]
    const from = label.dot ? placeX : placeX + sign * 4
    const d = `M${px(from)} ${px(placeY)}V${px(placeY - label.lift * frame.scale)}H${px(elbow)}L${px(x - sign * 18)} ${px(level)}H${px(x - sign * 6)}`
    sheet.draw('path', { d, fill: 'none', stroke: sheet.theme.paper, 'stroke-width': 2.6, opacity: 0.7 })
    sheet.draw('path', { d, fill: 'none', stroke: sheet.theme.muted, 'stroke-width': 0.8 })
    if (label.dot)
      sheet.draw('circle', {
        cx: placeX,
        cy: placeY,
        r: 2.6,
        fill: sheet.theme.ink,
        stroke: sheet.theme.paper,
        'stroke-width': 1.2,
      })
    let y = labelTop
    for (const line of lines) {
      y += line.size * LEADING
      sheet.letter({
        ...line,
        x,
        y: y - line.size * (LEADING - 0.98),
        anchor: side === 'right' ? 'start' : 'end',
      })
    }
  }
}
