import { smoothed } from './localLine.ts'
import { usualStep } from './step.ts'

/** Water has arrived within this of the boiling point [K], and stays within that. Judgements. */
const ARRIVED = 0.7
const STAYS = 1.5
/** For as long [s]. */
const HOLDS = 20
/** Fine enough to see the knee [s], and so many usual steps where readings are further apart. */
const BANDWIDTH = 12
const STEPS = 3

export interface Boil {
  /** By the logger's clock [s]. */
  readonly time: number
  /** Of the water then, smoothed [K]. */
  readonly temperature: number
  readonly method: string
}

/** When water began to boil, or null: `boilingPoint` of the place [K]. */
export const boilOf = (time: Float64Array, temperature: Float64Array, boilingPoint: number): Boil | null => {
  if (time.length < 3) return null
  const { smooth } = smoothed(time, temperature, Math.max(BANDWIDTH, STEPS * usualStep(time)))
  for (let i = 0; i < smooth.time.length; i++) {
    const at = smooth.time[i] as number
    if ((smooth.value[i] as number) < boilingPoint - ARRIVED) continue
    let held = true
    let seen = at
    for (let j = i; j < smooth.time.length && seen - at < HOLDS; j++) {
      seen = smooth.time[j] as number
      held &&= Math.abs((smooth.value[j] as number) - boilingPoint) <= STAYS
    }
    if (held && seen - at >= HOLDS)
      return {
        time: at,
        temperature: smooth.value[i] as number,
        method: `first moment within ${ARRIVED} K of the boiling point that is followed by ${HOLDS} s within ${STAYS} K of it; ${smooth.method}`,
      }
  }
  return null
}
