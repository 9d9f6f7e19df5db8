import type { Point } from '../drawing.ts'

/** A point of the stove [mm]: x, y, z; z is up, the front mark lies towards +y. */
export type Point3 = readonly [number, number, number]

/** Where the viewer stands, far away: no lines converge. */
export interface Camera {
  /** Bearing of the viewer, clockwise from the front mark seen from above [deg]. */
  readonly bearing: number
  /** How high the viewer looks from, over the horizon [deg]. */
  readonly elevation: number
}

/** From the front, a little to the side and from above. */
export const PLAN_CAMERA: Camera = { bearing: 28, elevation: 24 }

/** Low, so that parts above each other do not hide each other. */
export const EXPLODED_CAMERA: Camera = { bearing: 28, elevation: 16 }

/** Unit vectors of the picture: to the right, up, and towards the viewer [1]. */
export interface Axes {
  readonly right: Point3
  readonly up: Point3
  readonly near: Point3
}

export const axesOf = ({ bearing, elevation }: Camera): Axes => {
  const [b, e] = [(bearing * Math.PI) / 180, (elevation * Math.PI) / 180]
  const [sinB, cosB, sinE, cosE] = [Math.sin(b), Math.cos(b), Math.sin(e), Math.cos(e)]
  return {
    right: [-cosB, sinB, 0],
    up: [-sinE * sinB, -sinE * cosB, cosE],
    near: [cosE * sinB, cosE * cosB, sinE],
  }
}

export const dot = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** Where a point of the stove lies in the picture's own plane, before it is shifted to the paper [mm]. */
export const projected = ({ right, up }: Axes, point: Point3): Point => ({
  x: dot(right, point),
  y: dot(up, point),
})
