import type { Trial, TrialPhase } from '#proof/trial/model.ts'

/** What the weight of the fuel at the start of a phase stands for. */
export interface FuelWeighing {
  /** Weighed before it was lit, so that what burnt until the phase began is in it. */
  readonly beforeLighting: boolean
  /** Kindling in that weight; it burns on top and is none of the bed [kg]. */
  readonly kindling: number
  /** What had to be taken for granted; sentences. */
  readonly said: readonly string[]
}

/** Weighed so long after the start of a phase it is no longer its start; a judgement, as the bench takes it from a log [s]. */
const NEAR = 90

/** What the log says where the file does not: the last weighing of fuel up to the start. Null: nothing of that weight. */
const fromLog = ({ masses }: Trial, { from }: TrialPhase): FuelWeighing['beforeLighting'] | null => {
  const last = masses.findLast(({ of, after }) => of === 'fuel' && after !== null && after <= from.at + NEAR)
  return last === undefined || last.after === null || last.mass !== from.fuel ? null : last.after <= 0
}

const grams = (mass: number): string => `${Math.round(mass * 1000)} g`

/**
 * When the fuel was weighed, and what lay on the scale with it: as the trial says, else as its log shows, else at the start
 * of the phase, which is what the weight is asked for. `burnt` is what the model burns until then [kg].
 */
export const fuelWeighing = (trial: Trial, phase: TrialPhase, burnt: number): FuelWeighing => {
  const { fuel, kindling } = trial
  // A later phase begins with what the one before it left.
  if (trial.phases[0] !== phase) return { beforeLighting: false, kindling: 0, said: [] }
  const said: string[] = []
  const logged = fromLog(trial, phase)
  const beforeLighting = fuel.weighed === undefined ? logged === true : fuel.weighed === 'before lighting'
  if (fuel.weighed === undefined && logged === null && Math.round(burnt * 1000) > 0)
    said.push(
      `The trial does not say when its fuel was weighed: it is taken for what was left when the phase began, and ${grams(burnt)} that the model burns until then lie on top. Weighed before lighting, the bed is so much lighter: say which.`,
    )
  const inside = beforeLighting && kindling?.weighed === 'with the fuel'
  if (inside && kindling.weight === undefined)
    said.push(
      'The kindling is in the weight of the fuel, and nobody noted how heavy it was: all of it is taken for fuel in the can.',
    )
  return { beforeLighting, kindling: inside ? (kindling.weight ?? 0) : 0, said }
}
