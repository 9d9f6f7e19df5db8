import { predictSteady } from '#science/steady/predict.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Finding } from '#stove/model.ts'
import type { StartChoice } from '#stove/start/choice.ts'
import { type SoundStart, soundStarts } from '#stove/start/ways.ts'

/** How a stove that was just started burns, as far as the model knows. */
export interface StartBurn {
  readonly burns: boolean
  /** Burns cleanly to the floor. */
  readonly clean: boolean
  /** [W], null where it does not burn */
  readonly firepower: number | null
  /** [s] */
  readonly duration: number | null
  /** What keeps it from burning clean; null: it does. */
  readonly trouble: string | null
}

export type Started =
  | {
      readonly kind: 'started'
      readonly file: StoveFile
      readonly start: SoundStart
      readonly findings: readonly Finding[]
      readonly burn: StartBurn
    }
  | { readonly kind: 'cannot'; readonly sentence: string }

const burnOf = (start: SoundStart): StartBurn => {
  const outcome = predictSteady(start.stove)
  const none = { burns: false, clean: false, firepower: null, duration: null }
  if (!outcome.ok) return { ...none, trouble: outcome.problems.map(({ fix }) => fix).join(' ') }
  if (outcome.value.kind === 'no burn') return { ...none, trouble: outcome.value.noBurn.sentence }
  const { prediction } = outcome.value
  const { firepower, duration } = prediction.woodGas
  const course = prediction.stops === null ? prediction.halfway.regime : 'goes out before the floor'
  const clean = course === 'clean'
  return {
    burns: prediction.stops === null,
    clean,
    firepower,
    duration,
    trouble: clean ? null : (prediction.stops?.sentence ?? `It is ${course}, as the model has it.`),
  }
}

const rank = ({ burns, clean }: StartBurn): number => (clean ? 0 : burns ? 1 : 2)

/** So many are burnt to find the best of them. */
const TRIED = 12

/**
 * A stove from two cans: of the ways that can be built, the first that burns clean; where none does, the one that comes
 * nearest, with what keeps it from that; where none can be built, why.
 */
export const startStove = (choice: StartChoice): Started => {
  const { sound, why } = soundStarts(choice)
  if (sound.length === 0)
    return {
      kind: 'cannot',
      sentence: `${choice.inner.name} in ${choice.outer.name} makes no stove that holds. ${why ?? ''}`.trim(),
    }
  let best: { readonly start: SoundStart; readonly burn: StartBurn } | null = null
  for (const start of sound.slice(0, TRIED)) {
    const burn = burnOf(start)
    if (best === null || rank(burn) < rank(best.burn)) best = { start, burn }
    if (burn.clean) break
  }
  const { start, burn } = best as { readonly start: SoundStart; readonly burn: StartBurn }
  return { kind: 'started', file: start.file, start, findings: start.findings, burn }
}
