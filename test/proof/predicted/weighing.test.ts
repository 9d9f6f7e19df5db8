import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { trialCautions } from '#proof/metrics/cautions.ts'
import { metricsOf } from '#proof/metrics/worked.ts'
import { predictedTrial } from '#proof/predicted/predict.ts'
import { setupOfTrial } from '#proof/predicted/setup.ts'
import type { Trial } from '#proof/trial/model.ts'
import { readTrialValue } from '#proof/trial/read.ts'
import type { TrialFile } from '#proof/trial/schema.ts'
import { lighter } from '#science/answers/burn/fired.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { seriesStove, seriesTexts, seriesTrials } from '../compare/seriesTrials.ts'

const stove = seriesStove(seriesTrials[1] as Trial)

/** Burn 2 of the series, weighed another way: 124 g went in, 115 g were left when the pot went on. */
const weighed = (change: (file: TrialFile) => void): Trial => {
  const file = JSON.parse(seriesTexts['burn-02.trial.json'] as string) as TrialFile
  delete file.fuel.weighed
  delete file.kindling?.weighed
  change(file)
  return orThrow(readTrialValue(JSON.parse(JSON.stringify(file)) as JsonValue)).trial
}
const start = ({ phases: [phase] }: TrialFile) => (phase as NonNullable<typeof phase>).from

/** What lies in the can when it is lit, and what burns until the pot goes on [g]. */
const bedOf = (trial: Trial): { readonly filled: number; readonly gone: number } => {
  const asked = setupOfTrial(stove, trial)
  const outcome = asked === null ? null : lighter(asked.setup)(medianCoefficients)
  if (asked === null || outcome === null || outcome.kind === 'no burn') throw new Error('It does not burn')
  const { firing, burn } = outcome.fired
  const gone = burn.steps
    .filter(({ phase, time }) => phase !== 'char' && time < asked.phase.from.at)
    .reduce(
      (sum, { fuelRate, duration, time }) => sum + fuelRate * Math.min(duration, asked.phase.from.at - time),
      0,
    )
  return { filled: 1000 * firing.charge, gone: 1000 * gone }
}
const cautions = (trial: Trial): string => (predictedTrial(trial, stove, 0)?.cautions ?? []).join(' ')
const predicted = (trial: Trial, key: string): number =>
  predictedTrial(trial, stove, 0)?.figures.find(({ claim }) => claim.key === key)?.predicted as number

describe('the bed of the prediction is as heavy as what was weighed', () => {
  it('weighed before lighting: so much lies in the can, and no more', () => {
    const trial = weighed((file) => {
      file.fuel.weighed = 'before lighting'
      start(file).fuel = '124 g'
    })
    expect(bedOf(trial).filled).toBeCloseTo(124, 6)
    expect(cautions(trial)).not.toContain('weighed')
  })

  it('weighed as the phase began: what burnt until then lies on top of it', () => {
    const trial = weighed((file) => {
      file.fuel.weighed = 'at the start'
    })
    const { filled, gone } = bedOf(trial)
    expect(gone).toBeGreaterThan(8)
    expect(filled - gone).toBeCloseTo(115, 0)
    expect(cautions(trial)).not.toContain('weighed')
  })

  it('kindling that was weighed with the fuel is none of the bed, and counts as fuel on both sides', () => {
    const together = (weight: string | null) =>
      weighed((file) => {
        file.fuel.weighed = 'before lighting'
        file.kindling = { what: 'shavings', weighed: 'with the fuel', ...(weight === null ? {} : { weight }) }
        start(file).fuel = '124 g'
      })
    const trial = together('6 g')
    expect(bedOf(trial).filled).toBeCloseTo(118, 6)
    expect(trialCautions(trial, metricsOf(trial)).join(' ')).toContain('counts as fuel burnt')
    // Six grams of dry fuel less, out of a bed of 118 g, were they not counted: some 5 % of what burns.
    const apart = weighed((file) => {
      file.fuel.weighed = 'before lighting'
      start(file).fuel = '118 g'
    })
    expect(bedOf(apart).filled).toBeCloseTo(118, 6)
    expect(predicted(trial, 'burningRate') / predicted(apart, 'burningRate')).toBeGreaterThan(1.03)
    expect(cautions(together(null))).toContain('nobody noted how heavy it was')
  })

  it('not told: taken as it is asked for, and said with what would be otherwise', () => {
    const trial = weighed(() => undefined)
    expect(bedOf(trial).filled).toBeGreaterThan(120)
    expect(cautions(trial)).toMatch(/does not say when its fuel was weighed.* 1\d g that the model burns/)
  })

  it('not told, but the log has that weight before lighting, or after it', () => {
    const logged = (at: string) =>
      weighed((file) => {
        start(file).fuel = '124 g'
        file.masses = [...(file.masses ?? []), { id: 'fuel-1', at, of: 'fuel', mass: '124 g' }]
      })
    const [before, after] = [logged('2032-01-10T09:20:00Z'), logged('2032-01-10T09:27:30Z')]
    expect(before.lit).toBeGreaterThan(Date.parse('2032-01-10T09:20:00Z') / 1000)
    expect(bedOf(before).filled).toBeCloseTo(124, 6)
    expect(bedOf(after).filled).toBeGreaterThan(132)
    expect(cautions(before)).not.toContain('does not say')
    expect(cautions(after)).not.toContain('does not say')
  })

  it('a weight of before lighting is told with the metrics it moves', () => {
    const trial = weighed((file) => {
      file.fuel.weighed = 'before lighting'
    })
    expect(trialCautions(trial, metricsOf(trial)).join(' ')).toContain('read high')
  })
})
