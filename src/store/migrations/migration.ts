import type { Kysely } from 'kysely'
import type { EngineKind } from '../engine/engine.ts'

/** One step from a format of the tables to the next. */
export interface Migration {
  /** The format it leads to. */
  readonly format: number
  /** Runs inside the transaction that also writes the new format: all of it, or nothing. Past formats have no types any more. */
  readonly up: (db: Kysely<unknown>, kind: EngineKind) => Promise<void>
}
