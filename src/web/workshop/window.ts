import { hold } from './hold.ts'
import { newId } from './names.ts'

const KEY = 'tinwright.window'
const KNOWN = 'tinwright.windows'
/** So many closed windows are remembered. */
const MOST_KNOWN = 20

const lockOf = (client: string): string => `tinwright.window.${client}`

const read = (storage: Storage, key: string): string | null => {
  try {
    return storage.getItem(key)
  } catch {
    return null
  }
}

const write = (storage: Storage, key: string, text: string): void => {
  try {
    storage.setItem(key, text)
  } catch {
    // A browser that keeps nothing: every visit is a window of its own.
  }
}

const knownWindows = (): readonly string[] => (read(localStorage, KNOWN) ?? '').split(' ').filter(Boolean)

const reloaded = (): boolean =>
  performance
    .getEntriesByType('navigation')
    .some((entry) => (entry as PerformanceNavigationTiming).type === 'reload')

/**
 * The id under which this window writes and undoes. A reloaded window keeps its own. A new one goes on as the
 * window that was closed last, with its edits and its undo; a duplicated one gets a fresh id, because its twin
 * still has the other.
 */
export const claimWindow = async (): Promise<string> => {
  const own = read(sessionStorage, KEY)
  const known = knownWindows()
  const claim = async (client: string, wait: boolean): Promise<string | null> =>
    (await hold(lockOf(client), wait)) === null ? null : client
  let client = own === null ? null : await claim(own, reloaded())
  for (const closed of known) client ??= closed === own ? null : await claim(closed, false)
  if (client === null) {
    client = newId()
    await hold(lockOf(client), false)
  }
  write(sessionStorage, KEY, client)
  write(
    localStorage,
    KNOWN,
    [client, ...known.filter((one) => one !== client)].slice(0, MOST_KNOWN).join(' '),
  )
  return client
}

/** Does something in the place of a window that is closed; gives false while it is open. */
export const inPlaceOf = async (client: string, work: () => Promise<void>): Promise<boolean> => {
  const release = await hold(lockOf(client), false)
  if (release === null) return false
  try {
    await work()
  } finally {
    release()
  }
  return true
}
