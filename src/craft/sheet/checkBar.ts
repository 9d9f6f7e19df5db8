import type { Point, Shape } from '../drawing.ts'
import { SMALL_SIZE as SMALL } from '../lettering/sizes.ts'

/** Length of a check bar [mm], and of the 4 in one beside it. */
const CHECK_BAR = 100
export const FOUR_INCHES = 101.6
const END_TICK = 1.4

/** A bar of 100 mm and one of 4 in beside it, from the same end. */
export const checkBar = (start: Point, upright: boolean): readonly Shape[] => {
  const at = (along: number, aside: number): Point =>
    upright ? { x: start.x - aside, y: start.y + along } : { x: start.x + along, y: start.y + aside }
  const line = (from: Point, to: Point): Shape => ({ kind: 'line', layer: 'dimension', from, to })
  const name = (text: string, place: Point): Shape => ({
    kind: 'text',
    layer: 'text',
    at: place,
    text,
    size: SMALL,
    anchor: 'middle',
    angle: upright ? 90 : 0,
  })
  const bar = (long: number, aside: number, ticks: number): readonly Shape[] => [
    line(at(0, aside), at(long, aside)),
    line(at(0, aside), at(0, aside + ticks)),
    line(at(long, aside), at(long, aside + ticks)),
  ]
  return [
    ...bar(CHECK_BAR, 0, END_TICK),
    name('100 mm', at(CHECK_BAR / 2, 0.9)),
    ...bar(FOUR_INCHES, -1, -END_TICK),
    name('4 in', at(FOUR_INCHES / 2, -1 - 0.9 - SMALL)),
  ]
}
