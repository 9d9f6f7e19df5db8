import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { inputsOf } from '#proof/metrics/inputs.ts'
import type { PredictedTrial } from '#proof/predicted/model.ts'
import { predictedTrial } from '#proof/predicted/predict.ts'
import { binomialTail, claimResiduals } from '#proof/predicted/residuals.ts'
import { setupOfTrial } from '#proof/predicted/setup.ts'
import { weighedBurn } from '#proof/predicted/weighed.ts'
import type { Trial } from '#proof/trial/model.ts'
import { readTrialValue } from '#proof/trial/read.ts'
import scipy from '#reference/statisticsScipy.json' with { type: 'json' }
import { lighter } from '#science/answers/burn/fired.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { readStove } from '#stove/document/read.ts'
import { seriesStove, seriesTexts, seriesTrials } from '../compare/seriesTrials.ts'

const first = seriesTrials[1] as Trial
const fileText = seriesTexts['burn-02.trial.json'] as string
const changed = (change: (file: Record<string, never>) => void): Trial => {
  const file = JSON.parse(fileText)
  change(file)
  return orThrow(readTrialValue(file as JsonValue)).trial
}
const stove = seriesStove(first)
const figure = (of: PredictedTrial | null, key: string) => of?.figures.find(({ claim }) => claim.key === key)

describe('a trial beside its predicted burn', () => {
  const beside = predictedTrial(first, stove, 12)

  it('has every claim, with a band about the median and what was measured', () => {
    expect(beside).toMatchObject({ trial: 'Heron, burn 2', noBurn: null, endsAt: 'flame out' })
    for (const { predicted, band, measured, side } of beside?.figures ?? []) {
      expect(predicted).not.toBeNull()
      expect(band?.low).toBeLessThanOrEqual(band?.high as number)
      expect(measured).toBeGreaterThan(0)
      expect(['within', 'above', 'below']).toContain(side)
    }
  })

  it('what the model itself would weigh leaves no residual', () => {
    const asked = setupOfTrial(stove, first)
    if (asked === null) throw new Error('no phase')
    const outcome = lighter(asked.setup)(medianCoefficients)
    if (outcome.kind === 'no burn') throw new Error(outcome.noBurn.sentence)
    const readings = new Map(inputsOf(first).map(({ id, value }) => [id, value]))
    const weighed = weighedBurn(asked, outcome.fired, medianCoefficients, 'flame out', readings, 0)
    for (const { claim, predicted } of beside?.figures ?? [])
      expect(predicted).toBeCloseTo(weighed[claim.key] as number, 9)
    // The bed is as heavy as it was weighed in: what is burnt over the phase is what lay there, but for what cannot burn.
    const fi = (readings.get('0.fi') as number) / 1000
    const { charge } = outcome.fired.firing
    expect(charge).toBeGreaterThan(fi)
    expect(charge).toBeLessThan(fi + 0.03)
  })

  it('the same stove lit twice is predicted the same', () => {
    expect(predictedTrial(first, stove, 12)).toEqual(beside)
  })

  it('no sets, no bands and no side', () => {
    const plain = predictedTrial(first, stove, 0)
    expect(plain?.figures.every(({ band, side }) => band === null && side === null)).toBe(true)
    expect(plain?.burns).toBeNull()
  })

  it('ends as the trial ended', () => {
    const boil = changed((file) => {
      const [phase] = file.phases as unknown as [{ to: { at: string }; boil: string }]
      phase.to.at = phase.boil
    })
    const long = changed((file) => {
      ;(file.events as unknown as { event: string }[]).splice(4, 1)
    })
    expect(predictedTrial(boil, stove, 0)?.endsAt).toBe('boil')
    expect(predictedTrial(long, stove, 0)?.endsAt).toBe('as long')
    expect(figure(predictedTrial(long, stove, 0), 'flameOut')?.measured).toBeNull()
  })

  it('says what it had to take for granted', () => {
    const windy = changed((file) => {
      ;(file.weather as unknown as { wind: string }).wind = '1 m/s'
    })
    const light = changed((file) => {
      const [phase] = file.phases as unknown as [{ from: { fuel: string } }]
      phase.from.fuel = '60 g'
    })
    expect(predictedTrial(windy, stove, 0)?.cautions.join(' ')).toContain('at the front mark')
    expect(predictedTrial(light, stove, 0)?.cautions.join(' ')).toContain('the prediction keeps to the level')
  })

  it('a stove that the model cannot light says so', () => {
    const redshank = orThrow(
      readStove(readFileSync(new URL('../../../examples/redshank.stove.json', import.meta.url), 'utf8')),
    )
    const shut = changed((file) => {
      ;(file.events as unknown as object[]).push({
        id: 'damper-1',
        at: '2032-01-10T09:27:00Z',
        event: 'damper to',
        turned: '15 deg',
      })
    })
    expect(predictedTrial(shut, stove, 0)?.cautions.join(' ')).toContain(
      'a damper that the stove file does not have',
    )
    const out = predictedTrial(shut, redshank, 0)
    expect(out?.noBurn).toMatch(/\.$/)
    expect(out?.figures.every(({ predicted }) => predicted === null)).toBe(true)
  })

  it('a trial without a high-power phase is not predicted', () => {
    const simmer = changed((file) => {
      const [phase] = file.phases as unknown as [{ phase: string }]
      phase.phase = 'simmer'
    })
    expect(predictedTrial(simmer, stove, 0)).toBeNull()
  })
})

