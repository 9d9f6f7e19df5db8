import { type Kysely, sql } from 'kysely'
import type { EngineKind } from '../engine/engine.ts'
import type { Tables } from '../tables.ts'
import type { Migration } from './migration.ts'

/** The workshop's own row as a new one begins. */
export interface Beginning {
  readonly id: string
  readonly at: string
}

/**
 * Brings the tables to the last format of the list, in one transaction: all of it, or nothing. It asks for
 * the format again inside, since another program may have been quicker. `beginning` is for an empty database.
 */
export const migrate = (
  db: Kysely<Tables>,
  kind: EngineKind,
  migrations: readonly Migration[],
  beginning: Beginning | null,
): Promise<void> =>
  db.transaction().execute(async (trx) => {
    // Any two programs that migrate one server's database wait for each other here.
    if (kind === 'postgres') await sql`select pg_advisory_xact_lock(1416195703)`.execute(trx)
    const now =
      beginning === null || (kind === 'postgres' && (await hasTables(trx)))
        ? (await trx.selectFrom('workshop').select('format').executeTakeFirstOrThrow()).format
        : 0
    const last = migrations.length
    for (const { format, up } of migrations) {
      if (format > now) await up(trx as unknown as Kysely<unknown>, kind)
    }
    if (now === 0 && beginning !== null) {
      const { id, at } = beginning
      await trx
        .insertInto('workshop')
        .values({ id, format: last, created: at, demo: null, sequence: 0 })
        .execute()
    } else if (now < last) {
      await trx.updateTable('workshop').set({ format: last }).execute()
    }
    if (kind === 'sqlite' && now < last) await sql.raw(`pragma user_version = ${last}`).execute(trx)
  })

/**
 * Does this PostgreSQL database hold a workshop already? Asked of the catalogue as a table, not by `to_regclass`:
 * that may answer from what the connection remembers, and waiting for an advisory lock does not make it forget
 * (seen with PostgreSQL 15: the second of two benches at once still found none).
 */
export const hasTables = async (db: Kysely<Tables>): Promise<boolean> => {
  const found = await sql<{ there: boolean }>`
    select exists (
      select from pg_catalog.pg_class where relname = 'workshop' and pg_catalog.pg_table_is_visible(oid)
    ) as there
  `.execute(db)
  return found.rows[0]?.there ?? false
}
