const greatestCommonDivisor = (one: number, other: number): number =>
  other === 0 ? one : greatestCommonDivisor(other, one % other)

const FINEST = 64

/** A diameter in inches as the trade writes it: `5/8 in`, `1 1/8 in`, or decimals off the 64ths. */
export const inchName = (inches: number): string => {
  const sixtyFourths = Math.round(inches * FINEST)
  if (Math.abs(inches * FINEST - sixtyFourths) > 1e-6) return `${Number(inches.toFixed(4))} in`
  const whole = Math.floor(sixtyFourths / FINEST)
  const rest = sixtyFourths % FINEST
  if (rest === 0) return `${whole} in`
  const divisor = greatestCommonDivisor(rest, FINEST)
  const fraction = `${rest / divisor}/${FINEST / divisor}`
  return whole === 0 ? `${fraction} in` : `${whole} ${fraction} in`
}

/** A diameter in millimetres as the trade writes it: `6 mm`, `6.5 mm`. */
export const metricName = (millimetres: number): string => `${Number(millimetres.toFixed(3))} mm`
