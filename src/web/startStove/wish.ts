import { createCell } from '../cell/cell.ts'
import { go } from '../routes/here.ts'

/** What a start begins with, by names on the shelf; empty: the maker chooses. */
export interface StartWish {
  readonly outer: string
  readonly inner: string
}

export const startWish = createCell<StartWish>({ outer: '', inner: '' })

/** Goes to the page where a stove is started, with two cans taken from the shelf already. */
export const startWith = (wish: StartWish): void => {
  startWish.set(wish)
  go({ at: 'start' })
}
