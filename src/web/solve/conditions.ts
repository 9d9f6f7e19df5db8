import { type Conditions, usualConditions } from '#compose/conditions.ts'
import { createCell, type OpenCell } from '../cell/cell.ts'

export { type Conditions, usualConditions } from '#compose/conditions.ts'

const cells = new Map<string, OpenCell<Conditions>>()
const keyOf = (document: string): string => `tinwright.conditions.${document}`

const remembered = (document: string): Conditions => {
  try {
    const text = sessionStorage.getItem(keyOf(document))
    // Written by this page alone, by the keys of `usualConditions`.
    return text === null ? usualConditions : { ...usualConditions, ...(JSON.parse(text) as Conditions) }
  } catch {
    return usualConditions
  }
}

/** What an open stove is burnt with and in. It is no part of the stove: it goes with the page, and comes again on reload. */
export const conditionsOf = (document: string): OpenCell<Conditions> => {
  const known = cells.get(document)
  if (known !== undefined) return known
  const cell = createCell(remembered(document))
  cell.subscribe(() => {
    try {
      sessionStorage.setItem(keyOf(document), JSON.stringify(cell.get()))
    } catch {
      // A browser that keeps nothing forgets them, no more.
    }
  })
  cells.set(document, cell)
  return cell
}
