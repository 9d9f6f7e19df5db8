import { FORMULAS } from '#proof/metrics/formulas.ts'
import type { Claim } from './model.ts'

type Words = readonly [key: string, name: string, lessWord: string, moreWord: string]

/** Metrics that the model has an answer to. */
const METRICS: readonly Words[] = [
  ['timeToBoil', 'time to boil', 'shorter', 'longer'],
  ['burningRate', 'burning rate', 'slower', 'faster'],
  ['firepower', 'firepower', 'weaker', 'stronger'],
  ['usefulPower', 'heat into the water', 'less', 'more'],
  ['efficiencyNoChar', 'efficiency, char counted as burnt', 'lower', 'higher'],
  ['efficiency', 'efficiency, char counted as left', 'lower', 'higher'],
  ['specificFuel', 'fuel a litre', 'less', 'more'],
  ['charYield', 'char by weight of the fuel', 'less', 'more'],
]

/** When the flame goes out, after lighting. */
export const FLAME_OUT = 'flameOut'

/** Every claim of the model that a trial can be held against. */
export const CLAIMS: readonly Claim[] = [
  ...METRICS.map(([key, name, lessWord, moreWord]): Claim => {
    const formula = FORMULAS.find((one) => one.key === key)
    if (formula === undefined) throw new Error(`No formula ${key}`)
    return { key, unit: formula.unit, name, lessWord, moreWord }
  }),
  {
    key: FLAME_OUT,
    unit: 'min',
    name: 'time until the flame is out',
    lessWord: 'shorter',
    moreWord: 'longer',
  },
]
