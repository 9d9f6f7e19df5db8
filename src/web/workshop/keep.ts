import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { CallName } from '#wire/calls.ts'
import type { DocumentHead, Revision } from '#wire/documents.ts'
import type { UploadName } from '#wire/uploads.ts'
import type { Mirror } from './mirror.ts'

/** A writing call on its way to the workshop. */
export interface Outgoing {
  readonly key?: number
  /** Of the window that asked. */
  readonly client: string
  readonly name: CallName | UploadName
  /** As the call wants it, but for the draft's number: that is known only when it is sent. */
  readonly request: unknown
  readonly bytes?: Blob
  /** By which its window may hold it back for a moment. */
  readonly token?: string
  readonly document?: string
  /** Belongs to a draft; what the draft says when it is done, to know a lost answer by. */
  readonly draft?: { readonly document: string; readonly says: string }
}

/** A call that the workshop refused for good; shown until the maker has read it. */
export interface Refused {
  readonly key?: number
  readonly name: string
  readonly sentence: string
  readonly at: string
  readonly request: unknown
}

interface Kept extends DBSchema {
  outbox: { key: number; value: Outgoing; indexes: { client: string } }
  mirrors: { key: [document: string, client: string]; value: Mirror }
  /** The draft's number as the workshop said it last. */
  numbers: { key: [document: string, client: string]; value: number }
  revisions: { key: string; value: Revision }
  heads: { key: string; value: DocumentHead }
  refused: { key: number; value: Refused }
  /** Odds and ends by name. */
  words: { key: string; value: unknown }
}

export type Keep = IDBPDatabase<Kept>

const VERSION = 1

/** What this browser keeps of a workshop: what is not sent yet, and what was seen. Each has a keep of its own. */
export const openKeep = (workshop: string): Promise<Keep> =>
  openDB<Kept>(`tinwright.${workshop}`, VERSION, {
    upgrade(db) {
      const outbox = db.createObjectStore('outbox', { keyPath: 'key', autoIncrement: true })
      outbox.createIndex('client', 'client')
      db.createObjectStore('mirrors')
      db.createObjectStore('numbers')
      db.createObjectStore('revisions', { keyPath: 'id' })
      db.createObjectStore('heads', { keyPath: 'id' })
      db.createObjectStore('refused', { keyPath: 'key', autoIncrement: true })
      db.createObjectStore('words')
    },
    blocking(_now, _wanted, event) {
      // A newer page of the bench wants to bring it up to date.
      ;(event.target as IDBDatabase).close()
    },
  })
