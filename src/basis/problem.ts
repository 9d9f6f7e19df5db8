/**
 * What is wrong with an input, told so that a maker can mend it: which field, what it says, what
 * may stand there, and what to do. Thrown as `BadInput` where the user supplied the value, never
 * from deep inside a calculation.
 */
export interface Problem {
  /** A stable word for programs, e.g. `length.no-unit`. */
  readonly code: string
  /** Where: a path as written in the file, e.g. `parts.shell.openings.intake.hole.bit`. */
  readonly field: string
  /** What stood there, as text; empty where nothing did. */
  readonly value: string
  /** What may stand there. */
  readonly allowed: string
  /** What to do about it. */
  readonly fix: string
}

/** One sentence (or two) a maker understands. */
export const problemSentence = ({ field, value, allowed, fix }: Problem): string =>
  `${field}${value === '' ? ' is missing' : `: ${value} will not do`}; allowed is ${allowed}. ${fix}`

export class BadInput extends Error {
  readonly problems: readonly Problem[]
  constructor(problems: readonly Problem[]) {
    super(problems.map(problemSentence).join('\n'))
    this.name = 'BadInput'
    this.problems = problems
  }
}

/** A value, or the problems that kept it from being one. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** What was read, well. */
export const good = <T>(value: T): Outcome<T> => ({ ok: true, value })
/** What kept it from being read. */
export const bad = (...problems: Problem[]): Outcome<never> => ({ ok: false, problems })

/** Takes the value out, or throws its problems. */
export const orThrow = <T>(outcome: Outcome<T>): T => {
  if (outcome.ok) return outcome.value
  throw new BadInput(outcome.problems)
}
