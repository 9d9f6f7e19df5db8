import { RULER_HEAD, RULER_SIDE, rulerTop } from '#craft/section/drawRuler.ts'
import type { Frame } from '#craft/section/frame.ts'
import type { SectionGeometry } from '#craft/section/geometry.ts'
import { POT_SHOWN } from '#craft/section/openAir.ts'

/** Where everything stands on the stage [px]. */
export interface StageLayout {
  readonly width: number
  readonly height: number
  readonly frame: Frame
  readonly rulerX: number
  /** Words about parts on the left and about openings on the right; null where there is no room for words. */
  readonly words: { readonly left: number; readonly right: number; readonly edge: number } | null
  /** How far the ground is drawn. */
  readonly ground: readonly [from: number, to: number]
}

/** Narrower than this, words have no room beside the section. */
const NARROW = 620
const PARTS = 128
const OPENINGS = 196
const GAP = 20
const TOP = 10
/** Below the ground: strokes of earth. */
const FOOT = 22
/** Room for air outside the tin, and for gas that rises beside a pot [mm]. */
const AIR = 17
const BESIDE_POT = 30
const ABOVE = 34
const LARGEST = 3.6

/** What the section takes up whatever flows: the picture stands still while flows change [mm]. */
export const roomOf = ({
  radius,
  top,
  pot,
}: Pick<SectionGeometry, 'radius' | 'top' | 'pot'>): { readonly radius: number; readonly top: number } => ({
  radius: Math.max(radius + AIR, pot === null ? 0 : pot.radius + BESIDE_POT),
  top: pot === null ? top + ABOVE : Math.max(top, pot.bottom + POT_SHOWN) + 4,
})

/** Lays out a stage of a size for a stove and, where there is one, the ghost behind it. */
export const stageLayout = (
  width: number,
  height: number,
  stoves: readonly Pick<SectionGeometry, 'radius' | 'top' | 'pot'>[],
): StageLayout => {
  const rooms = stoves.map(roomOf)
  const radius = Math.max(30, ...rooms.map((room) => room.radius))
  const top = Math.max(40, ...rooms.map((room) => room.top))
  const tin = Math.max(...stoves.map((stove) => stove.top), 20)
  const wide = width >= NARROW
  const left = RULER_SIDE * 2 + (wide ? PARTS + GAP : 6)
  const right = wide ? width - OPENINGS - GAP : width - 8
  const scale = Math.max(
    0.3,
    Math.min(
      (right - left) / (2 * radius),
      (height - TOP - FOOT) / top,
      (height - TOP - FOOT - RULER_HEAD) / rulerTop(tin),
      LARGEST,
    ),
  )
  const ground = height - FOOT
  // What is left over goes to both sides of section and words together.
  const spare = Math.max(0, right - left - 2 * radius * scale)
  const shift = wide ? Math.min(spare / 2, 180) : spare / 2
  const axis = wide ? left + shift + radius * scale : left + spare / 2 + radius * scale
  const rulerX = RULER_SIDE + (wide ? shift : 0)
  const edge = radius * scale
  return {
    width,
    height,
    frame: { axis, ground, scale },
    rulerX,
    words: wide ? { left: PARTS, right: Math.min(280, width - axis - edge - GAP), edge } : null,
    ground: [rulerX + RULER_SIDE + 2, Math.min(width - 8, axis + edge + 40)],
  }
}
