import type { Sheet } from '../section/sheet.ts'
import type { BurnFigureInput } from './input.ts'
import { drawGrid, drawHeading, drawTicks, type Panel, polyline } from './panel.ts'
import { potCurve } from './potCurve.ts'
import { potLabels } from './potLabels.ts'
import { multiples, scaleOf } from './scale.ts'

const KELVIN_AT_ZERO_CELSIUS = 273.15
const celsius = (kelvin: number): number => kelvin - KELVIN_AT_ZERO_CELSIUS
const fromCelsius = (value: number): number => value + KELVIN_AT_ZERO_CELSIUS
const fahrenheit = (kelvin: number): number => celsius(kelvin) * 1.8 + 32
const fromFahrenheit = (value: number): number => fromCelsius((value - 32) / 1.8)
/** Over the boiling point, so that the line of a pot on the boil does not end the panel [K]. */
const HEADROOM = 3

/** The water in each pot, from its going on to the boil and until it is dry. */
export const drawWater = (
  sheet: Sheet,
  panel: Panel,
  input: BurnFigureInput,
  heading: readonly string[],
): void => {
  const { theme } = sheet
  const { pots, boilingPoint } = input
  const coldest = Math.min(...pots.flatMap(({ start, temperature }) => [start, ...temperature]))
  const water = scaleOf(coldest, boilingPoint + HEADROOM, panel.bottom, panel.top)
  const marks = multiples(20, celsius(coldest), celsius(boilingPoint) + 0.5).map(fromCelsius)
  drawHeading(sheet, panel, heading, 'Water')
  drawGrid(sheet, panel, marks.map(water.at))
  drawTicks(
    sheet,
    panel,
    'left',
    marks.map((value) => ({ y: water.at(value), text: String(Math.round(celsius(value))) })),
  )
  drawTicks(
    sheet,
    panel,
    'right',
    multiples(40, fahrenheit(coldest), fahrenheit(boilingPoint) + 0.5).map((value) => ({
      y: water.at(fromFahrenheit(value)),
      text: String(value),
    })),
  )
  const curves = pots.map((pot) => potCurve(pot, input, panel.time, water))
  for (const { points, boil, dry, litres } of curves) {
    if (points.length < 2) continue
    sheet.draw('path', {
      d: polyline(points),
      fill: 'none',
      stroke: theme.airEdge,
      'stroke-width': litres === 1 ? 2.6 : 1.5,
      'stroke-linejoin': 'round',
    })
    if (boil !== null)
      sheet.draw('circle', { cx: boil.x, cy: boil.y, r: litres === 1 ? 4 : 3, fill: theme.airEdge })
    if (dry !== null)
      sheet.draw('circle', {
        cx: dry.x,
        cy: dry.y,
        r: 3.5,
        fill: theme.paper,
        stroke: theme.airEdge,
        'stroke-width': 1.5,
      })
  }
  const eventsAt = input.events.map(({ time }) => panel.time.at(time))
  for (const label of potLabels(curves, panel, eventsAt)) sheet.letter(label)
}
