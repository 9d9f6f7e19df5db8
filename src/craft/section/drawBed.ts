import { element, px } from '../svg/element.ts'
import { type CutBed, isLit } from './bed.ts'
import { type Frame, pixelX, pixelY } from './frame.ts'
import type { FuelPiece } from './pieces.ts'
import type { Sheet } from './sheet.ts'

/** Outline of a piece: a rod with round ends, or a block. */
const piecePath = (frame: Frame, { middle, angle, length, width, ends }: FuelPiece): string => {
  const [x, y] = [pixelX(frame, middle.x), pixelY(frame, middle.z)]
  const [cos, sin] = [Math.cos(angle), -Math.sin(angle)]
  const radius = (width / 2) * frame.scale
  const half = (length / 2) * frame.scale - (ends === 'round' ? radius : 0)
  const corner = (along: number, across: number): string =>
    `${px(x + along * cos - across * sin)} ${px(y + along * sin + across * cos)}`
  const round = `A${px(radius)} ${px(radius)} 0 0 1 `
  return ends === 'round'
    ? `M${corner(-half, -radius)}L${corner(half, -radius)}${round}${corner(half, radius)}L${corner(-half, radius)}${round}${corner(-half, -radius)}Z`
    : `M${corner(-half, -radius)}L${corner(half, -radius)}L${corner(half, radius)}L${corner(-half, radius)}Z`
}

/** Thickness of the glowing front as drawn [mm]: it is a few pieces of fuel thin. */
const FRONT = 2.2

/** Raw fuel, glowing front and char, over the whole picture. */
export const drawBed = (sheet: Sheet, frame: Frame, bed: CutBed, name: string): void => {
  const { theme } = sheet
  const [left, right] = [pixelX(frame, -bed.radius), pixelX(frame, bed.radius)]
  const band = (from: number, to: number, fill: string, more = {}): void =>
    sheet.draw('rect', {
      x: left,
      y: pixelY(frame, to),
      width: right - left,
      height: Math.max(0, (to - from) * frame.scale),
      fill,
      ...more,
    })
  const pieces = (
    list: readonly FuelPiece[],
    from: number,
    to: number,
    fill: string,
    stroke: string,
  ): void => {
    if (list.length === 0) return
    const id = `${name}-${px(from)}`
    sheet.define(
      'clipPath',
      { id },
      element('rect', {
        x: left,
        width: right - left,
        y: pixelY(frame, to),
        height: (to - from) * frame.scale,
      }),
    )
    sheet.draw('path', {
      'clip-path': `url(#${id})`,
      d: list.map((piece) => piecePath(frame, piece)).join(''),
      fill,
      stroke,
      'stroke-width': 0.8,
    })
  }
  band(bed.floor, bed.front, theme.rawGround)
  pieces(bed.raw, bed.floor, bed.front, theme.rawFuel, theme.rawFuelLine)
  if (isLit(bed)) {
    band(bed.front, bed.top, theme.charGround)
    pieces(bed.char, bed.front, bed.top, theme.char, theme.charLine)
    band(bed.front - FRONT, bed.front + FRONT * 0.7, theme.ember)
    band(bed.front - FRONT * 0.35, bed.front + FRONT * 0.2, theme.glow)
  }
}
