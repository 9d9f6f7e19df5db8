import { orThrow } from '#basis/problem.ts'
import { type BurnFigures, boilAnswer, burnFigures } from '#science/answers/figures.ts'
import { type Firing, fire } from '#science/answers/run.ts'
import type { Burn } from '#science/burn/march.ts'
import type { Coefficients } from '#science/coefficients.ts'
import type { NoBurn } from '#science/steady/predict.ts'
import type { BurnSetup, DamperTurn } from './setup.ts'

/** The damper turned at a time that is known by now [s], [deg]. */
export interface TimedTurn {
  readonly at: number
  readonly turned: number
}

const isTimed = (turn: DamperTurn): turn is TimedTurn => turn.at !== 'boil'

/** One burn from lighting on, with one set of coefficients. */
export interface Fired {
  readonly firing: Firing
  readonly burn: Burn
  readonly figures: BurnFigures
  readonly turns: readonly TimedTurn[]
}

export type FiredOutcome =
  | { readonly kind: 'burnt'; readonly fired: Fired }
  | { readonly kind: 'no burn'; readonly noBurn: NoBurn }

/** What has to boil for `boil` to come [L]. */
export const LITRE = 1

/** A fire that went out before the whole top was alight never was one; null for any other. */
export const outWhileLit = ({ events }: Burn): NoBurn | null => {
  const out = events.find(({ kind }) => kind === 'front out')
  return out === undefined || events.some(({ kind }) => kind === 'whole bed alight')
    ? null
    : { code: out.kind, sentence: `It goes out while it is lit. ${out.sentence}` }
}

/**
 * Lays a stove out once and lights it as often as asked. A turn of the damper at the boil is timed by a first burn without
 * it, with the same coefficients: whoever cooks sees that pot boil, not the one of the median. What does not boil is not
 * turned down.
 * @throws BadInput for a fuel that is not known.
 */
export const lighter = (setup: BurnSetup): ((coefficients: Coefficients) => FiredOutcome) => {
  const { stove, site, moisture, burntOff, hot, turns, wish } = setup
  const layOut = (damper: readonly TimedTurn[]) =>
    orThrow(fire(stove, { site, moisture, burntOff, hot, damper: [...damper].sort((a, b) => a.at - b.at) }))
  const fixed = turns.filter(isTimed)
  const atBoil = turns.find(({ at }) => at === 'boil')
  const first = layOut(fixed)

  const light = (
    coefficients: Coefficients,
    outcome: typeof first,
    damper: readonly TimedTurn[],
  ): FiredOutcome => {
    if (outcome.kind === 'no burn') return { kind: 'no burn', noBurn: whichTurn(outcome.noBurn, damper) }
    const { firing } = outcome
    const burnt = firing.burn(coefficients)
    if (!burnt.ok) return { kind: 'no burn', noBurn: burnt.failure }
    const { burn } = burnt
    const noBurn = outWhileLit(burn)
    if (noBurn !== null) return { kind: 'no burn', noBurn }
    const figures = burnFigures(burn, firing, wish, site, coefficients)
    return { kind: 'burnt', fired: { firing, burn, figures, turns: damper } }
  }
  /** The stove alone would burn: it is the turn that shuts it. */
  const whichTurn = (noBurn: NoBurn, damper: readonly TimedTurn[]): NoBurn =>
    damper.length > 0 && layOut([]).kind === 'firing'
      ? { ...noBurn, sentence: `With the damper turned as asked: ${noBurn.sentence}` }
      : noBurn

  return (coefficients) => {
    const plain = light(coefficients, first, fixed)
    if (atBoil === undefined || plain.kind === 'no burn') return plain
    const { firing, burn } = plain.fired
    const { boilsAt } = boilAnswer(burn, firing, wish, LITRE, site, coefficients).cooked
    if (boilsAt === null) return plain
    const timed = [...fixed, { at: boilsAt, turned: atBoil.turned }]
    return light(coefficients, layOut(timed), timed)
  }
}
