import type { Shelf, Stove } from '#stove/model.ts'
import { MAKING_CAUTIONS } from '../caution.ts'
import { type CanSize, type CanToFind, canSizes, cansToFind } from './cans.ts'
import { type Cut, cutsOf } from './cuts.ts'
import { type DrillJob, drillSchedule } from './drilling.ts'
import { type Fastener, fastenersOf } from './fasteners.ts'
import { BURN_OFF_STEPS, DEBURR_STEPS } from './finishing.ts'
import type { Outlook } from './outlook.ts'
import { type BitSwap, type MissingBit, missingBits } from './swap.ts'
import { type TimeEstimate, timeEstimate } from './time.ts'
import { type TinToFind, tinToFind } from './tin.ts'
import { toolsFor } from './tools.ts'

/** A swap with what the stove so drilled promises. */
export interface SwapOutlook {
  readonly swap: BitSwap
  readonly outlook: Outlook
}

export interface ShopInput {
  /** Null: nobody said what there is. */
  readonly shelf: Shelf | null
  /** Of the stove as planned; null where none was worked out. */
  readonly outlook: Outlook | null
  /** What each swap of `bitSwaps` does. */
  readonly whatIf: readonly SwapOutlook[]
}

/** A bit to buy or borrow, or what to take instead. */
export interface BitToFind extends MissingBit {
  readonly instead: readonly SwapOutlook[]
}

/** All there is to find and to do before a stove can be put together. Plain data. */
export interface ShopList {
  readonly stove: string
  readonly cans: readonly CanToFind[]
  readonly sizes: readonly CanSize[]
  readonly tin: readonly TinToFind[]
  readonly fasteners: readonly Fastener[]
  readonly tools: readonly string[]
  /** Null where no shelf was given. */
  readonly missing: readonly BitToFind[] | null
  readonly outlook: Outlook | null
  readonly burnOff: readonly string[]
  readonly cuts: readonly Cut[]
  readonly drilling: readonly DrillJob[]
  readonly deburr: readonly string[]
  readonly time: TimeEstimate
  readonly cautions: readonly string[]
}

/** The shop list of a stove. Throws `BadInput` for a band that goes round no can. */
export const shopList = (stove: Stove, { shelf, outlook, whatIf }: ShopInput): ShopList => {
  const cans = cansToFind(stove, shelf)
  const drilling = drillSchedule(stove, shelf)
  const fasteners = fastenersOf(stove)
  const screws = fasteners.reduce((sum, { count }) => sum + count, 0)
  const piloted = drilling.find(({ purpose }) => purpose === 'pilot')?.count ?? 0
  return {
    stove: stove.name,
    cans,
    sizes: canSizes(cans),
    tin: tinToFind(stove),
    fasteners,
    tools: toolsFor(stove, drilling, screws),
    missing:
      shelf === null
        ? null
        : missingBits(stove, shelf).map((missing) => ({
            ...missing,
            instead: whatIf.filter(({ swap }) => swap.wanted.diameter === missing.diameter),
          })),
    outlook,
    burnOff: BURN_OFF_STEPS,
    cuts: cutsOf(stove),
    drilling,
    deburr: DEBURR_STEPS,
    time: timeEstimate(stove, { bits: drilling.length, piloted, screws }),
    cautions: MAKING_CAUTIONS,
  }
}
