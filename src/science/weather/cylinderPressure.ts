import type { ValidRange } from '#science/heat/range.ts'

/**
 * Wind pressure round an endless upright cylinder at subcritical Reynolds number (about 1e5): angle from the
 * wind [deg] and pressure coefficient [1]. From memory after Roshko 1961 and EN 1991-1-4, ±0.15; see
 * `test/reference/windCylinder.json`.
 */
const ROUND_CYLINDER: readonly (readonly [number, number])[] = [
  [0, 1],
  [10, 0.93],
  [20, 0.7],
  [30, 0.25],
  [40, -0.25],
  [50, -0.7],
  [60, -1.05],
  [70, -1.2],
  [80, -1.1],
  [90, -1.05],
  [120, -1.05],
  [180, -1.05],
]

/**
 * A can of 0.1–0.2 m has 7e3–1e5 in 1–8 m/s; from about 2e5 on the wake narrows and the suction at its back
 * halves.
 */
export const SUBCRITICAL_RANGE: ValidRange = {
  of: 'wind pressure round a can',
  quantity: 'Re',
  from: 1e3,
  to: 2e5,
}

/**
 * Slopes of a monotone cubic: harmonic mean of the two chords, none at a peak or at the ends (Fritsch &
 * Carlson 1980, from memory).
 */
const SLOPES = ROUND_CYLINDER.map(([angle, value], i) => {
  const before = ROUND_CYLINDER[i - 1]
  const after = ROUND_CYLINDER[i + 1]
  if (before === undefined || after === undefined) return 0
  const a = (value - before[1]) / (angle - before[0])
  const b = (after[1] - value) / (after[0] - angle)
  return a * b <= 0 ? 0 : (2 * a * b) / (a + b)
})

/** The angle between a wall's outward bearing and where the wind comes from, 0–180 [deg]. */
export const angleFromWind = (bearing: number, windFrom: number): number => {
  const turn = (((bearing - windFrom) % 360) + 360) % 360
  return turn > 180 ? 360 - turn : turn
}

const endlessCylinder = (angle: number): number => {
  let i = 1
  while (i < ROUND_CYLINDER.length - 1 && angle > (ROUND_CYLINDER[i] as readonly [number, number])[0]) i += 1
  const [x0, y0] = ROUND_CYLINDER[i - 1] as readonly [number, number]
  const [x1, y1] = ROUND_CYLINDER[i] as readonly [number, number]
  const h = x1 - x0
  const t = (angle - x0) / h
  const u = 1 - t
  return (
    u * u * (1 + 2 * t) * y0 +
    t * t * (1 + 2 * u) * y1 +
    h * t * u * (u * (SLOPES[i - 1] as number) - t * (SLOPES[i] as number))
  )
}

/**
 * Pressure coefficient of a can's wall where its outward normal makes `angle` with the direction the wind
 * comes from, 0–180 [1]. Smooth, symmetric, flat at 0 and 180°. `suctionShare` multiplies what is below zero:
 * air spills over the free end of a short can and fills its wake, see `windSuctionShare` in the coefficient
 * table.
 */
export const cylinderPressureCoefficient = (angle: number, suctionShare: number): number => {
  const coefficient = endlessCylinder(angle)
  return coefficient < 0 ? suctionShare * coefficient : coefficient
}

/**
 * Integral of the endless cylinder's curve where it pushes and where it sucks, over the circumference, each
 * as a mean [1].
 */
const [PUSH, SUCTION] = (() => {
  let push = 0
  let suction = 0
  const steps = 1800
  for (let i = 0; i < steps; i++) {
    const c = endlessCylinder(((i + 0.5) * 180) / steps)
    if (c > 0) push += c / steps
    else suction += c / steps
  }
  return [push, suction]
})()

/**
 * Mean pressure coefficient over the whole circumference [1]: what an even ring of holes feels as a whole.
 */
export const meanCylinderCoefficient = (suctionShare: number): number => PUSH + suctionShare * SUCTION
