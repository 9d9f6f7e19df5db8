import type { OpeningRef } from '#stove/moves/move.ts'
import { createCell, type OpenCell } from '../cell/cell.ts'

/** What of the stove is meant: opened to be changed, or only pointed at. */
export interface Selection {
  readonly opened: OpenCell<OpeningRef | null>
  readonly pointed: OpenCell<OpeningRef | null>
}

export const createSelection = (): Selection => ({
  opened: createCell<OpeningRef | null>(null),
  pointed: createCell<OpeningRef | null>(null),
})

export const sameRef = (a: OpeningRef | null, b: OpeningRef | null): boolean =>
  a === b || (a !== null && b !== null && a.part === b.part && a.opening === b.opening)
