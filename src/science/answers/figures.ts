import { type Cooked, cook, potFor } from '#science/burn/cook.ts'
import type { Burn } from '#science/burn/march.ts'
import type { BurnStep } from '#science/burn/record.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { CHAR_ANALYSIS } from '#science/fire/front.ts'
import { higherHeatingValue, lowerHeatingValue } from '#science/fuel/composition.ts'
import { longestTouch } from '#science/heat/touch.ts'
import type { Skirt } from '#science/pot/skirt.ts'
import type { Site } from '#science/site.ts'
import type { Firing } from './run.ts'

/** Water that is asked for: litres, as kilograms at 20 °C near enough [kg]. */
export const VOLUMES = [0.5, 1, 2] as const
export type Volume = (typeof VOLUMES)[number]

export interface CookingWish {
  readonly lid: boolean
  readonly skirt: Skirt | null
  /** Of water and pot when put on [K]. */
  readonly waterStart: number
  /** When the pot goes on, after lighting [s]; null: when the whole bed is alight. */
  readonly on: number | null
  /** Pot's diameter where the stove names none [m]. */
  readonly potDiameter: number
}

export const usualWish: CookingWish = {
  lid: true,
  skirt: null,
  waterStart: 293.15,
  on: null,
  potDiameter: 0.15,
}

/** One pot of water over the burn. */
export interface BoilAnswer {
  readonly litres: number
  /** From going on to the boil [s], null if it does not boil. */
  readonly time: number | null
  /** Fuel as fired burnt until the boil, a litre [kg/L]. */
  readonly fuelPerLitre: number | null
  /** Heat into water and steam over heat of the fuel burnt, while the wood gas lasts [1]. */
  readonly efficiency: number
  /** The same with the char that is left counted as not used [1]. */
  readonly efficiencyCharCredited: number
  /** It boils dry while there is wood gas: the efficiencies say how little water there was, not how good the stove is. */
  readonly driesEarly: boolean
  /** Hottest the water gets [K]. */
  readonly warmest: number
  readonly cooked: Cooked
}

/** What a maker asks of a burn. SI units. */
export interface BurnFigures {
  /** Wood-gas phase, whole bed alight [W]. */
  readonly firepower: number
  readonly firepowerHigh: number
  readonly firepowerLow: number
  /** [s] */
  readonly woodGasTime: number
  readonly charTime: number
  /** Char that the front left, ash included [kg], and the share of the fuel's heat in it [1]. */
  readonly charLeft: number
  readonly charShare: number
  readonly hottestOuterWall: number
  /** How long a touch of it may last before it burns [s]; null: not even the briefest. */
  readonly longestTouch: number | null
  /** Heat given off over the whole burn, pot or no pot: radiated and through walls, and with the hot gas [J]. */
  readonly heatOfWalls: number
  readonly heatOfGas: number
  readonly boils: readonly BoilAnswer[]
}

const sum = (steps: readonly BurnStep[], of: (step: BurnStep) => number): number =>
  steps.reduce((total, step) => total + of(step) * step.duration, 0)

/** All that is asked of a burn, pots included; SI units, as `BurnFigures` says of each. */
export const burnFigures = (
  burn: Burn,
  firing: Firing,
  wish: CookingWish,
  site: Site,
  coefficients: Coefficients,
): BurnFigures => ({
  ...fireFigures(burn, firing, site),
  boils: VOLUMES.map((litres) => boilAnswer(burn, firing, wish, litres, site, coefficients)),
})

