import { randomStream } from '#basis/random.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { planDraught } from '#science/draft/build.ts'
import { fuelOf } from '#science/fuel/charge.ts'
import { createSteadyModel } from '#science/steady/model.ts'
import { predictSteady } from '#science/steady/predict.ts'
import { randomCase } from './randomStove.ts'
import { notFinite } from './steady/prediction.ts'

/** The seed of the published figures. */
export const CAMPAIGN_SEED = 20240501

/** Reasons that a real stove can have. The others say that the solver gave up. */
export const PHYSICAL_REASONS: ReadonlySet<string> = new Set([
  'no fuel can',
  'no floor under the fuel',
  'no air to the fuel',
  'no way out',
  'front out',
  'draws its own smoke',
  'does not glow',
])

export interface Campaign {
  readonly stoves: number
  /** Stoves that burn wherever the front was tried. */
  readonly through: number
  /** Stoves that are lit and burn until the front sinks below their lowest hole, or until the draught fails. */
  readonly partWay: number
  /** How many stoves gave each reason, and the number of the first few. */
  readonly reasons: ReadonlyMap<string, { count: number; first: number[] }>
  /** Worst of all accepted states [1]. */
  readonly massResidual: number
  readonly energyResidual: number
  /** How many accepted states took so many rounds of the coupled iteration. */
  readonly rounds: readonly number[]
  /** Numbers in any prediction that are none, as stove and path. */
  readonly notFinite: readonly string[]
}

interface Options {
  readonly seed?: number
  /** Called after each stove. */
  readonly progress?: (done: number) => void
  /** Number of the first stove; the others follow. */
  readonly from?: number
  /** One place of the front a stove, drawn with it, and no page of figures: for very many stoves. */
  readonly quick?: boolean
}

/** Front positions tried: just lit, two places on the way, nearly through. */
const POSITIONS = [0.05, 0.35, 0.65, 0.95] as const

/**
 * Predicts random stoves. A stove burns through when it burns with the front anywhere it was tried, and part of the
 * way when the front goes out below a place where it burns. Otherwise it gives the first reason met, a solver's before a
 * physical one. `predictSteady` runs on each of them as well, for the numbers that a person sees.
 */
export const runCampaign = (
  stoves: number,
  { seed = CAMPAIGN_SEED, progress, from = 0, quick = false }: Options = {},
): Campaign => {
  const stream = randomStream(seed)
  const reasons = new Map<string, { count: number; first: number[] }>()
  const rounds: number[] = []
  const bad: string[] = []
  let through = 0
  let partWay = 0
  let massResidual = 0
  let energyResidual = 0
  const note = (code: string, stove: number): void => {
    const entry = reasons.get(code) ?? { count: 0, first: [] }
    entry.count++
    if (entry.first.length < 8) entry.first.push(stove)
    reasons.set(code, entry)
  }

  for (let i = from; i < from + stoves; i++) {
    const { stove, moisture, site } = randomCase(stream.fork(i))
    const fuel = fuelOf(stove, moisture)
    const outcome = planDraught(stove)
    if (!fuel.ok) note(fuel.problems[0]?.code ?? 'fuel', i)
    else if (!outcome.ok) note(outcome.reason.code, i)
    else {
      const model = createSteadyModel({
        plan: outcome.plan,
        fuel: fuel.value,
        site,
        coefficients: medianCoefficients,
        burntOff: true,
      })
      const ends: string[] = []
      for (const position of quick ? [stream.fork(i).fork('front').uniform()] : POSITIONS) {
        const found = model.solve(position)
        ends.push(found.ok ? 'burns' : found.failure.code)
        if (found.ok) {
          rounds[found.state.iterations] = (rounds[found.state.iterations] ?? 0) + 1
          if (quick && !Number.isFinite(found.state.primaryAir + found.state.flameHeat))
            bad.push(`stove ${i}`)
          massResidual = Math.max(massResidual, found.state.massResidual)
          energyResidual = Math.max(energyResidual, Math.abs(found.state.energyResidual))
        }
      }
      const reasonsMet = ends.filter((end) => end !== 'burns')
      const givenUp = reasonsMet.find((code) => !PHYSICAL_REASONS.has(code))
      if (givenUp !== undefined) note(givenUp, i)
      else if (reasonsMet.length === 0) through++
      else if (ends[0] === 'burns') partWay++
      else note(ends[0] as string, i)
      const prediction = quick ? null : predictSteady(stove, { site, moisture })
      if (prediction?.ok) bad.push(...notFinite(prediction.value).map((path) => `stove ${i}${path}`))
    }
    progress?.(i - from + 1)
  }
  return {
    stoves,
    through,
    partWay,
    reasons,
    massResidual,
    energyResidual,
    rounds: Array.from(rounds, (count) => count ?? 0),
    notFinite: bad,
  }
}
