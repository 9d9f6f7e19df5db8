import { lineWidth } from '#craft/section/sheet.ts'
import type { Handle } from './handles.ts'

const LETTERS = 13
const LINE = 17
const PAD = 6
/** From the middle of the knob [px]. */
const BESIDE = 20

interface TagProps {
  readonly handle: Handle
  readonly x: number
  readonly y: number
  /** No words beside the section say its name. */
  readonly named: boolean
  readonly narrow: boolean
}

/**
 * What a handle stands at: beside it where words have room, else over the ruler at its height, where no finger hides it and
 * it hides no air.
 */
export const Tag = ({ handle, x, y, named, narrow }: TagProps) => {
  const [metric = '', other] = handle.value.split(' (')
  const [name = ''] = handle.label.split(/ in |, /)
  const lines = [...(named ? [name] : []), metric, ...(other === undefined ? [] : [`(${other}`])]
  const wide = Math.max(...lines.map((line) => lineWidth(line, LETTERS, 'semibold'))) + 2 * PAD
  const high = lines.length * LINE + PAD
  const left = narrow ? 1 : x + BESIDE
  const top = Math.max(2, y - high / 2)
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: a group of an SVG takes no focus
    <g className="grip-tag" aria-hidden="true" transform={`translate(${left} ${top})`}>
      <rect width={wide} height={high} rx={2} />
      {lines.map((line, i) => (
        <text key={line} x={PAD} y={LINE * (i + 1) - 1} data-what={named && i === 0 ? 'name' : 'value'}>
          {line}
        </text>
      ))}
    </g>
  )
}
