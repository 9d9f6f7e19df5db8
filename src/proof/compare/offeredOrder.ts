import { BadInput } from '#basis/problem.ts'
import { randomStream } from '#basis/random.ts'
import { burnOrder, type PlannedBurn } from '#proof/statistics/burnOrder.ts'
import { studentizedRangeQuantile } from '#proof/statistics/special/studentizedRange.ts'

/** An order to burn in, drawn by lot before anything is lit. */
export interface OfferedOrder {
  readonly seed: number
  readonly variants: readonly string[]
  readonly rounds: number
  readonly burns: readonly PlannedBurn[]
  /**
   * What so many burns can show: how far apart two variants must be, in spreads between burns of one stove, before the
   * interval of their difference leaves nothing out. Null for one round.
   */
  readonly reach: number | null
  /** How to burn it; sentences. */
  readonly advice: readonly string[]
}

const MOST_VARIANTS = 26
const MOST_ROUNDS = 50
/** Spread between burns of one stove that a careful maker may hope for; a judgement [1]. */
const CAREFUL = 0.05

const refuse = (code: string, field: string, value: string, allowed: string, fix: string): never => {
  throw new BadInput([{ code, field, value, allowed, fix }])
}

/** Half the width of an interval between two variants in complete rounds, in spreads; Tukey's [1]. */
const reachOf = (variants: number, rounds: number): number | null =>
  rounds < 2
    ? null
    : studentizedRangeQuantile(0.95, variants, (variants - 1) * (rounds - 1)) / Math.sqrt(rounds)

const percent = (share: number): string => `${Math.round(100 * share)} %`

const reachSentence = (variants: number, rounds: number): string => {
  const reach = reachOf(variants, rounds)
  const said = (of: number): string => percent(CAREFUL * of)
  if (reach === null) return 'One round says nothing of luck: burn three at the least, better five.'
  const next = reachOf(variants, rounds + 2) as number
  return `If burns of one stove spread by ${percent(CAREFUL)}, ${rounds} rounds tell a difference to about ${said(reach)} either way, ${rounds + 2} rounds to ${said(next)}: one that is just so large shows every other time.`
}

/**
 * A randomised order offered before testing: rounds, each with every variant once. The same seed gives the same order.
 * @throws BadInput for fewer than two or more than 26 variants, two of one name, or rounds or a seed out of range.
 */
export const offeredOrder = (variants: readonly string[], rounds: number, seed: number): OfferedOrder => {
  const names = variants.map((one) => one.trim())
  const twice = names.find((one, i) => names.indexOf(one) !== i)
  if (names.length < 2 || names.length > MOST_VARIANTS)
    refuse(
      'order.variants',
      'variants',
      String(names.length),
      `2 to ${MOST_VARIANTS} variants`,
      'Name what you want to compare, the stove as it is among them.',
    )
  if (names.some((one) => one === ''))
    refuse('order.name', 'variants', 'an empty name', 'a name for each', 'Give every variant a name.')
  if (twice !== undefined)
    refuse('order.twice', 'variants', twice, 'every variant once', 'Rounds bring the repeats; take one out.')
  if (!Number.isInteger(rounds) || rounds < 1 || rounds > MOST_ROUNDS)
    refuse(
      'order.rounds',
      'rounds',
      String(rounds),
      `a whole number from 1 to ${MOST_ROUNDS}`,
      'Three are the least that say something; five are better.',
    )
  if (!Number.isSafeInteger(seed) || seed < 0)
    refuse('order.seed', 'seed', String(seed), 'a whole number from 0', 'Any will do; note it.')
  return {
    seed,
    variants: names,
    rounds,
    burns: burnOrder(names, rounds, randomStream(seed)),
    reach: reachOf(names.length, rounds),
    advice: [
      'Burn in this order and leave none out: one round on one day, with fuel from one sack, if you can.',
      'Let each stove go cold, and weigh in the same fuel and the same water each time.',
      'Note the place in the order in every trial, and finish the round you began.',
      reachSentence(names.length, rounds),
    ],
  }
}
