import { useSyncExternalStore } from 'react'
import type { Cell } from './cell.ts'

/** The value of a cell, drawn anew when it changes. */
export const useCell = <T>(cell: Cell<T>): T => useSyncExternalStore(cell.subscribe, cell.get)

/**
 * A part of the value of a cell, drawn anew only when that part is another: a word, a number, or an object that is handed on.
 * What follows a hand that moves goes by this, so that a frame draws no more than it changes.
 */
export const useCellPart = <T, P>(cell: Cell<T>, part: (value: T) => P): P =>
  useSyncExternalStore(cell.subscribe, () => part(cell.get()))
