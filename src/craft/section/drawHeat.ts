import type { AirState } from './airState.ts'
import { heatColour } from './colour.ts'
import { type Frame, pixelX, pixelY } from './frame.ts'
import type { SectionGeometry } from './geometry.ts'
import type { Sheet } from './sheet.ts'

/** How strongly a room is tinted by the temperature of the gas in it [1]. */
const TINT = 0.13

/** A tint behind everything where hot gas fills the stove: over the fuel, and in the cans above. */
export const drawHeat = (sheet: Sheet, frame: Frame, section: SectionGeometry, air: AirState): void => {
  for (const { name, part } of section.placed) {
    const wall = section.walls.find((one) => one.part === name)
    if (part.form !== 'can' || part.role === 'shell' || wall === undefined) continue
    const isFuelCan = section.bed?.part === name
    const bottom = isFuelCan ? (section.bed?.top ?? wall.reach.from) : wall.reach.from
    // The hottest that leaves by this can's own holes, or else what comes up from the flame.
    const own = air.passages.filter((one) => one.part === name && one.to !== null && one.massFlow < 0)
    const temperature = isFuelCan
      ? air.temperature.flame
      : own.reduce((most, one) => Math.max(most, one.temperature), 0)
    if (bottom >= wall.reach.to) continue
    sheet.draw('rect', {
      x: pixelX(frame, -wall.radius),
      y: pixelY(frame, wall.reach.to),
      width: 2 * wall.radius * frame.scale,
      height: (wall.reach.to - bottom) * frame.scale,
      fill: heatColour(sheet.theme, temperature > 0 ? temperature : air.temperature.flame),
      opacity: TINT,
    })
  }
}
