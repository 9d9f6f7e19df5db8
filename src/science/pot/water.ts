/**
 * Water as it is heated in a pot: polynomials in t [°C], fitted by
 * `test/reference/generators/waterProperties.py` to IAPWS-IF97 at every 5 °C from 0 to 95 °C and at 99 °C,
 * liquid at 1 atm and evaporation at saturation [bib:iapws2012]. Good from 0 to 102 °C; a mountain's pressure
 * changes none of them by 0.01 %.
 */
const celsius = (temperature: number): number => temperature - 273.15

/** Density, within 0.001 % [kg/m³]. */
export const waterDensity = (temperature: number): number => {
  const t = celsius(temperature)
  return 999.85 + t * (0.0619254 + t * (-0.00834711 + t * (6.52643e-5 + t * (-4.07184e-7 + t * 1.12443e-9))))
}

const C = [4219.02, -3.16368, 0.0985833, -0.00159526, 1.37826e-5, -4.55295e-8] as const

/** Heat capacity, within 0.013 % [J/(kg K)]. */
export const waterHeat = (temperature: number): number => {
  const t = celsius(temperature)
  return C[0] + t * (C[1] + t * (C[2] + t * (C[3] + t * (C[4] + t * C[5]))))
}

/** Heat it takes to bring water there from 0 °C: the integral of `waterHeat` [J/kg]. */
export const waterEnthalpy = (temperature: number): number => {
  const t = celsius(temperature)
  return t * (C[0] + t * (C[1] / 2 + t * (C[2] / 3 + t * (C[3] / 4 + t * (C[4] / 5 + (t * C[5]) / 6)))))
}

/** Heat of evaporation, within 0.001 % [J/kg]. */
export const evaporationHeat = (temperature: number): number => {
  const t = celsius(temperature)
  return 2500920 + t * (-2374.61 + t * (0.526212 - t * 0.0122364))
}
