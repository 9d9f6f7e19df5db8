import { element, px } from '../svg/element.ts'
import type { WidthPerFlow } from './border.ts'
import { heatColour } from './colour.ts'
import type { Frame } from './frame.ts'
import { type Sheet, SMALL_SIZE } from './sheet.ts'
import { flowText } from './wording.ts'

const SCALE_WIDTH = 190
const SCALE_HEIGHT = 9
const COOLEST = 293.15
const HOTTEST = 1773.15
const MARKS = [20, 500, 1000, 1500]
/** As finely as a colour is read. */
const fahrenheitMark = (celsius: number): number =>
  celsius < 100 ? celsius * 1.8 + 32 : Math.round((celsius * 1.8 + 32) / 10) * 10
const ROW = 16
const STEPS = 12
const CAPTION = 20
export const LEGEND_HEIGHT = 64

/** Round flows for the key [g/s], of which the largest not wider than this is taken [px]. */
const ROUND_FLOWS = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2]
const KEY_WIDEST = 18

/** What colour and width of a ribbon mean; returns the right end of what was drawn [px]. */
export const drawLegend = (
  sheet: Sheet,
  frame: Frame,
  scale: WidthPerFlow,
  { x, y }: { readonly x: number; readonly y: number },
): void => {
  const { theme } = sheet
  const caption = (at: number, text: string): void =>
    sheet.letter({ x: at, y: y + SMALL_SIZE * 0.8, text, size: SMALL_SIZE, ink: 'muted' })
  caption(x, 'colour is temperature')
  const bar = y + CAPTION
  const stops = Array.from({ length: STEPS + 1 }, (_, i) =>
    element('stop', {
      offset: i / STEPS,
      'stop-color': heatColour(theme, COOLEST + ((HOTTEST - COOLEST) * i) / STEPS),
    }),
  ).join('')
  sheet.define('linearGradient', { id: 'heat-scale' }, stops)
  sheet.draw('rect', { x, y: bar, width: SCALE_WIDTH, height: SCALE_HEIGHT, fill: 'url(#heat-scale)' })
  for (const celsius of MARKS) {
    const at = x + (SCALE_WIDTH * (celsius + 273.15 - COOLEST)) / (HOTTEST - COOLEST)
    sheet.draw('path', {
      d: `M${px(at)} ${px(bar + SCALE_HEIGHT)}v4`,
      stroke: theme.muted,
      'stroke-width': 0.9,
      fill: 'none',
    })
    const first = celsius === MARKS[0]
    for (const [row, text] of [
      `${celsius}${first ? ' °C' : ''}`,
      `${fahrenheitMark(celsius)}${first ? ' °F' : ''}`,
    ].entries())
      sheet.letter({
        x: at,
        y: bar + SCALE_HEIGHT + 17 + row * ROW,
        text,
        size: SMALL_SIZE,
        ink: 'muted',
        anchor: first ? 'start' : celsius === MARKS.at(-1) ? 'end' : 'middle',
      })
  }
  const wide = (gramsPerSecond: number): number => gramsPerSecond * 1e-3 * scale * frame.scale
  const flow = ROUND_FLOWS.filter((one) => wide(one) <= KEY_WIDEST).at(-1) ?? (ROUND_FLOWS[0] as number)
  const key = x + SCALE_WIDTH + 46
  caption(key, 'width is flow')
  const width = wide(flow)
  sheet.draw('rect', {
    x: key,
    y: bar + SCALE_HEIGHT / 2 - width / 2,
    width: 34,
    height: width,
    fill: heatColour(theme, COOLEST),
    stroke: theme.airEdge,
    'stroke-width': 0.8,
  })
  for (const [row, text] of flowText(flow / 1000)
    .split(/\u00a0(?=\()/)
    .entries())
    sheet.letter({ x: key, y: bar + SCALE_HEIGHT + 17 + row * ROW, text, size: SMALL_SIZE, ink: 'muted' })
}
