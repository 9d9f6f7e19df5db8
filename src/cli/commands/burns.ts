import { BadInput } from '#basis/problem.ts'
import { cautionBlock } from '#compose/page/cautions.ts'
import { columns, page, wrap } from '#compose/page/text.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { type OfferedOrder, offeredOrder } from '#proof/compare/offeredOrder.ts'
import type { Environment } from '../environment.ts'
import { EXIT, type ExitCode } from '../exit.ts'

export interface BurnsOptions {
  readonly rounds: string
  readonly seed?: string
  readonly json?: boolean
}

/** Anything that is not digits fails where numbers are judged. */
const numberOf = (text: string): number => (/^\d{1,15}$/.test(text.trim()) ? Number(text) : Number.NaN)

const OPTIONS: Readonly<Record<string, string>> = { rounds: '--rounds', seed: '--seed', variants: 'variants' }

const offered = (variants: readonly string[], rounds: string, seed: string): OfferedOrder => {
  try {
    return offeredOrder(variants, numberOf(rounds), numberOf(seed))
  } catch (error) {
    if (!(error instanceof BadInput)) throw error
    const said: Readonly<Record<string, string>> = { rounds, seed }
    throw new BadInput(
      error.problems.map((one) => ({
        ...one,
        field: OPTIONS[one.field] ?? one.field,
        value: said[one.field] ?? one.value,
      })),
    )
  }
}

export const burns = (env: Environment, variants: readonly string[], options: BurnsOptions): ExitCode => {
  // The day's digits: another day, another lot, and whoever asks again on the same day gets the same one.
  const seed = options.seed ?? env.today().replaceAll('-', '')
  const order = offered(variants, options.rounds, seed)
  if (options.json === true) {
    env.out(
      `${JSON.stringify({ format: 'tinwright/order@1', ...order, cautions: MAKING_CAUTIONS }, null, 2)}\n`,
    )
    return EXIT.fine
  }
  env.out(
    page(
      wrap(
        `${order.burns.length} burns of ${order.variants.length} variants in ${order.rounds} ${order.rounds === 1 ? 'round' : 'rounds'}, in an order drawn by lot with seed ${order.seed}`,
        env.width,
      ),
      columns(
        [
          ['burn', 'round', 'variant'],
          ...order.burns.map(({ place, round, variant }) => [String(place), String(round), variant]),
        ],
        ['right', 'right', 'left'],
      ),
      order.advice.map((line) => wrap(line, env.width)).join('\n'),
      wrap(
        `The same seed gives the same order: --seed ${order.seed}. A seed of your own must be chosen before the order is seen.`,
        env.width,
      ),
      cautionBlock(env.width),
    ),
  )
  return EXIT.fine
}
