import { isWhole } from '#stove/can/ends.ts'
import { type Fit, fitCans } from '#stove/fit/fit.ts'
import type { FitKind } from '#stove/fit/fitKind.ts'
import type { Can } from '#stove/model.ts'

/** How one can goes with another: what is said of the square where their row and column meet. */
export interface FitSquare {
  readonly inner: string
  readonly outer: string
  readonly fit: Fit
  /** The outer one is closed as it stands: the fit is meant with its top cut out. */
  readonly cutOpen: boolean
  readonly sentence: string
}

/** A word and a sign for each kind, so that no square speaks by colour alone. */
export const FIT_SIGNS: Readonly<Record<FitKind, { readonly sign: string; readonly word: string }>> = {
  'drops in': { sign: '⤓', word: 'drops in' },
  'slides in': { sign: '↓', word: 'slides in' },
  'snaps on the lip': { sign: '⤈', word: 'snaps' },
  'sits on the rim': { sign: '⊤', word: 'hangs or sits' },
  'goes over the outside': { sign: '∩', word: 'goes over' },
  'does not go': { sign: '·', word: 'does not go' },
}

/** A can that is closed at both ends takes nothing in until its top is cut out. */
const cutOpen = (can: Can): Can =>
  isWhole(can.top) && isWhole(can.bottom) ? { ...can, top: { kind: 'open' } } : can

/** Every can with every other, row by row: what goes in, then what it goes into. */
export const fitSquares = (cans: ReadonlyMap<string, Can>): readonly (readonly (FitSquare | null)[])[] => {
  const all = [...cans]
  return all.map(([inner, innerCan]) =>
    all.map(([outer, outerCan]) => {
      if (inner === outer) return null
      const opened = cutOpen(outerCan)
      const fit = fitCans(innerCan, opened, { innerName: inner, outerName: outer })
      const isCut = opened !== outerCan
      const sentence = isCut ? `With the top of ${outer} cut out: ${fit.sentence}` : fit.sentence
      return { inner, outer, fit, cutOpen: isCut, sentence }
    }),
  )
}
