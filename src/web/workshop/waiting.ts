import { type Cell, createCell } from '../cell/cell.ts'
import { station } from './station.ts'

const cell = createCell(0)

/** How many things done in this window the workshop has not answered yet. */
export const waitingCount: Cell<number> = cell

void station().then(({ outbox }) => {
  const count = (): void => cell.set(outbox.waiting.get().length)
  outbox.waiting.subscribe(count)
  count()
})
