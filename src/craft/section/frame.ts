import { px } from '../svg/element.ts'
import type { HalfPoint } from './half.ts'

/** Where the section stands on a page: axis, ground and scale. */
export interface Frame {
  readonly axis: number
  readonly ground: number
  /** Pixels for a millimetre. */
  readonly scale: number
}

export const pixelX = ({ axis, scale }: Frame, r: number): number => axis + r * scale
export const pixelY = ({ ground, scale }: Frame, z: number): number => ground - z * scale

/** `x,y` of a place in the section, for a path. */
export const pixelPair = (frame: Frame, { r, z }: HalfPoint): string =>
  `${px(pixelX(frame, r))} ${px(pixelY(frame, z))}`

/** A path through points. */
export const pathThrough = (frame: Frame, points: readonly HalfPoint[], closed = false): string =>
  `M${points.map((point) => pixelPair(frame, point)).join('L')}${closed ? 'Z' : ''}`
