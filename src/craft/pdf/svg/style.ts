import { type Paint, readPaint } from './paint.ts'

/** What an element hands down to those inside it. */
export interface Style {
  readonly fill: Paint
  readonly fillOpacity: number
  readonly fillRule: 'nonzero' | 'evenodd'
  readonly stroke: Paint
  readonly strokeOpacity: number
  readonly strokeWidth: number
  readonly lineCap: number
  readonly lineJoin: number
  readonly dashes: readonly number[]
  readonly fontSize: number
  readonly bold: boolean
  readonly anchor: 'start' | 'middle' | 'end'
  /** Stroke lies under the fill: lettering with a halo. */
  readonly strokeFirst: boolean
  /** Product of the `opacity` of all it lies in; overlaps inside a faded group are not told apart from it. */
  readonly opacity: number
}

export const initialStyle: Style = {
  fill: { kind: 'colour', colour: { rgb: [0, 0, 0], alpha: 1 } },
  fillOpacity: 1,
  fillRule: 'nonzero',
  stroke: { kind: 'none' },
  strokeOpacity: 1,
  strokeWidth: 1,
  lineCap: 0,
  lineJoin: 0,
  dashes: [],
  fontSize: 16,
  bold: false,
  anchor: 'start',
  strokeFirst: false,
  opacity: 1,
}

const CAPS: Readonly<Record<string, number>> = { butt: 0, round: 1, square: 2 }
const JOINS: Readonly<Record<string, number>> = { miter: 0, round: 1, bevel: 2 }

const numbersOf = (text: string): readonly number[] =>
  text === 'none'
    ? []
    : text
        .trim()
        .split(/[\s,]+/)
        .map(Number)

/** The style inside an element, from that around it. */
export const styleWithin = (around: Style, attributes: ReadonlyMap<string, string>): Style => {
  const given = <T>(key: string, read: (text: string) => T, otherwise: T): T => {
    const text = attributes.get(key)
    return text === undefined ? otherwise : read(text)
  }
  return {
    fill: given('fill', readPaint, around.fill),
    fillOpacity: given('fill-opacity', Number, around.fillOpacity),
    fillRule: given('fill-rule', (text) => (text === 'evenodd' ? 'evenodd' : 'nonzero'), around.fillRule),
    stroke: given('stroke', readPaint, around.stroke),
    strokeOpacity: given('stroke-opacity', Number, around.strokeOpacity),
    strokeWidth: given('stroke-width', Number, around.strokeWidth),
    lineCap: given('stroke-linecap', (text) => CAPS[text] ?? 0, around.lineCap),
    lineJoin: given('stroke-linejoin', (text) => JOINS[text] ?? 0, around.lineJoin),
    dashes: given('stroke-dasharray', numbersOf, around.dashes),
    fontSize: given('font-size', Number, around.fontSize),
    bold: given('font-weight', (text) => Number(text) >= 600 || text === 'bold', around.bold),
    anchor: given('text-anchor', (text) => text as Style['anchor'], around.anchor),
    strokeFirst: given('paint-order', (text) => text.startsWith('stroke'), around.strokeFirst),
    opacity: around.opacity * given('opacity', Number, 1),
  }
}
