import type { Wording } from '#stove/difference/difference.ts'
import { fuelChoice } from '../fuel/fuelChoices.ts'
import { lengthIn } from '../settings/inUnits.ts'
import type { Units } from '../settings/settings.ts'

/** How a difference between stoves is said here: lengths in the units that were chosen, fuels by their names. */
export const wordingIn = (units: Units): Wording => ({
  length: (length) => lengthIn(length, units),
  fuel: (key) => fuelChoice(key)?.name ?? key,
})
