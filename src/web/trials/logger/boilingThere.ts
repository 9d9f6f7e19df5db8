import { readLength } from '#basis/text/length.ts'
import { readQuantity } from '#basis/text/read.ts'
import { standardPressure } from '#science/atmosphere.ts'
import { saturationTemperature } from '#science/pot/saturation.ts'
import { at, type Draft } from '../draft.ts'

export interface BoilingThere {
  /** [K] */
  readonly temperature: number
  /** Where it comes from. */
  readonly from: string
}

/** Water at sea level [K]. */
const SEA_LEVEL = saturationTemperature(standardPressure(0))

/** Where water boils at the place of a trial, from what is told of it so far. */
export const boilingThere = (draft: Draft): BoilingThere => {
  const point = readQuantity(at(draft, ['weather', 'boilingPoint']), '', 'waterTemperature')
  if (point.ok) return { temperature: point.value, from: 'as measured there' }
  const pressure = readQuantity(at(draft, ['weather', 'pressure']), '', 'airPressure')
  if (pressure.ok)
    return { temperature: saturationTemperature(pressure.value), from: 'from the air pressure' }
  const altitude = readLength(at(draft, ['weather', 'altitude']), '', 'altitude')
  if (altitude.ok)
    return {
      temperature: saturationTemperature(standardPressure(altitude.value)),
      from: 'from the height above the sea',
    }
  return { temperature: SEA_LEVEL, from: 'at sea level: how high the place lies is not told yet' }
}
