import { luminance } from '../section/colour.ts'
import { lineWidth, type Sheet, SMALL_SIZE } from '../section/sheet.ts'
import type { Theme } from '../section/theme.ts'
import type { BurnFigureInput } from './input.ts'
import { drawHeading, drawTicks, type Panel, type Pixel, polyline } from './panel.ts'
import { scaleOf } from './scale.ts'

/** Whichever of ink and paper stands out more on char. */
const onChar = ({ paper, ink, char }: Theme): string => {
  const away = (colour: string): number => Math.abs(luminance(colour) - luminance(char))
  return away(paper) > away(ink) ? paper : ink
}

/** The bed over time, top of the fuel at the top: raw fuel below the front, char above it until it has glowed away. */
export const drawBed = (
  sheet: Sheet,
  panel: Panel,
  input: BurnFigureInput,
  heading: readonly string[],
): void => {
  const { theme } = sheet
  const { steps } = input
  const { time, left, right, top, bottom } = panel
  const depth = scaleOf(0, 1, top, bottom)
  const most = Math.max(1e-9, ...steps.map(({ char }) => char))
  const burning = steps.filter(({ phase }) => phase !== 'char')
  const glowing = steps.filter(({ phase }) => phase === 'char')
  const lastBurning = burning[burning.length - 1]
  const frontEnd =
    glowing[0]?.time ?? (lastBurning === undefined ? 0 : lastBurning.time + lastBurning.duration)
  const front: Pixel[] = [
    ...burning.map((step) => ({ x: time.at(step.time), y: depth.at(step.frontPosition) })),
    // A front that went out stays where it was.
    { x: time.at(frontEnd), y: depth.at(glowing.length > 0 ? 1 : (lastBurning?.frontPosition ?? 0)) },
  ]
  const start = time.at(burning[0]?.time ?? 0)
  const turn = time.at(frontEnd)
  drawHeading(sheet, panel, heading, 'Fuel')
  sheet.draw('path', {
    d: `${polyline(front)}V${bottom}H${start}Z`,
    fill: theme.rawFuel,
  })
  const ends = glowing.map((step) => ({ x: time.at(step.time), y: depth.at(1 - step.char / most) }))
  const last = glowing[glowing.length - 1]
  const over = last === undefined ? turn : time.at(last.time + last.duration)
  const restY = ends[ends.length - 1]?.y ?? top
  const charTop = glowing.length > 0 ? [{ x: turn, y: top }, ...ends.slice(1), { x: over, y: restY }] : []
  sheet.draw('path', {
    d: `${polyline([...front, ...(glowing.length > 0 ? [{ x: over, y: bottom }] : []), ...[...charTop].reverse()])}V${top}H${start}Z`,
    fill: theme.char,
    // Char is as dark as the paper of the night.
    stroke: theme.faint,
    'stroke-width': 0.9,
  })
  sheet.draw('path', {
    d: polyline(front),
    fill: 'none',
    stroke: theme.ember,
    'stroke-width': 3.2,
    'stroke-linejoin': 'round',
  })
  sheet.draw('rect', {
    x: left,
    y: top,
    width: right - left,
    height: bottom - top,
    fill: 'none',
    stroke: theme.faint,
    'stroke-width': 0.9,
  })
  drawTicks(sheet, panel, 'left', [
    { y: top + 5, text: 'top' },
    { y: bottom - 5, text: 'floor' },
  ])
  const word = (text: string, x: number, y: number, fill: string): void => {
    sheet.draw('text', { x, y, 'font-size': SMALL_SIZE, fill }, text)
  }
  const wide = turn - start
  if (wide > lineWidth('raw fuel', SMALL_SIZE) * 2.2) {
    word('raw fuel', start + 0.1 * wide, bottom - 8, theme.ink)
    const char = lineWidth('char', SMALL_SIZE)
    word('char', turn - 0.12 * wide - char, top + 17, onChar(theme))
  }
}
