import { px } from '../svg/element.ts'
import { type Frame, pixelX, pixelY } from './frame.ts'
import type { SectionGeometry } from './geometry.ts'
import { mm } from './half.ts'
import type { Sheet } from './sheet.ts'

/** Where a flame stands: on the bore of the concentrator, or on the mouth of the fuel can [mm]. */
export interface FlameFoot {
  readonly radius: number
  readonly z: number
}

/** Where the flame of a stove stands; null for one without a fuel can. */
const flameFoot = ({ stove, plates, walls, placed }: SectionGeometry): FlameFoot | null => {
  const disc = plates.find(({ part }) => stove.parts.get(part)?.role === 'concentrator')
  if (disc !== undefined) {
    const inner = Math.min(...disc.tongues.map(({ from }) => from), disc.reach.from)
    const bore = inner > 0 ? inner : Math.max(0, ...disc.tongues.map(({ to }) => to))
    return { radius: bore, z: disc.height }
  }
  const can = placed.find(({ part }) => part.role === 'fuel can')
  const wall = walls.find(({ part }) => part === can?.name)
  return can === undefined || wall === undefined ? null : { radius: wall.radius, z: mm(can.top) }
}

/** A flame that reaches the pot spreads under it by what is left of it, this much closer to the bottom [1]. */
const SPREAD = 0.8
/** Thickness of the sheet of flame under a pot [mm]. */
const SHEET = 7
/** Lower than this there is nothing to see [mm]. */
const LEAST = 3

/**
 * The flame as high as it is predicted, over the whole picture: a tongue from the bore, or where a pot is in its way a
 * tongue up to the pot and a sheet along its bottom. Its edge is a line, so that it is seen without colour.
 */
export const drawFlame = (sheet: Sheet, frame: Frame, section: SectionGeometry, height: number): void => {
  const foot = flameFoot(section)
  if (foot === null || height < LEAST) return
  const { glow, ember } = sheet.theme
  const { radius, z } = foot
  const roof = section.pot?.bottom ?? Number.POSITIVE_INFINITY
  const tip = Math.min(z + height, roof)
  const left = z + height - tip
  const at = (r: number, height_: number): string => `${px(pixelX(frame, r))} ${px(pixelY(frame, height_))}`
  const belly = radius * 1.22
  const rise = tip - z
  const half = (side: 1 | -1): string => {
    const s = (r: number): number => r * side
    if (left <= 0)
      return `C${at(s(belly), z + rise * 0.35)} ${at(s(radius * 0.42), z + rise * 0.7)} ${at(0, tip)}`
    const reach = Math.min(section.pot?.radius ?? 0, radius + left * SPREAD)
    const under = tip - Math.min(SHEET, rise * 0.4)
    const neck = radius * 0.62
    return (
      `C${at(s(radius * 1.06), z + rise * 0.3)} ${at(s(neck), z + rise * 0.4)} ${at(s(neck), z + rise * 0.62)}` +
      `C${at(s(neck), under)} ${at(s(radius * 1.1), under)} ${at(s(Math.max(neck, reach * 0.92)), under + 1)}` +
      `Q${at(s(reach), under + 2)} ${at(s(reach), tip - 1)}L${at(0, tip - 1)}`
    )
  }
  const right = `M${at(radius, z)}${half(1)}L${at(0, z)}Z`
  const other = `M${at(-radius, z)}${half(-1)}L${at(0, z)}Z`
  sheet.draw('path', { d: `${right}${other}`, fill: glow, opacity: 0.3 })
  sheet.draw('path', {
    d: `M${at(radius, z)}${half(1)}M${at(-radius, z)}${half(-1)}`,
    fill: 'none',
    stroke: ember,
    'stroke-width': 1.2,
    'stroke-dasharray': '5 3',
  })
}
