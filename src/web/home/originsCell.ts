import { type Cell, createCell } from '../cell/cell.ts'
import { documents, takenAway, workshop } from '../workshop/workshop.ts'
import { type Origins, originsIn } from './families.ts'

const cell = createCell<Origins>(new Map())

/** Which stove was made from which; asked for once for each family. */
export const origins: Cell<Origins> = cell

let asking = false
let again = false

const ask = async (): Promise<void> => {
  for (const { id, kind, version } of [...documents.get(), ...takenAway.get()]) {
    // Of version 0 the workshop has not heard; when it has, the list changes.
    if (kind !== 'stove' || version === 0 || cell.get().has(id)) continue
    const answer = await workshop.ask('family', { document: id })
    if (answer.ok) cell.set(new Map([...cell.get(), [id, null], ...originsIn(answer.value)]))
  }
}

const look = (): void => {
  if (asking) {
    again = true
    return
  }
  asking = true
  void ask().finally(() => {
    asking = false
    if (!again) return
    again = false
    look()
  })
}

documents.subscribe(look)
look()
