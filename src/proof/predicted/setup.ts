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

/** A prediction asked for as the trial was burnt. */
export interface TrialSetup {
  readonly setup: BurnSetup
  readonly phase: TrialPhase
  /** Water put on [kg]. */
  readonly water: number
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

const caution = (weighed: number, burnt: number, said: number): string => {
  const before =
    Math.round(burnt * 1000) > 0
      ? `, about ${grams(weighed + burnt)} when it was lit as the model burns it,`
      : ''
  return `${grams(weighed)} of fuel were there at the start${before} where the stove file’s level holds about ${grams(said)}: the prediction keeps to the level.`
}

/** The bed as heavy as it was weighed, at the level of the file. */
const withWeight = (
  setup: BurnSetup,
  weighed: number,
  from: number,
): { readonly setup: BurnSetup; readonly said: string | null } => {
  const first = burntBefore(setup, from)
  if (first === null) return { setup, said: null }
  const wanted = (weighed + first.burnt) / first.charge
  if (Math.abs(wanted - 1) > SAME_LEVEL) return { setup, said: caution(weighed, first.burnt, first.charge) }
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
    : { setup, said: caution(weighed, first.burnt, first.charge) }
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
  const heavy = withWeight(setup, phase.from.fuel, phase.from.at)
  if (heavy.said !== null) cautions.push(heavy.said)
  return { setup: heavy.setup, phase, water: phase.from.pot - pot.weight, cautions }
}
