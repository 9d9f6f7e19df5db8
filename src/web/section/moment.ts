import type { AirState } from '#craft/section/airState.ts'
import type { PotWater } from '#craft/section/drawTin.ts'
import { figureIn } from '../settings/inUnits.ts'
import { units } from '../settings/settings.ts'
import { frontAt } from '../solve/stepAt.ts'
import type { Live } from '../stove/liveBurn.ts'

/** What the picture shows of a burn at the time that is looked at. */
export interface MomentOn {
  readonly state: AirState | null
  readonly charShare: number
  /** Of the flame [m]. */
  readonly flameHeight: number
  readonly water: PotWater | null
}

const UNLIT: MomentOn = { state: null, charShare: 1, flameHeight: 0, water: null }

/** Within this of boiling, water boils [K]. */
const BOILING = 0.2

/** Water of the pot between the ends of two steps [K]. */
export const waterAt = ({ burn, at, step }: Live): number | null => {
  const here = burn?.steps[step]
  if (burn === null || here === undefined || at < burn.boil.putOnAt) return null
  const from = burn.steps[step - 1]?.water ?? burn.boil.waterStart
  const share = Math.min(1, Math.max(0, (at - here.time) / here.duration))
  return from + (here.water - from) * share
}

/** The moment of a live burn as the section draws it: flows of the step, front and water where they are by the clock. */
export const momentOn = (live: Live): MomentOn => {
  const { burn, moment, step, at } = live
  const held = burn?.steps[step]
  if (burn === null || moment === null || held === undefined) return UNLIT
  const water = waterAt(live)
  const boils = water !== null && water >= burn.boilingPoint - BOILING
  const dry = burn.boil.dryAt !== null && at >= burn.boil.dryAt
  return {
    state: { ...moment, frontPosition: frontAt(burn.steps, at) },
    charShare: held.phase === 'char' ? Math.max(0.05, held.charShare) : 1,
    flameHeight: moment.flame.height,
    water:
      water === null
        ? null
        : {
            words: dry
              ? 'boiled dry'
              : `1 L · ${figureIn(water, 'waterTemperature', units.get())}${boils ? ', boils' : ''}`,
            boils: boils && !dry,
          },
  }
}
