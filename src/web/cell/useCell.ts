import { useSyncExternalStore } from 'react'
import type { Cell } from './cell.ts'

/** The value of a cell, drawn anew when it changes. */
export const useCell = <T>(cell: Cell<T>): T => useSyncExternalStore(cell.subscribe, cell.get)
