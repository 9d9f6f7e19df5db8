import type { Kysely, Transaction } from 'kysely'
import type { Refusal } from '../answer.ts'
import type { Tables } from '../tables.ts'

export type EngineKind = 'sqlite' | 'postgres'

export type Db = Kysely<Tables> | Transaction<Tables>

/** One open database, whichever it is. */
export interface Engine {
  readonly kind: EngineKind
  readonly db: Kysely<Tables>
  /** The format of the tables that it reads and writes. */
  readonly format: number
  /** Where it is, for sentences; without a password. */
  readonly place: string
  /** What an error of the database means to a maker; null for one that is our own fault. */
  readonly refusalOf: (error: unknown) => Refusal | null
  readonly close: () => Promise<void>
}
