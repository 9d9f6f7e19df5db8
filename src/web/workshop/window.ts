import { hold } from './hold.ts'
import { changeLastingWord, lastingWord } from './lastingWord.ts'
import { newId } from './names.ts'

const KEY = 'tinwright.window'
const KNOWN = 'windows'
/** So many closed windows are remembered. */
const MOST_KNOWN = 20

const lockOf = (client: string): string => `tinwright.window.${client}`

/** Of this very tab. */
const ownId = (): string | null => {
  try {
    return sessionStorage.getItem(KEY)
  } catch {
    return null
  }
}

const keepOwnId = (client: string): void => {
  try {
    sessionStorage.setItem(KEY, client)
  } catch {
    // A browser that keeps nothing: every visit is a window of its own.
  }
}

const idsIn = (word: string | null): readonly string[] => (word ?? '').split(' ').filter(Boolean)

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
  const own = ownId()
  const known = idsIn(await lastingWord(KNOWN))
  const claim = async (client: string, wait: boolean): Promise<string | null> =>
    (await hold(lockOf(client), wait)) === null ? null : client
  let client = own === null ? null : await claim(own, reloaded())
  for (const closed of known) client ??= closed === own ? null : await claim(closed, false)
  if (client === null) {
    client = newId()
    await hold(lockOf(client), false)
  }
  const mine = client
  keepOwnId(mine)
  await changeLastingWord(KNOWN, (before) =>
    [mine, ...idsIn(before).filter((one) => one !== mine)].slice(0, MOST_KNOWN).join(' '),
  )
  return mine
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
