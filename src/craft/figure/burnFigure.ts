import {
  BODY_SIZE,
  balancedLines,
  type Lettering,
  linesOf,
  openSheet,
  PROSE,
  SMALL_SIZE,
  titleLines,
} from '../section/sheet.ts'
import { svgPage } from '../section/svg.ts'
import { lightTheme, type Theme } from '../section/theme.ts'
import { px } from '../svg/element.ts'
import { drawBed } from './drawBed.ts'
import { drawEvents, eventsHeight, placeEvents } from './drawEvents.ts'
import { drawPower, powerWords } from './drawPower.ts'
import { drawWater } from './drawWater.ts'
import type { BurnFigureInput } from './input.ts'
import { drawHeading, headingHeight, type Panel } from './panel.ts'
import { clockText, clockTicks, scaleOf } from './scale.ts'

export type { BurnFigureInput } from './input.ts'

const QUARTS_PER_LITRE = 1 / 0.946352946

/** The pots in the other system: `; 0.5, 1 and 2 L are 0.53, 1.06 and 2.11 US qt`. */
const potWords = (pots: BurnFigureInput['pots']): string => {
  const list = (values: readonly string[]): string =>
    values.length < 2 ? values.join('') : `${values.slice(0, -1).join(', ')} and ${values.at(-1)}`
  const litres = list(pots.map((pot) => String(pot.litres)))
  const quarts = list(pots.map((pot) => (pot.litres * QUARTS_PER_LITRE).toFixed(2)))
  return pots.length === 0 ? '' : `; ${litres} L ${pots.length === 1 ? 'is' : 'are'} ${quarts} US qt`
}

/** The finished figure, with what a test needs to know of it. */
export interface BurnFigure {
  readonly svg: string
  readonly width: number
  readonly height: number
  readonly letterings: readonly Lettering[]
}

export interface BurnFigureOptions {
  /** Pixels. Below 600 it is set for a phone held upright. */
  readonly width?: number
  readonly theme?: Theme
}

/** A page for a desk. */
const DESK = 960
const NARROW = 600
const LINE = 17.5
/** From panel to panel. */
const BETWEEN = 12

/** The burn over time: firepower with its band, the water in the pot, the front in the fuel, on one time axis. */
export const burnFigure = (
  input: BurnFigureInput,
  { width = DESK, theme = lightTheme }: BurnFigureOptions = {},
): BurnFigure => {
  const narrow = width < NARROW
  const margin = narrow ? 14 : 28
  const side = narrow ? 40 : 46
  const left = margin + side
  const right = width - margin - side
  const sheet = openSheet(theme)
  const last = input.steps[input.steps.length - 1]
  const end = last === undefined ? 1 : last.time + last.duration
  const time = scaleOf(0, end, left, right)
  const panel = (top: number, height: number): Panel => ({ time, left, right, top, bottom: top + height })

  let y = margin + 22
  const size = narrow ? 24 : 28
  const title = titleLines(input.title, size, width - 2 * margin)
  for (const { text, down } of title) sheet.letter({ x: margin, y: y + down, text, size, weight: 'semibold' })
  y += 4 + (title.at(-1)?.down ?? 0)
  for (const text of balancedLines(input.subtitle, BODY_SIZE, (width - 2 * margin) * PROSE)) {
    y += 19
    sheet.letter({ x: margin, y, text, ink: 'muted' })
  }

  const words = (text: string): readonly string[] => linesOf(text, SMALL_SIZE, (right - left) * PROSE)
  const powerIs = words(powerWords(input))
  const waterIs = words(
    `°C on the left, °F on the right, from going on to the boil and until dry${potWords(input.pots)}`,
  )
  const fuelIs = words('the glowing front eats down through raw fuel and leaves char, which glows away')
  const placed = placeEvents(input.events, time, width - margin)
  y += 10 + headingHeight(powerIs)
  drawHeading(sheet, panel(y, 0), powerIs, 'Firepower')
  const power = panel(y + eventsHeight(placed), narrow ? 190 : 240)
  const water = panel(power.bottom + BETWEEN + headingHeight(waterIs), narrow ? 130 : 150)
  const bed = panel(
    (input.pots.length > 0 ? water : power).bottom + BETWEEN + headingHeight(fuelIs),
    narrow ? 56 : 64,
  )
  const shown = [power, ...(input.pots.length > 0 ? [water] : [])]
  drawEvents(sheet, placed, shown)
  drawPower(sheet, power, input)
  if (input.pots.length > 0) drawWater(sheet, water, input, waterIs)
  drawBed(sheet, bed, input, fuelIs)

  for (const at of clockTicks(time, narrow ? 58 : 76)) {
    sheet.draw('path', {
      d: `M${px(time.at(at))} ${px(bed.bottom)}v6`,
      stroke: theme.muted,
      'stroke-width': 1,
      fill: 'none',
    })
    sheet.letter({
      x: time.at(at),
      y: bed.bottom + 20,
      text: clockText(at),
      size: SMALL_SIZE,
      ink: 'muted',
      anchor: 'middle',
    })
  }
  y = bed.bottom + 38
  sheet.letter({ x: right, y, text: 'time after lighting', size: SMALL_SIZE, anchor: 'end' })
  y += 10
  for (const text of input.notes.flatMap((note) => linesOf(note, SMALL_SIZE, (width - 2 * margin) * PROSE))) {
    y += LINE
    sheet.letter({ x: margin, y, text, size: SMALL_SIZE, ink: 'muted' })
  }
  const height = Math.ceil(y + margin * 0.8)
  return {
    svg: svgPage(sheet, { width, height, title: input.title, description: input.subtitle }),
    width,
    height,
    letterings: sheet.letterings,
  }
}
