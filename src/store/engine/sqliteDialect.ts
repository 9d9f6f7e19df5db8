import type { DatabaseSync, SQLInputValue } from 'node:sqlite'
import { setTimeout as pause } from 'node:timers/promises'
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  type Driver,
  type QueryResult,
  SqliteAdapter,
  SqliteIntrospector,
  SqliteQueryCompiler,
  type TransactionSettings,
} from 'kysely'
import { isBusy } from './sqliteFaults.ts'

/** Between two tries to become the one who writes [ms]. */
const PAUSE = 10

export interface NodeSqliteConfig {
  readonly database: DatabaseSync
  /** How long a write waits for another program's [ms]. */
  readonly patience: number
}

const connectionTo = (database: DatabaseSync): DatabaseConnection => ({
  executeQuery: async <R>({ sql, parameters }: CompiledQuery): Promise<QueryResult<R>> => {
    const statement = database.prepare(sql)
    const values = parameters as readonly SQLInputValue[]
    // A statement that gives columns gives rows: `select`, and whatever ends in `returning`.
    if (statement.columns().length > 0) return { rows: statement.all(...values) as R[] }
    const { changes, lastInsertRowid } = statement.run(...values)
    return { rows: [], numAffectedRows: BigInt(changes), insertId: BigInt(lastInsertRowid) }
  },
  streamQuery: async function* <R>({ sql, parameters }: CompiledQuery): AsyncGenerator<QueryResult<R>> {
    const rows = database.prepare(sql).iterate(...(parameters as readonly SQLInputValue[]))
    for (const row of rows) yield { rows: [row as R] }
  },
})

/**
 * Takes the write lock at once: a transaction that reads first and writes later can find, in the middle,
 * that another program wrote between, and then no waiting helps. `node:sqlite` waits by stopping the whole
 * process, so it waits in short spells, and the process breathes between them.
 */
const beginWriting = async (connection: DatabaseConnection, patience: number): Promise<void> => {
  const started = performance.now()
  for (;;) {
    try {
      await connection.executeQuery(CompiledQuery.raw('begin immediate'))
      return
    } catch (error) {
      if (!isBusy(error) || performance.now() - started >= patience) throw error
      await pause(PAUSE)
    }
  }
}

/** Kysely takes care that one transaction at a time has the one connection. */
const driverOf = ({ database, patience }: NodeSqliteConfig): Driver => {
  const connection = connectionTo(database)
  const run = async (sql: string): Promise<void> => {
    await connection.executeQuery(CompiledQuery.raw(sql))
  }
  return {
    init: async () => undefined,
    acquireConnection: async () => connection,
    releaseConnection: async () => undefined,
    beginTransaction: (_, { accessMode }: TransactionSettings) =>
      accessMode === 'read only' ? run('begin') : beginWriting(connection, patience),
    commitTransaction: () => run('commit'),
    // After some faults (a full disk) SQLite has rolled back by itself.
    rollbackTransaction: async () => {
      if (database.isTransaction) await run('rollback')
    },
    destroy: async () => {
      if (database.isOpen) database.close()
    },
  }
}

/** Kysely on the SQLite that Node brings. */
export const nodeSqliteDialect = (config: NodeSqliteConfig): Dialect => ({
  createDriver: () => driverOf(config),
  createQueryCompiler: () => new SqliteQueryCompiler(),
  createAdapter: () => new SqliteAdapter(),
  createIntrospector: (db) => new SqliteIntrospector(db),
})
