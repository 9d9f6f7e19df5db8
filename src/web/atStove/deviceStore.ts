import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { TrialEvent } from '#wire/trials.ts'
import {
  type BurnStore,
  type KeptPhoto,
  type KnownBurn,
  moved,
  type Noted,
  unknownBurn,
} from './burnStore.ts'

interface Tables extends DBSchema {
  burns: { key: string; value: KnownBurn }
  noted: { key: string; value: Noted; indexes: { trial: string } }
  heard: { key: string; value: TrialEvent; indexes: { trial: string } }
  photos: { key: string; value: KeptPhoto; indexes: { trial: string } }
}

const VERSION = 1

const open = (): Promise<IDBPDatabase<Tables>> =>
  openDB<Tables>('tinwright-burns', VERSION, {
    upgrade: (db) => {
      db.createObjectStore('burns', { keyPath: 'trial' })
      for (const name of ['noted', 'heard', 'photos'] as const)
        db.createObjectStore(name, { keyPath: 'id' }).createIndex('trial', 'trial')
    },
  })

/** On the drive when it says so, not only in the browser's memory: a phone may go flat in the middle. */
const STRICT = { durability: 'strict' } as const

/** Burns as this browser keeps them. */
export const deviceStore = (): BurnStore => {
  const base = open()
  const burnIn = async (
    table: { readonly get: (key: string) => Promise<KnownBurn | undefined> },
    trial: string,
  ): Promise<KnownBurn> => (await table.get(trial)) ?? unknownBurn(trial)
  return {
    load: async (trial) => {
      const t = (await base).transaction(['burns', 'noted', 'heard', 'photos'])
      const [burn, noted, heard, photos] = await Promise.all([
        burnIn(t.objectStore('burns'), trial),
        t.objectStore('noted').index('trial').getAll(trial),
        t.objectStore('heard').index('trial').getAll(trial),
        t.objectStore('photos').index('trial').getAll(trial),
      ])
      return { burn, noted, heard, photos }
    },
    note: async (noted) => {
      const t = (await base).transaction(['noted', 'burns'], 'readwrite', STRICT)
      // Told in the meantime, perhaps by another tab: then it is too late to be moved with the others.
      const { shift } = await burnIn(t.objectStore('burns'), noted.trial)
      const own = noted.ownClock && shift !== null
      await Promise.all([t.objectStore('noted').add(own ? moved(noted, shift) : noted), t.done])
    },
    knows: async (trial, change) => {
      const t = (await base).transaction('burns', 'readwrite', STRICT)
      await t.store.put({ ...(await burnIn(t.store, trial)), ...change, trial })
      await t.done
    },
    sent: async (_, ids) => {
      const t = (await base).transaction('noted', 'readwrite', STRICT)
      for (const id of ids) {
        const noted = await t.store.get(id)
        if (noted !== undefined) await t.store.put({ ...noted, sent: true })
      }
      await t.done
    },
    hear: async (trial, events, sequence) => {
      const t = (await base).transaction(['heard', 'burns'], 'readwrite', STRICT)
      for (const event of events) await t.objectStore('heard').put(event)
      const burns = t.objectStore('burns')
      const burn = await burnIn(burns, trial)
      await burns.put({ ...burn, sequence: Math.max(burn.sequence, sequence) })
      await t.done
    },
    shift: async (trial, by) => {
      const t = (await base).transaction(['noted', 'burns'], 'readwrite', STRICT)
      const burns = t.objectStore('burns')
      const burn = await burnIn(burns, trial)
      // Another tab may have been told first.
      if (burn.shift === null) {
        const noted = t.objectStore('noted')
        for (const one of await noted.index('trial').getAll(trial))
          if (one.ownClock && !one.sent) await noted.put(moved(one, by))
        await burns.put({ ...burn, shift: by })
      }
      await t.done
    },
    keepPhoto: async (photo) => {
      const t = (await base).transaction('photos', 'readwrite', STRICT)
      await Promise.all([t.store.put(photo), t.done])
    },
    dropPhoto: async (id) => {
      await (await base).delete('photos', id)
    },
  }
}
