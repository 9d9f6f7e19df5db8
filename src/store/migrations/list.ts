import { firstTables } from './firstTables.ts'
import type { Migration } from './migration.ts'

/** In order. A migration that went out is never changed; the next format is one more row. */
export const MIGRATIONS: readonly Migration[] = [{ format: 1, up: firstTables }]

/** The format of the tables that this program reads and writes. */
export const FORMAT = MIGRATIONS.length
