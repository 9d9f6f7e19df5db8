/**
 * Where water boils. IAPWS-IF97, region 4, equations 29–31 and table 34 [bib:iapws2012]: one quadratic in a
 * transformed pressure and a transformed temperature, so that both directions are exact inverses.
 */
const N = [
  1167.0521452767, -724213.16703206, -17.073846940092, 12020.82470247, -3232555.0322333, 14.91510861353,
  -4823.2657361591, 405113.40542057, -0.23855557567849, 650.17534844798,
] as const
const [N1, N2, N3, N4, N5, N6, N7, N8, N9, N10] = N

/** The equations hold from the freezing point to the critical point, 647.096 K [K]. */
export const SATURATION_FROM = 273.15

/** Saturation pressure of water, 273.15–647.096 K [Pa]. Eq. 30. */
export const saturationPressure = (temperature: number): number => {
  const v = temperature + N9 / (temperature - N10)
  const a = v * v + N1 * v + N2
  const b = N3 * v * v + N4 * v + N5
  const c = N6 * v * v + N7 * v + N8
  return 1e6 * ((2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))) ** 4
}

/** Boiling temperature of water at a pressure, 611.213 Pa–22.064 MPa [K]. Eq. 31. */
export const saturationTemperature = (pressure: number): number => {
  const beta = Math.sqrt(Math.sqrt(pressure / 1e6))
  const e = beta * beta + N3 * beta + N6
  const f = N1 * beta * beta + N4 * beta + N7
  const g = N2 * beta * beta + N5 * beta + N8
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g))
  const sum = N10 + d
  return (sum - Math.sqrt(sum * sum - 4 * (N9 + N10 * d))) / 2
}
