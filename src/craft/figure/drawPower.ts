import type { Sheet } from '../section/sheet.ts'
import type { BurnFigureInput, FigureStep } from './input.ts'
import { drawGrid, drawTicks, type Panel, type Pixel, polyline } from './panel.ts'
import { multiples, roundStep, type Scale, scaleOf } from './scale.ts'

/** International table Btu per hour in a watt, 3600/1055.06. */
const BTU_PER_HOUR = 3.412142
const MOST_TICKS = 5

/** Highest of the line and of its band, rounded up to a tick [W]. */
const powerTop = ({ steps, band }: BurnFigureInput): number => {
  const highest = Math.max(1, ...steps.map(({ firepower }) => firepower), ...(band?.high ?? []))
  const step = roundStep(highest, MOST_TICKS)
  return Math.ceil(highest / step - 1e-9) * step
}

/** Steps between which nothing jumps: one phase, nothing changed from outside. */
const stretchesOf = ({ steps, events }: BurnFigureInput): readonly (readonly FigureStep[])[] => {
  const changes = events.filter(({ change }) => change).map(({ time }) => time)
  const stretches: FigureStep[][] = []
  for (const step of steps) {
    const open = stretches[stretches.length - 1]
    const before = open?.[open.length - 1]
    const jumps = changes.some((time) => Math.abs(time - step.time) < 1e-3)
    // Lighting grows into wood gas; from wood gas to char is a step.
    const turnsToChar = before !== undefined && before.phase !== 'char' && step.phase === 'char'
    if (open === undefined || jumps || turnsToChar) stretches.push([step])
    else open.push(step)
  }
  return stretches
}

/** What holds for a step stands in its middle; at the ends of a stretch it is carried on. */
const pointsOf = (stretch: readonly FigureStep[], time: Scale, power: Scale): readonly Pixel[] => {
  const first = stretch[0] as FigureStep
  const last = stretch[stretch.length - 1] as FigureStep
  const point = (at: number, firepower: number): Pixel => ({ x: time.at(at), y: power.at(firepower) })
  return [
    point(first.time, first.firepower),
    ...stretch.map((step) => point(step.time + step.duration / 2, step.firepower)),
    point(last.time + last.duration, last.firepower),
  ]
}

const bandPoints = ({ band }: BurnFigureInput, time: Scale, power: Scale): readonly Pixel[] => {
  if (band === null) return []
  const edge = (values: readonly number[]): Pixel[] =>
    band.time.flatMap((at, i) => (at > time.to ? [] : [{ x: time.at(at), y: power.at(values[i] as number) }]))
  return [...edge(band.high), ...edge(band.low).reverse()]
}

const kilowatts = (watts: number): string => String(Number((watts / 1000).toPrecision(6)))

/** How to read it. */
export const powerWords = ({ band }: BurnFigureInput): string =>
  band === null
    ? 'kW on the left, Btu/h on the right'
    : `kW on the left, Btu/h on the right; shaded: 5 to 95 % of ${band.runs} runs with other coefficients`

/** Firepower over time, with its band behind it. */
export const drawPower = (sheet: Sheet, panel: Panel, input: BurnFigureInput): void => {
  const { theme } = sheet
  const { time } = panel
  const top = powerTop(input)
  const power = scaleOf(0, top, panel.bottom, panel.top)
  const ticks = multiples(roundStep(top, MOST_TICKS), 0, top)
  drawGrid(
    sheet,
    panel,
    ticks.map((watts) => power.at(watts)),
  )
  drawTicks(
    sheet,
    panel,
    'left',
    ticks.map((watts) => ({ y: power.at(watts), text: kilowatts(watts) })),
  )
  const most = top * BTU_PER_HOUR
  drawTicks(
    sheet,
    panel,
    'right',
    multiples(roundStep(most, MOST_TICKS), 0, most).map((btu) => ({
      y: power.at(btu / BTU_PER_HOUR),
      text: String(btu),
    })),
  )
  const shade = bandPoints(input, time, power)
  if (shade.length > 0)
    sheet.draw('path', { d: `${polyline(shade)}Z`, fill: theme.ember, 'fill-opacity': 0.2 })
  sheet.draw('path', {
    d: polyline(stretchesOf(input).flatMap((stretch) => pointsOf(stretch, time, power))),
    fill: 'none',
    stroke: theme.ember,
    'stroke-width': 2.6,
    'stroke-linejoin': 'round',
  })
}
