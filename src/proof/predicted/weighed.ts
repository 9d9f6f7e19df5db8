import { type Kelvin, toCelsius } from '#basis/units.ts'
import { evaluatePhase } from '#proof/metrics/evaluate.ts'
import type { Fired } from '#science/answers/burn/fired.ts'
import { type Cooked, cook, potFor } from '#science/burn/cook.ts'
import type { BurnStep } from '#science/burn/record.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { CLAIMS, FLAME_OUT } from './claims.ts'
import type { PhaseEnd } from './model.ts'
import type { TrialSetup } from './setup.ts'

const GRAMS = 1000
const MINUTE = 60

/** Raw fuel burnt since lighting, as fired [kg]. */
const burntBy = (steps: readonly BurnStep[], time: number): number =>
  steps.reduce(
    (sum, step) =>
      sum +
      (step.phase === 'char' ? 0 : step.fuelRate * Math.max(0, Math.min(step.duration, time - step.time))),
    0,
  )

/** Char on the grate, straight between the beginnings of steps [kg]. */
const charAt = (steps: readonly BurnStep[], time: number, left: number): number => {
  const i = steps.findIndex((step) => time < step.time + step.duration)
  const step = steps[i]
  if (step === undefined) return left
  const next = steps[i + 1]?.char ?? left
  return step.char + ((next - step.char) * Math.max(0, time - step.time)) / step.duration
}

/** When the gas flame ends: the front at the floor, or out [s]; null where it does neither. */
const flameOutOf = ({ burn }: Fired): number | null =>
  burn.events.find(({ kind }) => kind === 'front at the floor' || kind === 'front out')?.time ?? null

const potOver = (
  { setup, water }: TrialSetup,
  { burn, firing }: Fired,
  coefficients: Coefficients,
  to: number,
): Cooked => {
  const { wish, site } = setup
  const { hearth } = firing.plan
  const pot = potFor(hearth.potDiameter ?? wish.potDiameter, water, wish.lid)
  const on = [{ from: wish.on ?? 0, to }]
  return cook(
    burn.steps,
    { pot, water, start: wish.waterStart, skirt: wish.skirt, on },
    hearth,
    site,
    coefficients,
  )
}

/**
 * What scale, clock and thermometer would have shown had the stove burnt as predicted, put into the formulas of the
 * trial with its own heating values. By the key of the claim; what the prediction does not have is not there.
 * `readings` are those of the trial, its phase at place `index`.
 */
export const weighedBurn = (
  asked: TrialSetup,
  fired: Fired,
  coefficients: Coefficients,
  endsAt: PhaseEnd,
  readings: ReadonlyMap<string, number>,
  index: number,
): Readonly<Record<string, number>> => {
  const { phase, weighing } = asked
  const { steps, totals } = fired.burn
  const from = phase.from.at
  const flameOut = flameOutOf(fired)
  const boilsAt = potOver(asked, fired, coefficients, Number.POSITIVE_INFINITY).boilsAt
  const to =
    endsAt === 'boil' ? boilsAt : endsAt === 'flame out' ? flameOut : from + (phase.to.at - phase.from.at)
  const figures: Record<string, number> = flameOut === null ? {} : { [FLAME_OUT]: flameOut / MINUTE }
  if (to === null || to <= from) return figures
  const cooked = potOver(asked, fired, coefficients, to)
  const last = steps.findLastIndex((step) => step.time < to)
  const water = cooked.waterTemperature[last] ?? phase.from.water
  const charge = fired.firing.charge
  const own: Readonly<Record<string, number>> = {
    fi: (weighing.beforeLighting ? charge + weighing.kindling : charge - burntBy(steps, from)) * GRAMS,
    ff: Math.max(0, charge - burntBy(steps, to)) * GRAMS,
    c: (charAt(steps, to, totals.charLeft) - charAt(steps, from, totals.charLeft)) * GRAMS,
    Pi: phase.from.pot * GRAMS,
    Pf: (phase.from.pot - (asked.water - cooked.waterLeft)) * GRAMS,
    Ti: toCelsius(phase.from.water as Kelvin),
    Tf: toCelsius(water as Kelvin),
    ti: from / MINUTE,
    tf: to / MINUTE,
  }
  const all = new Map([...readings].filter(([id]) => !id.includes('.')))
  for (const [key, value] of Object.entries(own)) all.set(`${index}.${key}`, value)
  if (boilsAt !== null && boilsAt <= to + 1e-6) all.set(`${index}.tb`, boilsAt / MINUTE)
  const values = evaluatePhase(all, 'high power', index)
  for (const { key } of CLAIMS) {
    const value = values.get(key)
    if (value !== undefined && Number.isFinite(value)) figures[key] = value
  }
  return figures
}
