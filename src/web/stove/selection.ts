import type { OpeningRef } from '#stove/moves/move.ts'
import { type Cell, createCell, type OpenCell } from '../cell/cell.ts'

/** Which picture of the stove something was opened in: the large one, or the one below. */
export type Where = 'large' | 'below'

/** What of the stove is meant: opened to be changed, or only pointed at. */
export interface Selection {
  readonly opened: Cell<OpeningRef | null>
  /** Where its panel stands, and on which side of the picture. */
  readonly where: Cell<{ readonly picture: Where; readonly side: 'left' | 'right' }>
  readonly pointed: OpenCell<OpeningRef | null>
  readonly open: (ref: OpeningRef | null, picture?: Where, side?: 'left' | 'right') => void
}

export const createSelection = (first: OpeningRef | null): Selection => {
  const opened = createCell(first)
  const where = createCell<{ readonly picture: Where; readonly side: 'left' | 'right' }>({
    picture: 'large',
    side: 'right',
  })
  return {
    opened,
    where,
    pointed: createCell<OpeningRef | null>(null),
    open: (ref, picture = 'large', side = 'right') => {
      where.set({ picture, side })
      opened.set(ref)
    },
  }
}

export const sameRef = (a: OpeningRef | null, b: OpeningRef | null): boolean =>
  a === b || (a !== null && b !== null && a.part === b.part && a.opening === b.opening)

let wanted: { readonly document: string; readonly ref: OpeningRef } | null = null

/** On another page somebody wants to change an opening: it is open when the stove comes to the bench. */
export const openWhenThere = (document: string, ref: OpeningRef): void => {
  wanted = { document, ref }
}

/** What was wanted of a stove, or null. */
export const wantedOf = (document: string): OpeningRef | null =>
  wanted?.document === document ? wanted.ref : null

/** It has been opened. */
export const forgetWanted = (): void => {
  wanted = null
}
