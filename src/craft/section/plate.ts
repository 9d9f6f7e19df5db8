import type { Stove } from '#stove/model.ts'
import type { BurnSummary } from './airState.ts'
import type { Frame } from './frame.ts'
import { pixelX, pixelY } from './frame.ts'
import type { SectionGeometry } from './geometry.ts'
import type { Lettering, PixelBox } from './sheet.ts'
import type { Theme } from './theme.ts'

export interface PlateInput {
  readonly stove: Stove
  readonly burn: BurnSummary | null
  readonly theme: Theme
  /** Sentences under the picture. */
  readonly notes: readonly string[]
}

/** A finished page, with what a test needs to know of it. */
export interface Plate {
  readonly svg: string
  readonly width: number
  readonly height: number
  readonly letterings: readonly Lettering[]
  /** Where the stove's tin stands. */
  readonly stove: PixelBox
}

export const stoveBox = (frame: Frame, section: SectionGeometry): PixelBox => ({
  left: pixelX(frame, -section.radius),
  right: pixelX(frame, section.radius),
  top: pixelY(frame, section.top),
  bottom: frame.ground,
})
