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

/** Says a sentence at the foot of the page, until it is put away. */
export const say = (sentence: string, action?: Notice['action']): void => {
  last += 1
  const notice: Notice = { id: last, sentence, ...(action === undefined ? {} : { action }) }
  cell.update((all) => [...all.filter((one) => one.sentence !== sentence), notice].slice(-MOST))
}

export const putAway = (id: number): void => cell.update((all) => all.filter((one) => one.id !== id))

/** Done and said: nothing older is of interest. */
export const putAllAway = (): void => cell.set([])
