import type { Outgoing } from './keep.ts'
import { amended, committed, isSameDeed, type Mirror, moved, textNow } from './mirror.ts'
import { newId, now } from './names.ts'
import type { Station } from './station.ts'
import { underWay } from './underWay.ts'

/** Edits of one name that follow each other within this time are one step: a key held down. [ms] */
const ONE_STEP = 700
/** As long as a label may be in the workshop. */
const MAX_LABEL = 200

export type Entry = Omit<Outgoing, 'client'>

/** One window's edit of one document: shown at once, kept in this browser, and on its way to the workshop. */
export interface EditLog {
  readonly mirror: () => Mirror
  /** Writes that this browser has not finished keeping. */
  readonly pending: () => number
  /** One step on. */
  readonly commit: (label: string, text: string) => void
  /** One step back or forth; false where there is none. */
  readonly step: (by: -1 | 1) => boolean
  /** The step that may still be carried further is done. */
  readonly close: () => void
  /** Keeps a mirror and what the workshop is to hear of it, both or neither; gives the keys of the entries. */
  readonly store: (after: Mirror, entries: readonly Entry[]) => Promise<readonly number[]>
  /** What the workshop hears of an edit. */
  readonly autosave: (label: string, says: string, base: string) => Entry
  readonly move: (name: 'undoEdit' | 'redoEdit' | 'closeDraft', says: string) => Entry
}

/** The newest step, held back for a moment while a key held down may still carry it further. */
interface OpenStep {
  readonly label: string
  readonly token: string
  readonly release: () => void
  readonly keys: Promise<readonly number[]>
  readonly timer: ReturnType<typeof setTimeout>
}

export const openEditLog = (
  { keep, outbox, window }: Station,
  begun: Mirror,
  changed: () => void,
): EditLog => {
  const { document: id } = begun
  let mirror = begun
  let pending = 0

  // Writes go one after the other, so that the outbox has them in the order in which they were done.
  let writing: Promise<unknown> = Promise.resolve()
  const inOrder = <T>(work: () => Promise<T>): Promise<T> => {
    pending += 1
    const next = writing.then(work).finally(() => {
      pending -= 1
      changed()
    })
    writing = next.catch(() => undefined)
    return underWay(next)
  }

  const store = (after: Mirror, entries: readonly Entry[]): Promise<readonly number[]> => {
    mirror = after
    return inOrder(async () => {
      const trx = keep.transaction(['mirrors', 'outbox'], 'readwrite', { durability: 'strict' })
      void trx.objectStore('mirrors').put(after, [id, window])
      const keys: number[] = []
      for (const entry of entries)
        keys.push(await trx.objectStore('outbox').add({ ...entry, client: window }))
      await trx.done
      await outbox.look()
      return keys
    })
  }

  const autosave = (label: string, says: string, base: string): Entry => ({
    name: 'autosave',
    request: {
      document: id,
      client: window,
      at: now(),
      base,
      text: says,
      label: label.slice(0, MAX_LABEL),
    },
    draft: { document: id, says },
  })

  const move = (name: 'undoEdit' | 'redoEdit' | 'closeDraft', says: string): Entry => ({
    name,
    request: { document: id, client: window, at: now() },
    draft: { document: id, says },
  })

  let open: OpenStep | null = null
  const close = (): void => {
    if (open === null) return
    const { timer, release, keys } = open
    open = null
    clearTimeout(timer)
    void keys.then(release)
  }

  /** The open step goes a little further: one entry for the workshop, written anew. */
  const carryOn = ({ token, release, keys, timer }: OpenStep, label: string, text: string): void => {
    clearTimeout(timer)
    mirror = amended(mirror, { label, text }, now())
    const after = mirror
    const entry = { ...autosave(label, text, after.base), token, client: window }
    const again = inOrder(async () => {
      const [key] = await keys
      const trx = keep.transaction(['mirrors', 'outbox'], 'readwrite', { durability: 'strict' })
      void trx.objectStore('mirrors').put(after, [id, window])
      if (key !== undefined) void trx.objectStore('outbox').put({ ...entry, key })
      await trx.done
      return key === undefined ? [] : [key]
    })
    open = { label, token, release, keys: again, timer: setTimeout(close, ONE_STEP) }
  }

  const commit = (label: string, text: string): void => {
    if (open !== null && isSameDeed(open.label, label)) {
      carryOn(open, label, text)
      return
    }
    close()
    const after = committed(mirror, { label, text }, now())
    if (after === mirror) return
    if (after.refused !== null) {
      // Nothing goes to the workshop until it is settled whose edit counts.
      void store(after, [])
      return
    }
    const token = newId()
    const release = outbox.hold(token)
    const keys = store(after, [{ ...autosave(label, text, after.base), token }])
    open = { label, token, release, keys, timer: setTimeout(close, ONE_STEP) }
  }

  const step = (by: -1 | 1): boolean => {
    close()
    const after = moved(mirror, by, now())
    if (after === mirror) return false
    const told = after.refused !== null ? [] : [move(by < 0 ? 'undoEdit' : 'redoEdit', textNow(after))]
    void store(after, told).then(outbox.nudge)
    return true
  }

  return { mirror: () => mirror, pending: () => pending, commit, step, close, store, autosave, move }
}
