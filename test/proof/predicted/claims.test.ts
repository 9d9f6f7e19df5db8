import { describe, expect, it } from 'vitest'
import { randomStream } from '#basis/random.ts'
import { inputsOf } from '#proof/metrics/inputs.ts'
import { CLAIMS } from '#proof/predicted/claims.ts'
import type { ClaimResiduals, PredictedTrial } from '#proof/predicted/model.ts'
import { claimResiduals } from '#proof/predicted/residuals.ts'
import { setupOfTrial } from '#proof/predicted/setup.ts'
import { bandEdges, sideOf } from '#proof/predicted/side.ts'
import { weighedBurn } from '#proof/predicted/weighed.ts'
import type { Trial } from '#proof/trial/model.ts'
import { lighter } from '#science/answers/burn/fired.ts'
import { sampled, silent } from '#science/answers/sampled.ts'
import type { Band } from '#science/bands/bands.ts'
import { normalQuantile } from '#science/bands/spread.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { seriesStove, seriesTrials } from '../compare/seriesTrials.ts'

type Figures = Readonly<Record<string, number>>

/** A stove of the series as the model has it: its median, its bands, and as many makers for whom the model is right. */
const modelled = () => {
  const trial = seriesTrials[1] as Trial
  const asked = setupOfTrial(seriesStove(trial), trial)
  if (asked === null) throw new Error('No phase')
  const light = lighter(asked.setup)
  const readings = new Map(inputsOf(trial).map(({ id, value }) => [id, value]))
  const makers: Figures[] = []
  const figuresOf = (coefficients: typeof medianCoefficients): Figures => {
    const outcome = light(coefficients)
    return outcome.kind === 'no burn'
      ? {}
      : weighedBurn(asked, outcome.fired, coefficients, 'flame out', readings, 0)
  }
  const median = figuresOf(medianCoefficients)
  const bands = sampled(
    160,
    CLAIMS.map(({ key }) => key),
    (coefficients) => {
      const figures = figuresOf(coefficients)
      makers.push(figures)
      return { outcome: 'burns', figures }
    },
    silent,
  )
  if (bands === null) throw new Error('No bands')
  return { median, bands: bands.figures, makers }
}

const { median, bands, makers } = modelled()
const stream = randomStream(1_911)
const normal = (): number => normalQuantile(Math.min(Math.max(stream.uniform(), 1e-12), 1 - 1e-12))

/** How burns of one stove differ, and how well one is measured, as shares. */
const SPREAD = 0.05
const DOUBT = 0.01

/** Invented burns of a maker to whom this is true, held against the model. */
const burnsOf = (truth: Figures, burns: number): readonly PredictedTrial[] =>
  Array.from({ length: burns }, (_, i) => ({
    trial: `burn ${i + 1}`,
    variant: 'A',
    stove: 'invented',
    noBurn: null,
    endsAt: 'flame out',
    burns: 1,
    cautions: [],
    figures: CLAIMS.map((claim) => {
      const measured = (truth[claim.key] as number) * Math.exp(SPREAD * normal())
      const [predicted, band] = [median[claim.key] as number, bands[claim.key] as Band]
      const u = DOUBT * measured
      return {
        claim,
        predicted,
        band,
        measured,
        u,
        residual: measured - predicted,
        side: sideOf(band, measured, u),
      }
    }),
  }))

const inside = (key: string, value: number): boolean => {
  const { low, high } = bandEdges(bands[key] as Band, DOUBT * value)
  return value >= low && value <= high
}
const of = (claims: readonly ClaimResiduals[], key: string): ClaimResiduals => {
  const found = claims.find(({ claim }) => claim.key === key)
  if (found === undefined) throw new Error(`No ${key}`)
  return found
}

describe('a bias that was planted is found, where it was planted', () => {
  it.each(CLAIMS.map(({ key }) => key))('%s, 15 % beyond the band', (key) => {
    const { high } = bands[key] as Band
    const claims = claimResiduals(burnsOf({ ...median, [key]: 1.15 * high }, 8))
    const found = of(claims, key)
    expect(found.verdict).toBe('wrong')
    // What was planted lies in the interval that is told; the sentence tells it in per cent.
    const planted = Math.log((1.15 * high) / (median[key] as number))
    expect(found.bias?.low).toBeLessThan(planted)
    expect(found.bias?.high).toBeGreaterThan(planted)
    const percent = Math.round(100 * Math.expm1(found.bias?.value as number))
    expect(found.sentence).toContain(
      `wrong for you. Over 8 burns yours is ${percent} % ${found.claim.moreWord}`,
    )
    for (const other of claims) if (other.claim.key !== key) expect(other.verdict).not.toBe('wrong')
  })

  it('half as far as the band reaches: it leans, and is not called wrong', () => {
    const { high } = bands.timeToBoil as Band
    const half = ((median.timeToBoil as number) + high) / 2
    const found = of(claimResiduals(burnsOf({ ...median, timeToBoil: half }, 12)), 'timeToBoil')
    expect(found.verdict).toBe('leans')
    expect(found.sentence).toContain('not beyond the band for certain')
  })
})

describe('where the model is right', () => {
  /** Shares of the claims over so many makers, each with its own truth out of the model's. */
  const counted = (burns: number) => {
    let [called, false_, all] = [0, 0, 0]
    for (const truth of makers)
      for (const { claim, verdict } of claimResiduals(burnsOf(truth, burns))) {
        all++
        if (verdict !== 'wrong') continue
        called++
        if (inside(claim.key, truth[claim.key] as number)) false_++
      }
    return { called: called / all, false: false_ / all }
  }

  it.each([3, 6, 20])(
    '%i burns: a claim whose truth lies in the band is hardly ever called wrong',
    (burns) => {
      const share = counted(burns)
      // One in forty would be at the edge itself; most truths lie far inside.
      expect(share.false).toBeLessThan(0.01)
      // A band of nine tenths leaves out one maker in ten: no more are called wrong, and with many burns about as many.
      expect(share.called).toBeLessThan(0.12)
      if (burns === 20) expect(share.called).toBeGreaterThan(0.03)
    },
  )

  it('the median itself is never called wrong, in 200 makers of four burns', () => {
    for (let n = 0; n < 200; n++)
      for (const { verdict } of claimResiduals(burnsOf(median, 4))) expect(verdict).not.toBe('wrong')
  })
})
