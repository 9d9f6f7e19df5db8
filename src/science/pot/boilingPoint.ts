import { standardPressure } from '#science/atmosphere.ts'
import { saturationTemperature } from './saturation.ts'

/**
 * Where water boils at a height above the sea in the standard atmosphere, −2000 to 11000 m [K]. The day's
 * weather moves it: 10 hPa more, 0.28 K at sea level. Salt and a tall pot are left aside: 10 cm of water over
 * the bottom add 0.3 K there.
 */
export const boilingPointAt = (altitude: number): number => saturationTemperature(standardPressure(altitude))
