import { type IDBPDatabase, openDB } from 'idb'

// A few words that a browser which is killed has to know when it begins again. What `localStorage` holds is on the
// drive only some seconds later.

let opened: Promise<IDBPDatabase> | null = null

const base = (): Promise<IDBPDatabase> => {
  opened ??= openDB('tinwright', 1, { upgrade: (db) => void db.createObjectStore('words') })
  return opened
}

export const lastingWord = async (key: string): Promise<string | null> => {
  try {
    const word: unknown = await (await base()).get('words', key)
    return typeof word === 'string' ? word : null
  } catch {
    // A browser that keeps nothing; what follows from it is told elsewhere.
    return null
  }
}

/** Makes the new word from the one before it, with no other window in between; on the drive when it resolves. */
export const changeLastingWord = async (
  key: string,
  change: (before: string | null) => string,
): Promise<void> => {
  try {
    const trx = (await base()).transaction('words', 'readwrite', { durability: 'strict' })
    const before: unknown = await trx.store.get(key)
    const after = change(typeof before === 'string' ? before : null)
    if (after !== before) void trx.store.put(after, key)
    await trx.done
  } catch {
    // As above.
  }
}
