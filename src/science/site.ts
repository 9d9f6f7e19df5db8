/** Where and when the stove burns. Calm air; wind comes with the draught through each hole's own bearing. */
export interface Site {
  /** Air temperature [K]. */
  readonly temperature: number
  /** Air pressure [Pa]. */
  readonly pressure: number
}

/** 20 °C at sea level. */
export const mildDay: Site = { temperature: 293.15, pressure: 101325 }
