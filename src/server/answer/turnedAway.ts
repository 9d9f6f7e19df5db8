import { type Problem, problemSentence } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import type { NoAnswer, RefusalCode } from '#wire/answer.ts'
import { STATUS } from './status.ts'

/** A request that was not even looked at further, and why. */
export interface TurnedAway {
  readonly status: number
  readonly answer: NoAnswer
  readonly sentence: string
  /** Header fields that go with the status. */
  readonly fields?: Readonly<Record<string, string>>
}

/** What is wrong, with what the guest said made fit to be shown. */
export const guestProblem = (
  code: string,
  field: string,
  value: string | null,
  allowed: string,
  fix: string,
): Problem => ({ code: `guest.${code}`, field, value: shown(value ?? undefined), allowed, fix })

export const turnAway = (
  code: RefusalCode,
  problem: Problem,
  status: number = STATUS[code],
  fields: Readonly<Record<string, string>> = {},
): TurnedAway => {
  const sentence = problemSentence(problem)
  return { status, answer: { ok: false, refusal: { code, sentence }, problems: [problem] }, sentence, fields }
}
