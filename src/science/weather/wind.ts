import { angleFromWind, cylinderPressureCoefficient } from './cylinderPressure.ts'

/** The wind at the stove. */
export interface Wind {
  /** Mean speed at the stove's own height [m/s]. */
  readonly speed: number
  /** Where it comes from: bearing from the stove's front mark, clockwise from above [deg]. */
  readonly from: number
  /** A screen as high as the stove stands close by on that side; `speed` is that before it. */
  readonly screened?: boolean
}

export const calm: Wind = { speed: 0, from: 0 }

/** Pressure of the wind brought to rest, ½ρu² [Pa]. */
export const windHead = (speed: number, airDensity: number): number => 0.5 * airDensity * speed * speed

/**
 * Pressure at a hole in an upright can's wall over the still air's at that height [Pa]. `bearing` is the
 * hole's outward bearing on the stove.
 */
export const windPressureAtHole = (
  wind: Wind,
  bearing: number,
  airDensity: number,
  suctionShare: number,
): number =>
  cylinderPressureCoefficient(angleFromWind(bearing, wind.from), suctionShare) *
  windHead(wind.speed, airDensity)

/**
 * Pressure over the open top of a can or chimney [Pa]; `coefficient` is `windOpenTop` of the coefficient
 * table, below zero.
 */
export const windPressureAtTop = (wind: Wind, airDensity: number, coefficient: number): number =>
  coefficient * windHead(wind.speed, airDensity)

/**
 * The wind behind a screen [m/s]. `passed` is the share of the speed that is left, `windScreen` of the
 * coefficient table; the pressures fall with its square. A screen round the whole stove also evens the
 * pressure out, which this leaves aside.
 */
export const behindScreen = ({ speed, from }: Wind, passed: number): Wind => ({ speed: speed * passed, from })

/** The wind that the stove itself feels [m/s]; `passed` is `windScreen` of the coefficient table. */
export const feltWind = (wind: Wind, passed: number): Wind =>
  wind.screened === true ? behindScreen(wind, passed) : wind
