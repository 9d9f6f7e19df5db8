import { type GasMoles, mixtureViscosity } from './mixtureTransport.ts'
import { airViscosity } from './transport.ts'

/**
 * Viscosity of one gas over that of air at the same temperature, as constant + slope u + curvature u² with u = 1000 K / T:
 * three numbers fitted once a composition, for loops that cannot afford Wilke's rule.
 */
export interface ViscosityRatio {
  readonly constant: number
  readonly slope: number
  readonly curvature: number
}

export const RATIO_COLDEST = 300
export const RATIO_HOTTEST = 1800

const inverse = (temperature: number): number => 1000 / temperature
const MIDDLE = (inverse(RATIO_COLDEST) + inverse(RATIO_HOTTEST)) / 2
const REACH = ((inverse(RATIO_COLDEST) - inverse(RATIO_HOTTEST)) / 2) * Math.cos(Math.PI / 6)
/** Chebyshev's three points of the range: a parabola through them is near the best there is [K]. */
const NODES = [MIDDLE - REACH, MIDDLE, MIDDLE + REACH].map((u) => 1000 / u) as [number, number, number]
/** Where the error is looked for [K]. */
const PROBES = Array.from(
  { length: 61 },
  (_, i) => RATIO_COLDEST + ((RATIO_HOTTEST - RATIO_COLDEST) * i) / 60,
)

/** Ratio of the viscosities at a temperature of 300–1800 K [1]. */
export const ratioToAir = ({ constant, slope, curvature }: ViscosityRatio, temperature: number): number => {
  const u = 1000 / temperature
  return constant + u * (slope + u * curvature)
}

/** What it stands for, by Wilke's rule itself [1]. */
const exactRatio = (moles: GasMoles, temperature: number): number =>
  mixtureViscosity(moles, temperature) / airViscosity(temperature)

/** Fits the ratio of a gas: within 0.3 % of Wilke's rule for the gases of a stove, 1.6 % for pure steam, the worst of all. */
export const viscosityRatio = (moles: GasMoles): ViscosityRatio => {
  const [a, b, c] = NODES.map((temperature) => exactRatio(moles, temperature)) as [number, number, number]
  // Newton's divided differences on equidistant points.
  const first = (b - a) / REACH
  const curvature = (c - 2 * b + a) / (2 * REACH * REACH)
  const u0 = MIDDLE - REACH
  const u1 = MIDDLE
  return {
    constant: a - u0 * first + u0 * u1 * curvature,
    slope: first - (u0 + u1) * curvature,
    curvature,
  }
}

/** Largest departure of a fit from Wilke's rule anywhere in 300–1800 K, as a share [1]. */
export const viscosityRatioError = (moles: GasMoles, fitted: ViscosityRatio): number =>
  PROBES.reduce(
    (most, temperature) =>
      Math.max(most, Math.abs(ratioToAir(fitted, temperature) / exactRatio(moles, temperature) - 1)),
    0,
  )
