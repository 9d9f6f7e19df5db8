import { writtenLog } from '#proof/trial/log.ts'
import { type Cell, createCell } from '../cell/cell.ts'
import { type BurnStore, type KeptBurn, later, type Noted } from './burnStore.ts'
import { type Line, type Visit, visit } from './courier.ts'
import {
  type BurnLog,
  corrected,
  EMPTY_LOG,
  type Entry,
  type EntryWords,
  entryOf,
  logOf,
  standing,
  takenBack,
} from './entry.ts'

export interface BurnState {
  /** Read from this device. */
  readonly ready: boolean
  readonly name: string
  /** The trial's text in the workshop; empty: never seen here. */
  readonly text: string
  readonly log: BurnLog
  /** Entries that stand. */
  readonly count: number
  /** This device has noted something. */
  readonly begun: boolean
  /** Entries, corrections and photos that the workshop does not have yet. */
  readonly waiting: number
  readonly visit: Visit | null
  /** To add to this device's clock [ms]. */
  readonly shift: number
  /** This device could not keep something: a sentence. */
  readonly trouble: string | null
}

/** The log of one burn on this device, whoever else writes in it. */
export interface BurnBook {
  readonly trial: string
  readonly state: Cell<BurnState>
  /** Notes what happened, now or at a time by this device's clock [ms since 1970]. */
  readonly note: (words: EntryWords, at?: number) => Promise<Entry | null>
  readonly correct: (entry: Entry, change: Partial<EntryWords> & { readonly at?: string }) => Promise<void>
  readonly takeBack: (entry: Entry) => Promise<void>
  readonly photo: (name: string, bytes: Blob) => Promise<void>
  /** Brings what is waiting to the workshop and asks for news. */
  readonly sync: () => Promise<void>
  /** Reads again what another tab wrote. */
  readonly reload: () => Promise<void>
}

export interface BookTools {
  readonly store: BurnStore
  readonly line: Line
  /** This device, in the workshop's eyes. */
  readonly client: string
  readonly now: () => number
  readonly newId: () => string
  /** Tells other tabs of this device. */
  readonly tell: () => void
}

const NOTHING: BurnState = {
  ready: false,
  name: '',
  text: '',
  log: EMPTY_LOG,
  count: 0,
  begun: false,
  waiting: 0,
  visit: null,
  shift: 0,
  trouble: null,
}

/** Entries of a trial's own text: those of a trial that came as a file. */
const written = (text: string): BurnLog => {
  try {
    return writtenLog(JSON.parse(text))
  } catch {
    return EMPTY_LOG
  }
}

/** The log that follows from what is kept: the trial's own, what was heard, what was noted here. */
const logIn = ({ burn, heard, noted }: Pick<KeptBurn, 'burn' | 'heard' | 'noted'>): BurnLog =>
  logOf(
    [...heard, ...noted].map(entryOf).filter((entry) => entry !== null),
    written(burn.text),
  )

const NO_ROOM =
  'This phone could not keep that: its storage is full or closed to this page. Write it down on paper, and make room.'

export const openBurnBook = (trial: string, tools: BookTools): BurnBook => {
  const { store, line, client, now, newId, tell } = tools
  const state = createCell<BurnState>(NOTHING)
  let kept: KeptBurn | null = null
  const show = (change: Partial<BurnState> = {}): void => {
    if (kept === null) return
    const log = logIn(kept)
    state.set({
      ...state.get(),
      ready: true,
      name: kept.burn.name,
      text: kept.burn.text,
      log,
      count: standing(log).length,
      begun: kept.noted.length > 0,
      waiting: kept.noted.filter(({ sent }) => !sent).length + kept.photos.length,
      shift: kept.burn.shift ?? 0,
      ...change,
    })
  }
  const reload = async (): Promise<void> => {
    try {
      kept = await store.load(trial)
      show()
    } catch {
      state.set({ ...state.get(), ready: true, trouble: NO_ROOM })
    }
  }
  let running: Promise<void> | null = null
  let again = false
  const go = async (): Promise<void> => {
    do {
      again = false
      let result: Visit
      try {
        result = await visit(trial, client, store, line, now)
      } catch {
        result = { kind: 'out of reach' }
      }
      await reload()
      show({ visit: result })
    } while (again)
  }
  /** One visit at a time; whoever asks during one gets another after it. */
  const sync = (): Promise<void> => {
    if (running !== null) {
      again = true
      return running
    }
    running = go().finally(() => {
      running = null
    })
    return running
  }
  const keep = async (entry: Entry, replaces: Noted['replaces']): Promise<boolean> => {
    try {
      await store.note({
        id: replaces === null ? entry.id : newId(),
        trial,
        at: entry.at,
        body: JSON.stringify(entry),
        replaces,
        withdrawn: entry.withdrawn === true,
        sent: false,
        ownClock: (kept?.burn.shift ?? null) === null,
      })
    } catch {
      state.set({ ...state.get(), trouble: NO_ROOM })
      return false
    }
    await reload()
    tell()
    void sync()
    return true
  }
  /** What became of an entry since it was shown. */
  const asItStands = (entry: Entry): Entry => {
    const { events, masses } = state.get().log
    return [...events, ...masses].find(({ id }) => id === entry.id) ?? entry
  }
  /** The event of the workshop that holds an entry as it stands, so that the correction replaces that one. */
  const holds = (entry: Entry): string => {
    const all = [...(kept?.heard ?? []), ...(kept?.noted ?? [])]
    const found = all.find((one) => {
      const said = entryOf(one)
      return said?.id === entry.id && (said.edit ?? 0) === (entry.edit ?? 0)
    })
    return found?.id ?? entry.id
  }
  return {
    trial,
    state,
    note: async (words, at = now()) => {
      const time = new Date(at + (kept?.burn.shift ?? 0)).toISOString()
      const entry = { id: newId(), at: time, ...words } as Entry
      return (await keep(entry, null)) ? entry : null
    },
    correct: async (entry, change) => {
      const now = asItStands(entry)
      // The clock may have been put right while it was being looked at.
      const by = Date.parse(now.at) - Date.parse(entry.at)
      const at = change.at === undefined ? {} : { at: later(change.at, by) }
      await keep(corrected(now, { ...change, ...at }), holds(now))
    },
    takeBack: async (entry) => {
      const now = asItStands(entry)
      await keep(takenBack(now), holds(now))
    },
    photo: async (name, bytes) => {
      try {
        await store.keepPhoto({
          id: newId(),
          revision: newId(),
          act: newId(),
          trial,
          name,
          at: new Date(now() + (kept?.burn.shift ?? 0)).toISOString(),
          bytes,
        })
      } catch {
        state.set({ ...state.get(), trouble: NO_ROOM })
        return
      }
      await reload()
      tell()
      void sync()
    },
    sync,
    reload,
  }
}
