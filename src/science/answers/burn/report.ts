import type { BoilAnswer, BurnFigures } from '#science/answers/figures.ts'
import type { Firing } from '#science/answers/run.ts'
import type { TripAnswer } from '#science/answers/trip.ts'
import { type Turndown, turndown } from '#science/answers/turndown.ts'
import { type WindAnswer, windStood } from '#science/answers/windStood.ts'
import type { BurnTotals } from '#science/burn/ledger.ts'
import type { BurnEvent, BurnStep } from '#science/burn/record.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { saturationTemperature } from '#science/pot/saturation.ts'
import type { Skirt } from '#science/pot/skirt.ts'
import type { Site } from '#science/site.ts'
import type { NoBurn } from '#science/steady/predict.ts'
import type { FuelPrediction, Moment } from '#science/steady/prediction.ts'
import type { Course } from '../course.ts'
import { type Progress, silent } from '../sampled.ts'
import { halfwayOf, tripOf } from './asides.ts'
import { type BurnBands, burnBands, courseOf, endOf } from './bands.ts'
import { type Fired, LITRE, lighter, type TimedTurn } from './fired.ts'
import type { BurnSetup } from './setup.ts'

/** One pot of water over the burn. */
export interface Boil extends Omit<BoilAnswer, 'cooked'> {
  /** After lighting [s], null if it does not boil. */
  readonly boilsAt: number | null
  /** What is in the pot when all is over [kg]. */
  readonly waterLeft: number
  /** When it is as good as dry, after lighting [s]; null if water is left. */
  readonly dryAt: number | null
  /** Heat that went into the pot's bottom by gas and by radiation, and through its side [J]. */
  readonly gained: { readonly bottom: number; readonly radiation: number; readonly side: number }
}

export interface ReportEvent {
  readonly time: number
  readonly kind: BurnEvent['kind'] | 'pot on' | 'boil'
  readonly sentence: string
}

/** A step of the burn with the water of every pot at its end. */
export interface ReportStep extends BurnStep {
  /** Litres and temperature [K]. */
  readonly water: readonly { readonly litres: number; readonly temperature: number }[]
}

/** What the hottest outer wall does to a hand. */
export interface Touch {
  readonly wall: number
  /** Longest touch before a burn may come [s]; null with `risk` at its ends. */
  readonly longest: number | null
  readonly risk: 'even the briefest touch may burn' | 'burns after a while' | 'none within 8 hours'
}

/** All that is said of a burn. Plain data, SI units, ready for JSON. */
export interface BurnReport {
  readonly stove: string
  readonly fuel: FuelPrediction
  /** Where numbers of the fuel are used outside what they were measured for; sentences. */
  readonly fuelCautions: readonly string[]
  readonly site: Site
  readonly asked: {
    readonly hot: boolean
    readonly newTin: boolean
    /** As it came out: a turn at the boil has its time. */
    readonly damper: readonly TimedTurn[]
    /** Turned at the boil, but one litre never boils. */
    readonly boilNeverCame: boolean
    readonly pot: {
      readonly diameter: number
      readonly lid: boolean
      readonly skirt: Skirt | null
      readonly putOnAt: number
      readonly waterStart: number
    }
  }
  readonly course: Course
  /** Where a front that does not reach the floor goes out, and why; null for one that does. */
  readonly stops: { readonly frontPosition: number; readonly time: number; readonly sentence: string } | null
  readonly events: readonly ReportEvent[]
  readonly figures: Omit<BurnFigures, 'boils' | 'longestTouch'>
  readonly touch: Touch
  readonly boils: readonly Boil[]
  /** Of water there [K]. */
  readonly boilingPoint: number
  readonly turndown: Turndown | null
  readonly wind: WindAnswer | null
  readonly trip: TripAnswer | null
  /** With the front half way down and the damper as the stove file has it; null where that is no steady burn. */
  readonly halfway: Moment | null
  readonly totals: BurnTotals
  readonly bands: BurnBands | null
  readonly series: readonly ReportStep[]
}

export type ReportOutcome =
  | { readonly kind: 'burn'; readonly report: BurnReport }
  | { readonly kind: 'no burn'; readonly stove: string; readonly noBurn: NoBurn }

