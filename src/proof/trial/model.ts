import type { EventRead, WeighingRead } from './logSchema.ts'
import type { PhaseRead, TrialRead } from './schema.ts'

/** What happened, with its time after lighting. */
export interface TrialEvent extends Omit<EventRead, 'at'> {
  /** Universal time [s]. */
  readonly at: number
  /** After lighting [s]; null where nobody noted when it was lit. */
  readonly after: number | null
}

export interface TrialWeighing extends Omit<WeighingRead, 'at'> {
  readonly at: number
  readonly after: number | null
}

export interface TrialPhase extends Omit<PhaseRead, 'boil' | 'char'> {
  /** Net char made in the phase [kg]; null: not weighed. */
  readonly char: number | null
  /** After lighting [s]; null: it did not boil, or nobody saw. */
  readonly boil: number | null
}

/** One real burn that was measured. SI units. */
export interface Trial
  extends Omit<TrialRead, 'events' | 'masses' | 'phases' | 'lit' | 'format' | '$schema'> {
  readonly block: string
  /** Universal time of lighting [s]; null where nobody noted it. */
  readonly lit: number | null
  readonly phases: readonly TrialPhase[]
  /** In order of time; what was withdrawn is left out. */
  readonly events: readonly TrialEvent[]
  readonly masses: readonly TrialWeighing[]
}

/** What its sisters are compared by: the variant, or the stove where none is told. */
export const variantOf = ({ stove }: Trial): string => stove.variant ?? stove.name
