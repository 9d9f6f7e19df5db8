import type { StartBurn } from '#compose/startStove.ts'
import { aboutIn, aboutTime } from '../settings/inUnits.ts'
import type { Units } from '../settings/settings.ts'

/** How a stove that was just laid out burns, in a sentence. */
export const burnSentence = ({ firepower, duration, trouble }: StartBurn, units: Units): string => {
  if (firepower === null || duration === null) return trouble ?? 'It does not burn.'
  const figures = `${aboutIn(firepower, 'firepower', units)} for ${aboutTime(duration)}`
  return trouble === null
    ? `Burns clean, about ${figures}, as the model has it.`
    : `About ${figures}. ${trouble}`
}