/** All that is asked of a burn but its pots. */
export const fireFigures = (burn: Burn, firing: Firing, site: Site): Omit<BurnFigures, 'boils'> => {
  const { steps, totals } = burn
  const woodGas = steps.filter(({ phase }) => phase !== 'char')
  const full = woodGas.filter(({ alight }) => alight >= 0.99)
  const steady = full.length > 0 ? full : woodGas
  const powers = steady.map(({ firepower }) => firepower)
  const steadyTime = sum(steady, () => 1)
  const last = woodGas[woodGas.length - 1]
  const charLeft = last === undefined ? 0 : charAfter(burn, last)
  const hottest = Math.max(site.temperature, ...steps.map(({ hottestOuterWall }) => hottestOuterWall))
  const fired = sum(steps, ({ firepower }) => firepower)
  return {
    firepower: steadyTime > 0 ? sum(steady, ({ firepower }) => firepower) / steadyTime : 0,
    firepowerHigh: Math.max(...powers, 0),
    firepowerLow: powers.length > 0 ? Math.min(...powers) : 0,
    woodGasTime: sum(woodGas, () => 1),
    charTime: sum(steps, ({ phase }) => (phase === 'char' ? 1 : 0)),
    charLeft,
    charShare: (charLeft * CHAR_HEAT) / (firing.charge * firing.lowerHeatingValue),
    hottestOuterWall: hottest,
    longestTouch: longestTouch(hottest),
    heatOfWalls: totals.wallLoss + totals.radiated,
    heatOfGas: Math.max(0, fired - totals.wallLoss - totals.radiated - totals.wallStored),
  }
}

/** Of the char's organic part, lower [J/kg]. */
const CHAR_HEAT = lowerHeatingValue(higherHeatingValue(CHAR_ANALYSIS), CHAR_ANALYSIS.H)

const charAfter = (burn: Burn, last: BurnStep): number => {
  const next = burn.steps.find(({ phase }) => phase === 'char')
  return next?.char ?? last.char
}

/** Any amount of water over a burn [kg, as litres]. */
export const boilAnswer = (
  burn: Burn,
  firing: Firing,
  wish: CookingWish,
  litres: number,
  site: Site,
  coefficients: Coefficients,
): BoilAnswer => {
  const { steps, events, totals } = burn
  const alight = events.find(({ kind }) => kind === 'whole bed alight')?.time ?? 0
  const from = wish.on ?? alight
  const end =
    events.find(({ kind }) => kind === 'front at the floor' || kind === 'front out')?.time ??
    Number.POSITIVE_INFINITY
  const { hearth } = firing.plan
  const pot = potFor(hearth.potDiameter ?? wish.potDiameter, litres, wish.lid)
  const over = { pot, water: litres, start: wish.waterStart, skirt: wish.skirt }
  // The time to boil counts on what the char still gives; efficiency is that of the wood-gas phase alone.
  const cooked = cook(
    steps,
    { ...over, on: [{ from, to: Number.POSITIVE_INFINITY }] },
    hearth,
    site,
    coefficients,
  )
  const gasOnly = cook(steps, { ...over, on: [{ from, to: end }] }, hearth, site, coefficients)
  const burnt = (until: number): number =>
    steps.reduce((total, step) => {
      if (step.phase === 'char') return total
      const share = Math.min(1, Math.max(0, (until - step.time) / step.duration))
      return total + step.fuelRate * step.duration * share
    }, 0)
  const used = burnt(end) - burnt(from)
  const heat = used * firing.lowerHeatingValue
  const charBefore = steps.find(({ phase, time }) => phase !== 'char' && time >= from)?.char ?? 0
  // Samples are of the beginning of a step: what the last one made stands in the totals only.
  const charMade = Math.max(0, totals.charBurnt + totals.charLeft - charBefore)
  const useful = gasOnly.heatToWater + gasOnly.heatToSteam
  return {
    litres,
    time: cooked.timeToBoil,
    fuelPerLitre: cooked.boilsAt === null ? null : burnt(cooked.boilsAt) / litres,
    efficiency: heat > 0 ? useful / heat : 0,
    driesEarly: gasOnly.dryAt !== null,
    efficiencyCharCredited: heat > 0 ? useful / Math.max(heat - charMade * CHAR_HEAT, 0.1 * heat) : 0,
    warmest: Math.max(wish.waterStart, ...cooked.waterTemperature),
    cooked,
  }
}
