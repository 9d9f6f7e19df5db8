import { planPoint } from './plan.ts'

/** Side of the picture [px]. */
export const SIDE = 324
export const MIDDLE = { x: SIDE / 2, y: SIDE / 2 }
/** Radius of the outermost wall, of the damper round it and of the wind's track [px]. */
export const WALL = 104
export const BAND = 119
export const WIND = 152

/** A place at a radius and a bearing [px]. */
export const at = (radius: number, bearing: number): { readonly x: number; readonly y: number } => {
  const { x, y } = planPoint(radius, bearing)
  return { x: MIDDLE.x + x, y: MIDDLE.y + y }
}