describe('over all trials', () => {
  /** A trial whose time to boil stands so against its prediction. */
  const made = (variant: string, ratio: number, side: 'within' | 'above' | 'below'): PredictedTrial => ({
    trial: 'x',
    variant,
    stove: 'x',
    noBurn: null,
    endsAt: 'boil',
    burns: 1,
    cautions: [],
    figures: [
      {
        claim: {
          key: 'timeToBoil',
          unit: 'min',
          name: 'time to boil',
          lessWord: 'shorter',
          moreWord: 'longer',
        },
        predicted: 10,
        band: { low: 8, median: 10, high: 12, share: 1 },
        measured: 10 * ratio,
        u: 0.01,
        residual: 10 * ratio - 10,
        side,
      },
    ],
  })
  const claim = (trials: readonly PredictedTrial[]) => {
    const found = claimResiduals(trials).find((one) => one.claim.key === 'timeToBoil')
    if (found === undefined) throw new Error('no claim')
    return found
  }

  it('outside to one side more often than chance: wrong, with numbers', () => {
    const found = claim([0.7, 0.72, 0.68, 0.7].map((ratio) => made('A', ratio, 'below')))
    expect(found).toMatchObject({ verdict: 'wrong', outside: 4, banded: 4 })
    // 0.1⁴; and by hand: mean of ln 0.6998, spread 0.0237, t(3) = 3.182: 0.674 to 0.727.
    expect(found.chance).toBeCloseTo(1e-4, 10)
    expect(found.sentence).toBe(
      'Time to boil: the model is wrong for you. Over 4 burns yours is 30 % shorter (27 to 33 %) than predicted, and that is beyond the band: 4 of 4 burns lie outside the 5 to 95 % band.',
    )
  })

  it.each([
    ['too sure', [1.4, 0.6, 1.5, 0.65], ['above', 'below', 'above', 'below']],
    ['leans', [0.9, 0.92, 0.91, 0.9], ['within', 'within', 'within', 'within']],
    ['holds', [0.95, 1.04, 1.01, 0.98], ['within', 'within', 'within', 'within']],
    ['few', [0.7, 0.7], ['below', 'below']],
  ] as const)('%s', (verdict, ratios, sides) => {
    expect(claim(ratios.map((ratio, i) => made('A', ratio, sides[i] as 'within'))).verdict).toBe(verdict)
  })

  it('four stoves and more: each counts once', () => {
    const found = claim(
      ['A', 'A', 'A', 'B', 'C', 'D'].map((variant, i) => made(variant, 0.8 + 0.02 * i, 'within')),
    )
    expect(found.over).toBe('stoves')
    expect(found.bias?.df).toBe(3)
  })

  // Source: scipy.stats.binom, generators/statistics_scipy.py.
  it('chance of so many outside', () => {
    for (const [least, all, p, tail] of scipy.binomialTail as [number, number, number, number][])
      expect(Math.abs(binomialTail(least, all, p) / tail - 1)).toBeLessThan(1e-11)
  })

  it('of the series: claims with numbers in them, and none of smoke or carbon monoxide', () => {
    const some = seriesTrials
      .slice(0, 6)
      .flatMap((trial) => predictedTrial(trial, seriesStove(trial), 6) ?? [])
    const claims = claimResiduals(some)
    expect(claims.length).toBe(9)
    for (const { sentence, residuals } of claims) {
      expect(residuals.length).toBeGreaterThan(3)
      expect(sentence).toMatch(/\d/)
      expect(sentence).not.toMatch(/NaN|null|undefined|smoke|monoxide|tier/i)
    }
  })
})
