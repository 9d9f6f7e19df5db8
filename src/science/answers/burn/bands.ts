import { VOLUMES, type Volume } from '#science/answers/figures.ts'
import { turndown } from '#science/answers/turndown.ts'
import { windStood } from '#science/answers/windStood.ts'
import { type Bands, drained, quantile, type SampledRun } from '#science/bands/bands.ts'
import type { BurnStep } from '#science/burn/record.ts'
import type { Coefficients } from '#science/coefficients.ts'
import type { Regime } from '#science/steady/prediction.ts'
import type { Course } from '../course.ts'
import { type Progress, sampledSteps } from '../sampled.ts'
import { halfwayOf, tripOf } from './asides.ts'
import { type Fired, type FiredOutcome, LITRE, lighter } from './fired.ts'
import type { BurnSetup } from './setup.ts'

const perVolume = <P extends string>(name: P) => VOLUMES.map((litres) => `${name} ${litres} L` as const)

/** What bands are drawn of. Those with a volume are of one pot of water. */
const BURN_BAND_KEYS = [
  'firepower',
  'firepowerHigh',
  'firepowerLow',
  'wholeBedAlightAt',
  'boilsAt 1 L',
  'frontAtFloorAt',
  'charTime',
  'overAt',
  'charLeft',
  'charShare',
  'hottestOuterWall',
  'heatOfWalls',
  'heatOfGas',
  ...perVolume('timeToBoil'),
  ...perVolume('fuelPerLitre'),
  ...perVolume('efficiency'),
  ...perVolume('efficiencyCharCredited'),
  'flameHeight',
  'flameTemperature',
  'airRatioFlame',
  'turndown',
  'windStood',
  'tripFuel',
] as const
export type BurnBandKey = (typeof BURN_BAND_KEYS)[number]

/** The regime that most of the wood-gas phase runs in, or that the front goes out before the floor. */
export const courseOf = ({ burn }: Pick<Fired, 'burn'>): Course => {
  if (burn.events.some(({ kind }) => kind === 'front out')) return 'goes out before the floor'
  const times = new Map<Regime, number>()
  for (const { regime, duration } of burn.steps)
    if (regime !== null) times.set(regime, (times.get(regime) ?? 0) + duration)
  return [...times].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 'does not burn'
}

/** Firepower over time, each moment by itself: its 5th and 95th percentile over the sets. */
export interface PowerBand {
  /** After lighting [s]. */
  readonly time: readonly number[]
  /** [W] */
  readonly low: readonly number[]
  readonly high: readonly number[]
}

export interface BurnBands extends Bands<BurnBandKey> {
  readonly firepowerOverTime: PowerBand
}

const eventTime = (
  { burn }: Pick<Fired, 'burn'>,
  kind: Fired['burn']['events'][number]['kind'],
): number | null => burn.events.find((event) => event.kind === kind)?.time ?? null

/** When the last step ends [s]. */
export const endOf = (steps: readonly BurnStep[]): number => {
  const last = steps[steps.length - 1]
  return last === undefined ? 0 : last.time + last.duration
}

const POINTS = 160

const figuresOf = (
  setup: BurnSetup,
  fired: Fired,
  coefficients: Coefficients,
): Partial<Record<BurnBandKey, number | null>> => {
  const { stove, site } = setup
  const { firing, figures, burn } = fired
  const boils: Partial<Record<BurnBandKey, number | null>> = {}
  for (const boil of figures.boils) {
    const litres = boil.litres as Volume
    boils[`timeToBoil ${litres} L`] = boil.time
    boils[`fuelPerLitre ${litres} L`] = boil.fuelPerLitre
    boils[`efficiency ${litres} L`] = boil.efficiency
    boils[`efficiencyCharCredited ${litres} L`] = boil.efficiencyCharCredited
  }
  const moment = halfwayOf(setup, coefficients)
  return {
    firepower: figures.firepower,
    firepowerHigh: figures.firepowerHigh,
    firepowerLow: figures.firepowerLow,
    wholeBedAlightAt: eventTime(fired, 'whole bed alight'),
    'boilsAt 1 L': figures.boils.find(({ litres }) => litres === LITRE)?.cooked.boilsAt ?? null,
    frontAtFloorAt: eventTime(fired, 'front at the floor'),
    charTime: figures.charTime,
    overAt: endOf(burn.steps),
    charLeft: figures.charLeft,
    charShare: figures.charShare,
    hottestOuterWall: figures.hottestOuterWall,
    heatOfWalls: figures.heatOfWalls,
    heatOfGas: figures.heatOfGas,
    ...boils,
    flameHeight: moment?.flame.height ?? null,
    flameTemperature: moment?.temperature.flame ?? null,
    airRatioFlame: moment?.airRatio.flame ?? null,
    turndown: turndown(stove, firing, site, coefficients)?.ratio ?? null,
    windStood: windStood(firing, site, coefficients)?.stands ?? null,
    tripFuel: tripOf(setup, fired, coefficients)?.fuel ?? null,
  }
}

/** Firepower of one run, step by step. */
interface Power {
  readonly steps: readonly { readonly from: number; readonly to: number; readonly firepower: number }[]
}

/** Straight between the middles of steps; nothing once all is over [W]. */
const powerAt = ({ steps }: Power, time: number): number => {
  const i = steps.findIndex(({ to }) => time < to)
  const step = steps[i]
  if (step === undefined) return 0
  const middle = (step.from + step.to) / 2
  const other = steps[time < middle ? i - 1 : i + 1]
  if (other === undefined) return step.firepower
  const away = (time - middle) / ((other.from + other.to) / 2 - middle)
  return step.firepower + away * (other.firepower - step.firepower)
}

const powerBand = (runs: readonly Power[], until: number): PowerBand => {
  const time = Array.from({ length: POINTS + 1 }, (_, i) => (until * i) / POINTS)
  const sorted = time.map((at) => runs.map((run) => powerAt(run, at)).sort((a, b) => a - b))
  return {
    time,
    low: sorted.map((powers) => quantile(powers, 0.05)),
    high: sorted.map((powers) => quantile(powers, 0.95)),
  }
}

/** The same burn with so many sets of coefficients; `until` is how far firepower is followed [s]. Null for none. */
export const burnBands = (
  setup: BurnSetup,
  samples: number,
  until: number,
  progress: Progress,
): BurnBands | null =>
  samples === 0
    ? null
    : drained(burnBandSteps(setup, samples, until), (share) => progress(Math.round(share * samples), samples))

/** The same, a burn at a time: yields the share done. */
export function* burnBandSteps(
  setup: BurnSetup,
  samples: number,
  until: number,
): Generator<number, BurnBands> {
  const light = lighter(setup)
  const powers: Power[] = []
  const run = (coefficients: Coefficients): SampledRun<BurnBandKey> => {
    const outcome: FiredOutcome = light(coefficients)
    // A fire that never was gives no firepower either: it belongs into the band.
    if (outcome.kind === 'no burn') {
      powers.push({ steps: [] })
      return { outcome: 'does not burn' satisfies Course, figures: {} }
    }
    const { fired } = outcome
    powers.push({
      steps: fired.burn.steps.map(({ time, duration, firepower }) => ({
        from: time,
        to: time + duration,
        firepower,
      })),
    })
    return { outcome: courseOf(fired), figures: figuresOf(setup, fired, coefficients) }
  }
  const bands = yield* sampledSteps(samples, BURN_BAND_KEYS, run)
  return { ...bands, firepowerOverTime: powerBand(powers, until) }
}
