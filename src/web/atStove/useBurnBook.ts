import { useEffect, useState } from 'react'
import { type BurnBook, openBurnBook } from './burnBook.ts'
import { freshId, thisDevice } from './device.ts'
import { deviceStore } from './deviceStore.ts'
import { workshopLine } from './workshopLine.ts'

/** How often the workshop is asked while the page is seen [ms]. */
const EVERY = 4000

const books = new Map<string, BurnBook>()
let tabs: BroadcastChannel | null = null

const bookOf = (trial: string): BurnBook => {
  const known = books.get(trial)
  if (known !== undefined) return known
  tabs ??= new BroadcastChannel('tinwright-burns')
  const book = openBurnBook(trial, {
    store: deviceStore(),
    line: workshopLine(),
    client: thisDevice(),
    now: () => Date.now(),
    newId: freshId,
    tell: () => tabs?.postMessage(trial),
  })
  tabs.addEventListener('message', ({ data }) => {
    if (data === trial) void book.reload()
  })
  books.set(trial, book)
  void book.reload()
  return book
}

/** The log of a burn on this device, kept in step with the workshop while it is looked at. */
export const useBurnBook = (trial: string): BurnBook => {
  const [book, setBook] = useState(() => bookOf(trial))
  useEffect(() => setBook(bookOf(trial)), [trial])
  useEffect(() => {
    const sync = (): void => {
      if (document.visibilityState === 'visible') void book.sync()
    }
    sync()
    const beat = setInterval(sync, EVERY)
    addEventListener('online', sync)
    document.addEventListener('visibilitychange', sync)
    return () => {
      clearInterval(beat)
      removeEventListener('online', sync)
      document.removeEventListener('visibilitychange', sync)
    }
  }, [book])
  return book
}
