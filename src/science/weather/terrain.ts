/**
 * What the wind blows over: the Davenport–Wieringa classes as the WMO tells them, roughness length in metres
 * [bib:wieringa1993]. `camp ground` lies within the open class, short grass 0.008–0.02 m in hydrology texts.
 */
export const roughnessLength = {
  'open water': 0.0002,
  'sand or snow': 0.005,
  'camp ground': 0.01,
  grassland: 0.03,
  'low crops': 0.1,
  'high crops': 0.25,
  'bushes and hedges': 0.5,
  'woods or village': 1,
} as const

export type Terrain = keyof typeof roughnessLength

/** Height at which weather services tell the wind [m]. */
export const FORECAST_HEIGHT = 10

export interface WindAtHeight {
  /** [m/s] */
  readonly speed: number
  /**
   * Whether the logarithmic law may be trusted there. It is measured down to about 20 roughness lengths;
   * among the blades and bushes themselves the air is calmer and gusty, and the law ends at zero at one
   * roughness length.
   */
  readonly inRange: boolean
}

/**
 * Mean wind at a height over open ground from the wind at 10 m, neutral air [m/s]. Logarithmic law u = u₁₀
 * ln(z/z₀)/ln(10/z₀), EN 1991-1-4 4.3.2 in ratio [bib:en1991wind], where it is c_r(z) = k_r ln(z/z₀). At 0.15
 * m over a camp ground a stove has 0.39 of the forecast's wind. Nothing moves below z₀.
 */
export const windAtHeight = (wind10: number, height: number, terrain: Terrain): WindAtHeight => {
  const z0 = roughnessLength[terrain]
  const share = height > z0 ? Math.log(height / z0) / Math.log(FORECAST_HEIGHT / z0) : 0
  return { speed: wind10 * share, inRange: height >= 20 * z0 && height <= 200 }
}
