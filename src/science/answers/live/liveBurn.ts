import { orThrow } from '#basis/problem.ts'
import { courseOf } from '#science/answers/burn/bands.ts'
import { LITRE, outWhileLit } from '#science/answers/burn/fired.ts'
import {
  type BurnReport,
  eventsOf,
  fuelPredictionOf,
  type ReportEvent,
  stopsOf,
  type Touch,
  touchOf,
} from '#science/answers/burn/report.ts'
import type { BurnSetup } from '#science/answers/burn/setup.ts'
import type { Course } from '#science/answers/course.ts'
import { type BurnFigures, fireFigures } from '#science/answers/figures.ts'
import { fire } from '#science/answers/run.ts'
import { cook, potFor } from '#science/burn/cook.ts'
import type { BurnPhase, BurnStep } from '#science/burn/record.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import type { NoBurn } from '#science/steady/predict.ts'
import type { FuelPrediction, Moment, Regime } from '#science/steady/prediction.ts'

/** A step of a burn with what a curve and a picture of it want, and no more: it travels with every frame of a gesture. */
export interface LiveStep {
  /** Since lighting, and for how long it holds [s]. */
  readonly time: number
  readonly duration: number
  readonly phase: BurnPhase
  readonly regime: Regime | null
  /** [W] */
  readonly firepower: number
  /** 0 at the top of the fuel, 1 at its floor. */
  readonly frontPosition: number
  /** Share of the bed's area alight [1]. */
  readonly alight: number
  /** Char in the bed over the most there is at any time [1]. */
  readonly charShare: number
  /** Hottest outer wall [K]. */
  readonly hottestOuterWall: number
  /** Of one litre at the step's end [K]. */
  readonly water: number
}

/** One litre on the fire. */
export interface LiveBoil {
  readonly putOnAt: number
  /** From going on to the boil; null if it does not boil [s]. */
  readonly time: number | null
  readonly boilsAt: number | null
  /** When it is as good as dry [s]; null if water is left. */
  readonly dryAt: number | null
  /** Hottest the water gets [K]. */
  readonly warmest: number
  readonly waterStart: number
}

/** The burn of a stove that is being changed: what is told of it while the hand still moves. Plain data, SI units. */
export interface LiveBurn {
  readonly stove: string
  readonly fuel: FuelPrediction
  readonly course: Course
  readonly stops: BurnReport['stops']
  readonly figures: Omit<BurnFigures, 'boils' | 'longestTouch'>
  readonly touch: Touch
  readonly boil: LiveBoil
  /** Of water there [K]. */
  readonly boilingPoint: number
  readonly events: readonly ReportEvent[]
  readonly steps: readonly LiveStep[]
}

export type LiveOutcome =
  | {
      readonly kind: 'burn'
      readonly burn: LiveBurn
      /** Of every step, as it began. */
      readonly moments: readonly Moment[]
    }
  | { readonly kind: 'no burn'; readonly noBurn: NoBurn }

const boilOf = (
  setup: BurnSetup,
  steps: readonly BurnStep[],
  putOnAt: number,
  hearth: Parameters<typeof cook>[2],
) => {
  const { wish, site } = setup
  const pot = potFor(hearth.potDiameter ?? wish.potDiameter, LITRE, wish.lid)
  const on = [{ from: putOnAt, to: Number.POSITIVE_INFINITY }]
  return cook(
    steps,
    { pot, water: LITRE, start: wish.waterStart, skirt: wish.skirt, on },
    hearth,
    site,
    medianCoefficients,
  )
}

/**
 * The same burn as `reportOf` tells of, one pot instead of three and nothing asked again with other dampers or winds: a
 * third of its time. Turns of the damper are left out: here the hand turns it.
 * @throws BadInput for a fuel that is not known.
 */
export const liveBurn = (setup: BurnSetup): LiveOutcome => {
  const { stove, site, moisture, burntOff, hot, wish } = setup
  const laid = orThrow(fire(stove, { site, moisture, burntOff, hot }))
  if (laid.kind === 'no burn') return laid
  const { firing } = laid
  const burnt = firing.burn(medianCoefficients, true)
  if (!burnt.ok) return { kind: 'no burn', noBurn: burnt.failure }
  const { burn } = burnt
  const noBurn = outWhileLit(burn)
  if (noBurn !== null) return { kind: 'no burn', noBurn }
  const putOnAt = wish.on ?? burn.events.find(({ kind }) => kind === 'whole bed alight')?.time ?? 0
  const cooked = boilOf(setup, burn.steps, putOnAt, firing.plan.hearth)
  const { longestTouch, ...figures } = fireFigures(burn, firing, site)
  const mostChar = Math.max(...burn.steps.map(({ char }) => char), 1e-9)
  return {
    kind: 'burn',
    burn: {
      stove: stove.name,
      fuel: fuelPredictionOf(firing),
      course: courseOf({ burn }),
      stops: stopsOf({ burn }),
      figures,
      touch: touchOf({ hottestOuterWall: figures.hottestOuterWall, longestTouch }),
      boil: {
        putOnAt,
        time: cooked.timeToBoil,
        boilsAt: cooked.boilsAt,
        dryAt: cooked.dryAt,
        warmest: Math.max(wish.waterStart, ...cooked.waterTemperature),
        waterStart: wish.waterStart,
      },
      boilingPoint: cooked.boilingPoint,
      events: eventsOf({ burn }, putOnAt, cooked.boilsAt),
      steps: burn.steps.map((step, i) => ({
        time: step.time,
        duration: step.duration,
        phase: step.phase,
        regime: step.regime,
        firepower: step.firepower,
        frontPosition: step.frontPosition,
        alight: step.alight,
        charShare: step.char / mostChar,
        hottestOuterWall: step.hottestOuterWall,
        water: cooked.waterTemperature[i] as number,
      })),
    },
    moments: burn.moments,
  }
}
