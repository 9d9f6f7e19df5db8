import { type Frame, pixelX, pixelY } from '#craft/section/frame.ts'
import type { SectionLabel } from '#craft/section/labels.ts'
import { lineWidth, type Sheet } from '#craft/section/sheet.ts'
import { spread } from '#craft/section/spread.ts'
import { escaped, px } from '#craft/svg/element.ts'
import type { LabelLine } from './labelWords.ts'

const SIZES = { name: 15, plain: 15, small: 13 } as const
const LEADING = 1.24
const GAP = 9

/** A size too long for its column goes on in the next line with its other half. */
const broken = (line: LabelLine, width: number): readonly LabelLine[] => {
  const at = line.text.indexOf(' (')
  if (line.weight !== 'plain' || at < 0 || lineWidth(line.text, SIZES.plain) <= width) return [line]
  return [
    { ...line, text: line.text.slice(0, at) },
    { text: line.text.slice(at + 1), weight: 'small' },
  ]
}

/** Name and what follows stand in one line where there is room for both. */
const joined = (all: readonly LabelLine[], width: number): readonly (readonly LabelLine[])[] => {
  const lines = all.flatMap((line) => broken(line, width))
  const [name, second, ...rest] = lines
  if (name === undefined) return []
  const together =
    second?.weight === 'plain' &&
    lineWidth(name.text, SIZES.name, 'semibold') + 6 + lineWidth(second.text, SIZES.plain) <= width
  return together ? [[name, second], ...rest.map((line) => [line])] : lines.map((line) => [line])
}

export interface LabelSide {
  readonly side: 'left' | 'right'
  /** From the axis to the words, and to where leaders bend [px]. */
  readonly x: number
  readonly elbow: number
  readonly width: number
  readonly top: number
  readonly bottom: number
}

/** Height that labels take up one below the other [px]. */
export const labelsHeight = (labels: readonly (readonly LabelLine[])[], width: number): number =>
  labels.reduce(
    (sum, lines) =>
      sum +
      GAP +
      joined(lines, width).reduce((high, [first]) => high + SIZES[first?.weight ?? 'small'] * LEADING, 0),
    -GAP,
  )

/** Words beside the section, none over another, each with a leader to its place. */
export const drawLabels = (
  sheet: Sheet,
  frame: Frame,
  labels: readonly { readonly label: SectionLabel; readonly lines: readonly LabelLine[] }[],
  { side, x: fromAxis, elbow: bendAt, width, top, bottom }: LabelSide,
): void => {
  const sign = side === 'right' ? 1 : -1
  const [x, elbow] = [frame.axis + sign * fromAxis, frame.axis + sign * bendAt]
  const set = labels.map(({ label, lines }) => {
    const rows = joined(lines, width)
    return {
      label,
      rows,
      height: rows.reduce((sum, [first]) => sum + SIZES[first?.weight ?? 'small'] * LEADING, 0),
    }
  })
  const tops = spread(
    set.map(({ label, height }) => ({ want: pixelY(frame, label.at.z + label.lift) + 6, height })),
    GAP,
    top,
    bottom,
  )
  const { paper, muted, ink } = sheet.theme
  for (const [i, { label, rows }] of set.entries()) {
    const labelTop = tops[i] ?? top
    const level = labelTop + 8
    const [placeX, placeY] = [pixelX(frame, label.at.r * sign), pixelY(frame, label.at.z)]
    const from = label.dot ? placeX : placeX + sign * 4
    const d = `M${px(from)} ${px(placeY)}V${px(placeY - label.lift * frame.scale)}H${px(elbow)}L${px(x - sign * 18)} ${px(level)}H${px(x - sign * 6)}`
    sheet.draw('path', { d, fill: 'none', stroke: paper, 'stroke-width': 2.6, opacity: 0.7 })
    sheet.draw('path', { d, fill: 'none', stroke: muted, 'stroke-width': 0.8 })
    if (label.dot)
      sheet.draw('circle', { cx: placeX, cy: placeY, r: 2.4, fill: ink, stroke: paper, 'stroke-width': 1 })
    let y = labelTop
    for (const row of rows) {
      const size = SIZES[row[0]?.weight ?? 'small']
      y += size * LEADING
      const spans = row
        .map(
          ({ text, weight }, n) =>
            `<tspan class="stage-${weight}"${n > 0 ? ' dx="6"' : ''}>${escaped(text)}</tspan>`,
        )
        .join('')
      sheet.draw(
        'text',
        {
          x,
          y: y - size * (LEADING - 0.98),
          'text-anchor': side === 'right' ? undefined : 'end',
          'data-part': label.of === 'part' ? label.name : label.part,
          'data-opening': label.of === 'opening' ? label.name : undefined,
        },
        spans,
      )
    }
  }
}
