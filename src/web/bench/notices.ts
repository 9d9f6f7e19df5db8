import { type Cell, createCell } from '../cell/cell.ts'

export interface Notice {
  readonly id: number
  readonly sentence: string
  /** One thing to do about it. */
  readonly action?: { readonly name: string; readonly do: () => void }
}

/** So many stand there at once; older ones give way. */
const MOST = 3

const cell = createCell<readonly Notice[]>([])
let last = 0

export const notices: Cell<readonly Notice[]> = cell

/**
 * Says a sentence at the foot of the page, until it is put away. What was to be done about an older one is of the past: its
 * “Undo” would take back this one.
 */
export const say = (sentence: string, action?: Notice['action']): void => {
  last += 1
  const notice: Notice = { id: last, sentence, ...(action === undefined ? {} : { action }) }
  const stays = (one: Notice): boolean =>
    one.sentence !== sentence && (action === undefined || one.action?.name !== action.name)
  cell.update((all) => [...all.filter(stays), notice].slice(-MOST))
}

export const putAway = (id: number): void => cell.update((all) => all.filter((one) => one.id !== id))
