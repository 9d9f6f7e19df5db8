import { createCell } from '../cell/cell.ts'
import { type Place, pathOf, placeOf } from './routes.ts'

const cell = createCell<Place>(placeOf(location.pathname))

/** Where the bench is. */
export const here = { get: cell.get, subscribe: cell.subscribe }

/** Goes to another place; the browser's own back comes here again. */
export const go = (place: Place): void => {
  const path = pathOf(place)
  if (path !== location.pathname) history.pushState(null, '', path)
  cell.set(place)
}

addEventListener('popstate', () => cell.set(placeOf(location.pathname)))