/** What lies in the fuel can. */
export const fuelPredictionOf = ({ fuel, charge, lowerHeatingValue, plan }: Firing): FuelPrediction => ({
  key: fuel.key,
  label: fuel.label,
  moisture: fuel.moisture,
  charge,
  lowerHeatingValue,
  bedArea: plan.bed.area,
  bedDepth: plan.bed.depth,
})

/** What a wall does to a hand. */
export const touchOf = ({
  hottestOuterWall,
  longestTouch,
}: Pick<BurnFigures, 'hottestOuterWall' | 'longestTouch'>): Touch =>
  longestTouch === null
    ? { wall: hottestOuterWall, longest: null, risk: 'even the briefest touch may burn' }
    : Number.isFinite(longestTouch)
      ? { wall: hottestOuterWall, longest: longestTouch, risk: 'burns after a while' }
      : { wall: hottestOuterWall, longest: null, risk: 'none within 8 hours' }

const boilOf = ({ cooked, ...boil }: BoilAnswer): Boil => ({
  ...boil,
  boilsAt: cooked.boilsAt,
  waterLeft: cooked.waterLeft,
  dryAt: cooked.dryAt,
  gained: cooked.gained,
})

/** What happens in a burn and to a pot of one litre, in order of time. */
export const eventsOf = (
  { burn }: Pick<Fired, 'burn'>,
  putOnAt: number,
  boil: number | null,
): readonly ReportEvent[] => {
  const own: readonly ReportEvent[] = burn.events.filter(({ kind }) => kind !== 'end')
  const pot: readonly ReportEvent[] = [
    { time: putOnAt, kind: 'pot on', sentence: 'The pot goes on.' },
    ...(boil === null ? [] : [{ time: boil, kind: 'boil' as const, sentence: 'One litre boils.' }]),
  ]
  return [...own, ...pot].sort((a, b) => a.time - b.time)
}

/** Where a front that does not reach the floor goes out; null for one that does. */
export const stopsOf = ({ burn }: Pick<Fired, 'burn'>): BurnReport['stops'] => {
  const out = burn.events.find(({ kind }) => kind === 'front out')
  const last = burn.steps[burn.steps.length - 1]
  return out === undefined || last === undefined
    ? null
    : { frontPosition: last.frontPosition, time: out.time, sentence: out.sentence }
}

/** Burns a stove as asked and gathers everything a maker may want to know of it. */
export const reportOf = (setup: BurnSetup, bandSets: number, progress: Progress = silent): ReportOutcome => {
  const { stove, site, wish, hot, burntOff, turns } = setup
  const outcome = lighter(setup)(medianCoefficients)
  if (outcome.kind === 'no burn') return { kind: 'no burn', stove: stove.name, noBurn: outcome.noBurn }
  const { fired } = outcome
  const { firing, burn } = fired
  const { boils, longestTouch, ...figures } = fired.figures
  const putOnAt = wish.on ?? burn.events.find(({ kind }) => kind === 'whole bed alight')?.time ?? 0
  return {
    kind: 'burn',
    report: {
      stove: stove.name,
      fuel: fuelPredictionOf(firing),
      fuelCautions: firing.fuel.cautions,
      site,
      asked: {
        hot,
        newTin: !burntOff,
        damper: fired.turns,
        boilNeverCame: turns.length > fired.turns.length,
        pot: {
          diameter: firing.plan.hearth.potDiameter ?? wish.potDiameter,
          lid: wish.lid,
          skirt: wish.skirt,
          putOnAt,
          waterStart: wish.waterStart,
        },
      },
      course: courseOf(fired),
      stops: stopsOf(fired),
      events: eventsOf(fired, putOnAt, boils.find(({ litres }) => litres === LITRE)?.cooked.boilsAt ?? null),
      figures,
      touch: touchOf(fired.figures),
      boils: boils.map(boilOf),
      boilingPoint: saturationTemperature(site.pressure),
      turndown: turndown(stove, firing, site, medianCoefficients),
      wind: windStood(firing, site, medianCoefficients),
      trip: tripOf(setup, fired, medianCoefficients),
      halfway: halfwayOf(setup, medianCoefficients),
      totals: burn.totals,
      bands: burnBands(setup, bandSets, endOf(burn.steps), progress),
      series: burn.steps.map((step, i) => ({
        ...step,
        water: boils.map(({ litres, cooked }) => ({
          litres,
          temperature: cooked.waterTemperature[i] as number,
        })),
      })),
    },
  }
}
