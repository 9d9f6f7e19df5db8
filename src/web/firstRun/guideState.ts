import { type Cell, createCell } from '../cell/cell.ts'

const KEY = 'tinwright.guide'
const DONE = 'done'

const read = (): string | null => {
  try {
    return localStorage.getItem(KEY)
  } catch {
    // Where nothing is kept it would come again at every visit: never, then.
    return DONE
  }
}

const stepFrom = (text: string | null): number | null | 'never begun' =>
  text === null ? 'never begun' : /^\d+$/.test(text) ? Number(text) : null

const cell = createCell(stepFrom(read()))

/** The step of the way round that is shown; null: it was ended, and does not come again by itself. */
export const guideStep: Cell<number | null | 'never begun'> = cell

const set = (step: number | null): void => {
  cell.set(step)
  try {
    localStorage.setItem(KEY, step === null ? DONE : String(step))
  } catch {
    // Shown until the page is left.
  }
}

export const showStep = (step: number): void => set(step)
export const endGuide = (): void => set(null)
export const startGuide = (): void => set(0)
