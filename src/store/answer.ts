import type { Refusal, RefusalCode } from '#wire/answer.ts'

export { type Answer, given, type Refusal, type RefusalCode } from '#wire/answer.ts'

/** Carries a refusal out of the middle of a transaction, which it undoes. Never leaves this folder. */
export class Refused extends Error {
  readonly refusal: Refusal
  constructor(refusal: Refusal) {
    super(refusal.sentence)
    this.name = 'Refused'
    this.refusal = refusal
  }
}

export const refuse = (code: RefusalCode, sentence: string): never => {
  throw new Refused({ code, sentence })
}
