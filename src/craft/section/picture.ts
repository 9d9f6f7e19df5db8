import { px } from '../svg/element.ts'
import type { AirState } from './airState.ts'
import { drawAir } from './drawAir.ts'
import { drawBed } from './drawBed.ts'
import { drawHeat } from './drawHeat.ts'
import { drawBeyond, drawPot, drawTin } from './drawTin.ts'
import type { Frame } from './frame.ts'
import type { SectionGeometry } from './geometry.ts'
import { HEAD_BARB, POT_SHOWN } from './openAir.ts'
import type { AirPicture } from './ribbons.ts'
import { openSheet, type Sheet } from './sheet.ts'

/** What the section takes up, ribbons included [mm]. */
export interface SectionExtent {
  readonly radius: number
  readonly top: number
}

/** The tip of an arrow head runs on by this share of its ribbon's width [1]. */
const HEAD_ON = 0.9

export const extentOf = (section: SectionGeometry, air: AirPicture | null): SectionExtent => {
  const points = (air?.ribbons ?? []).flatMap(({ stretches, head }) =>
    stretches.flatMap(({ left, right }) => {
      const ends = [left[0], left[3], right[0], right[3]]
      const width = Math.hypot(left[3].r - right[3].r, left[3].z - right[3].z)
      return ends.map(({ r, z }) => ({
        r: r + (head ? width * HEAD_BARB : 0),
        z: z + (head ? width * HEAD_ON : 0),
      }))
    }),
  )
  return {
    radius: Math.max(section.radius, section.pot?.radius ?? 0, ...points.map(({ r }) => r)),
    top: Math.max(
      section.top,
      section.pot === null ? 0 : section.pot.bottom + POT_SHOWN,
      ...points.map(({ z }) => z),
    ),
  }
}

/** The section itself, without a word: ground of every page and of the live picture. */
export const drawPicture = (
  sheet: Sheet,
  frame: Frame,
  section: SectionGeometry,
  air: AirPicture | null,
  state: AirState | null,
): void => {
  if (state !== null) drawHeat(sheet, frame, section, state)
  drawBeyond(sheet, frame, section)
  if (section.bed !== null) drawBed(sheet, frame, section.bed, 'bed')
  if (section.pot !== null) drawPot(sheet, frame, section.pot)
  // What is alike on both sides is drawn once and mirrored.
  const half = openSheet(sheet.theme)
  if (air !== null) drawAir(half, frame, air.ribbons, 'air')
  drawTin(half, frame, section)
  sheet.defineAll(half)
  sheet.draw('g', { id: 'half' }, half.body())
  sheet.draw('use', { href: '#half', transform: `translate(${px(2 * frame.axis)} 0) scale(-1 1)` })
}
