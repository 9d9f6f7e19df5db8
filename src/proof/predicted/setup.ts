import type { Fraction, Metres } from '#basis/units.ts'
import type { Trial, TrialPhase } from '#proof/trial/model.ts'
import type { BurnSetup } from '#science/answers/burn/setup.ts'
import { usualWish } from '#science/answers/figures.ts'
import { fire } from '#science/answers/run.ts'
import { standardPressure } from '#science/atmosphere.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { chargeFuel } from '#science/fuel/charge.ts'
import { saturationPressure } from '#science/pot/saturation.ts'
import type { Stove } from '#stove/model.ts'
import { type FuelWeighing, fuelWeighing } from './weighing.ts'

/** A prediction asked for as the trial was burnt. */
export interface TrialSetup {
  readonly setup: BurnSetup
  readonly phase: TrialPhase
  /** Water put on [kg]. */
  readonly water: number
  /** What the weight of the fuel at the start stands for. */
  readonly weighing: Pick<FuelWeighing, 'beforeLighting' | 'kindling'>
  readonly cautions: readonly string[]
}

/** How far a weighed filling may lie from the model's before the two are not of one level; a judgement [1]. */
const SAME_LEVEL = 0.3

const pressureOf = ({ weather }: Trial): number =>
  weather.pressure ??
  (weather.boilingPoint === undefined
    ? standardPressure(weather.altitude ?? 0)
    : saturationPressure(weather.boilingPoint))

const moistureOf = ({ fuel }: Trial): number =>
  'meter' in fuel.moisture
    ? fuel.moisture.meter
    : (fuel.moisture.before - fuel.moisture.after) / fuel.moisture.before

/** Nothing that was measured of the file's own fuel holds of another. */
const withKind = (stove: Stove, kind: string): Stove =>
  stove.fuel.kind === kind ? stove : { ...stove, fuel: { kind, level: stove.fuel.level, moisture: null } }

const withPot = (stove: Stove, diameter: number | undefined): Stove =>
  diameter === undefined || stove.potDiameter === null ? stove : { ...stove, potDiameter: diameter as Metres }

/** What the model burns away before the phase begins, with the fuel as the file has it [kg]. */
const burntBefore = (
  setup: BurnSetup,
  until: number,
): { readonly charge: number; readonly burnt: number } | null => {
  const { stove, site, moisture, burntOff, hot } = setup
  const outcome = fire(stove, { site, moisture, burntOff, hot })
  if (!outcome.ok || outcome.value.kind === 'no burn') return null
  const { firing } = outcome.value
  const burnt = firing.burn(medianCoefficients)
  if (!burnt.ok) return null
  const gone = burnt.burn.steps.reduce(
    (sum, step) =>
      sum +
      (step.phase === 'char' ? 0 : step.fuelRate * Math.max(0, Math.min(step.duration, until - step.time))),
    0,
  )
  return { charge: firing.charge, burnt: gone }
}

const grams = (mass: number): string => `${Math.round(mass * 1000)} g`

const caution = (weighed: number, filled: number, said: number): string => {
  const when =
    Math.round((filled - weighed) * 1000) === 0
      ? ''
      : `, about ${grams(filled)} in the can when it was lit as the model burns it,`
  return `${grams(weighed)} of fuel were weighed for the start${when} where the stove file’s level holds about ${grams(said)}: the prediction keeps to the level.`
}

/** A filling that was weighed: as noted, and what of it lay in the can when it was lit [kg]. */
interface Filling {
  readonly weighed: number
  readonly filled: number
}

/** The bed as heavy as it was filled, at the level of the file, which holds `charge` [kg]. */
const withFilling = (
  setup: BurnSetup,
  { weighed, filled }: Filling,
  charge: number,
): { readonly setup: BurnSetup; readonly said: string | null } => {
  const wanted = filled / charge
  if (Math.abs(wanted - 1) > SAME_LEVEL) return { setup, said: caution(weighed, filled, charge) }
  const { fuel } = setup.stove
  const can = [...setup.stove.parts.values()].find((part) => part.form === 'can' && part.role === 'fuel can')
  if (can === undefined || can.form !== 'can') return { setup, said: null }
  const bore = can.can.bodyDiameter.value - 2 * can.can.bodyWall
  const moisture = setup.moisture as Fraction
  const charged = chargeFuel({ ...fuel, moisture }, bore)
  if (!charged.ok) return { setup, said: null }
  const own = {
    name: charged.value.label,
    pieces: fuel.own?.pieces ?? null,
    pieceDensity: charged.value.pieceDensity,
    moisture,
    bulk: { density: charged.value.bulkDensity * wanted, vesselDiameter: bore as Metres },
  }
  const heavier = { ...fuel, own }
  return chargeFuel({ ...heavier, moisture }, bore).ok
    ? { setup: { ...setup, stove: { ...setup.stove, fuel: heavier } }, said: null }
    : { setup, said: caution(weighed, filled, charge) }
}

/** The bed as heavy as the trial weighed it, and what that weight stands for. */
const weighedIn = (
  setup: BurnSetup,
  trial: Trial,
  phase: TrialPhase,
): Pick<TrialSetup, 'setup' | 'weighing' | 'cautions'> => {
  const level = burntBefore(setup, phase.from.at)
  const { said, ...weighing } = fuelWeighing(trial, phase, level?.burnt ?? 0)
  if (level === null) return { setup, weighing, cautions: said }
  const weighed = phase.from.fuel
  const filled = weighing.beforeLighting ? weighed - weighing.kindling : weighed + level.burnt
  const heavy = withFilling(setup, { weighed, filled }, level.charge)
  return { setup: heavy.setup, weighing, cautions: heavy.said === null ? said : [...said, heavy.said] }
}

/** The burn to predict for a trial: its stove, fuel, weather, pot and turns of the damper. Null for no high-power phase. */
export const setupOfTrial = (file: Stove, trial: Trial): TrialSetup | null => {
  const phase = trial.phases.find((one) => one.phase === 'high power')
  if (phase === undefined) return null
  const { weather, pot, events } = trial
  const stove = withPot(withKind(file, trial.fuel.kind), pot.diameter)
  const cautions: string[] = []
  if (weather.wind !== undefined && weather.wind > 0)
    cautions.push('Nobody noted where the wind came from: it is taken to blow at the front mark.')
  if (trial.fuel.kind !== file.fuel.kind)
    cautions.push('The stove file names another fuel: the one of the trial is taken, to the same level.')
  const turns = events.flatMap(({ event, after, turned }) =>
    event === 'damper to' && after !== null && turned !== undefined && after >= 0
      ? [{ at: after, turned }]
      : [],
  )
  const damper = [...stove.parts.values()].some(({ role }) => role === 'damper')
  if (turns.length > 0 && !damper)
    cautions.push('The trial turns a damper that the stove file does not have: left out.')
  const setup: BurnSetup = {
    stove,
    site: {
      temperature: weather.temperature,
      pressure: pressureOf(trial),
      wind: { speed: weather.wind ?? 0, from: 0 },
    },
    moisture: moistureOf(trial),
    burntOff: true,
    hot: trial.start === 'hot',
    turns: damper ? turns : [],
    wish: {
      lid: pot.lid,
      skirt: null,
      waterStart: phase.from.water,
      on: phase.from.at,
      potDiameter: pot.diameter ?? stove.potDiameter ?? usualWish.potDiameter,
    },
    trip: null,
  }
  const heavy = weighedIn(setup, trial, phase)
  return {
    ...heavy,
    phase,
    water: phase.from.pot - pot.weight,
    cautions: [...cautions, ...heavy.cautions],
  }
}
