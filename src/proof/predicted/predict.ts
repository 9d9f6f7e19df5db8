import { metricId } from '#proof/compare/comparedMetrics.ts'
import { measuredTrial } from '#proof/compare/measured.ts'
import { inputsOf } from '#proof/metrics/inputs.ts'
import { type Trial, variantOf } from '#proof/trial/model.ts'
import { lighter } from '#science/answers/burn/fired.ts'
import type { Course } from '#science/answers/course.ts'
import { type Progress, sampled, silent } from '#science/answers/sampled.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import type { Stove } from '#stove/model.ts'
import { CLAIMS, FLAME_OUT } from './claims.ts'
import type { PhaseEnd, PredictedFigure, PredictedTrial } from './model.ts'
import { setupOfTrial, type TrialSetup } from './setup.ts'
import { sideOf } from './side.ts'
import { weighedBurn } from './weighed.ts'

/** A phase that ends so soon after the boil, or about flame-out, was ended by it [s]; a judgement. */
const AT_THE_BOIL = 20
const AT_FLAME_OUT = 45

const flameOutOf = ({ events }: Trial): number | null =>
  events.find(({ event }) => event === 'flame out')?.after ?? null

const endOf = (trial: Trial, { phase }: TrialSetup): PhaseEnd => {
  const { boil, to } = phase
  const out = flameOutOf(trial)
  if (boil !== null && to.at - boil <= AT_THE_BOIL) return 'boil'
  return out !== null && Math.abs(out - to.at) <= AT_FLAME_OUT ? 'flame out' : 'as long'
}

interface Shown {
  readonly value: number
  readonly u: number
}

/** What was measured, by the key of the claim. */
const measuredOf = (trial: Trial): ReadonlyMap<string, Shown> => {
  const { metrics } = measuredTrial(trial)
  const found = new Map<string, Shown>()
  for (const { key } of CLAIMS) {
    const metric = metrics.get(metricId('high power', key))
    if (metric !== undefined) found.set(key, { value: metric.value, u: metric.u })
  }
  const out = flameOutOf(trial)
  // A step of the clock; how long a person takes to be sure that the last flame is gone nobody wrote down.
  if (out !== null)
    found.set(FLAME_OUT, { value: out / 60, u: trial.instruments.clock.resolution / 60 / Math.sqrt(12) })
  return found
}

/**
 * One trial beside its predicted burn: the same stove lit as it was lit, weighed by the same formulas. The high-power
 * phase only. `sets` of coefficients draw the bands; 0 for none. Null for a trial without that phase.
 * @throws BadInput for a fuel that cannot lie in the stove.
 */
export const predictedTrial = (
  trial: Trial,
  stove: Stove,
  sets: number,
  progress: Progress = silent,
): PredictedTrial | null => {
  const asked = setupOfTrial(stove, trial)
  if (asked === null) return null
  const endsAt = endOf(trial, asked)
  const index = trial.phases.indexOf(asked.phase)
  const readings = new Map(inputsOf(trial).map(({ id, value }) => [id, value]))
  const light = lighter(asked.setup)
  const figuresOf = (coefficients: typeof medianCoefficients) => {
    const outcome = light(coefficients)
    return outcome.kind === 'no burn'
      ? outcome
      : {
          kind: outcome.kind,
          figures: weighedBurn(asked, outcome.fired, coefficients, endsAt, readings, index),
        }
  }
  const median = figuresOf(medianCoefficients)
  const bands = sampled(
    sets,
    CLAIMS.map(({ key }) => key),
    (coefficients) => {
      const run = figuresOf(coefficients)
      return run.kind === 'no burn'
        ? { outcome: 'does not burn' satisfies Course, figures: {} }
        : { outcome: 'burns', figures: run.figures }
    },
    progress,
  )
  const measured = measuredOf(trial)
  const figures = CLAIMS.map((claim): PredictedFigure => {
    const predicted = median.kind === 'no burn' ? null : (median.figures[claim.key] ?? null)
    const band = bands?.figures[claim.key] ?? null
    const shown = measured.get(claim.key) ?? null
    return {
      claim,
      predicted,
      band,
      measured: shown?.value ?? null,
      u: shown?.u ?? null,
      residual: shown === null || predicted === null ? null : shown.value - predicted,
      side: shown === null || band === null ? null : sideOf(band, shown.value, shown.u),
    }
  })
  return {
    trial: trial.name,
    variant: variantOf(trial),
    stove: stove.name,
    noBurn: median.kind === 'no burn' ? median.noBurn.sentence : null,
    endsAt,
    burns: bands === null ? null : (bands.outcomes.burns ?? 0),
    figures,
    cautions: asked.cautions,
  }
}
