import { sql } from 'kysely'
import { TABLE_NAMES } from '../tables.ts'
import type { Db, EngineKind } from './engine.ts'

/** A table as a database itself describes it, in words that both databases share. */
export interface TableSchema {
  /** Type by name; `?` after it: may be null. */
  readonly columns: Readonly<Record<string, string>>
  readonly key: readonly string[]
  /** `columns -> table.columns` */
  readonly refers: readonly string[]
  /** `columns`, or `unique columns` */
  readonly indexes: readonly string[]
}

export type Schema = Readonly<Record<string, TableSchema>>

const TYPES: Readonly<Record<string, string>> = { bytea: 'blob' }

const typeText = (type: string, nullable: boolean): string =>
  `${TYPES[type.toLowerCase()] ?? type.toLowerCase()}${nullable ? '?' : ''}`

const indexText = (unique: boolean, columns: string): string => `${unique ? 'unique ' : ''}${columns}`

const sqliteTable = async (db: Db, table: string): Promise<TableSchema> => {
  const columns = await sql<{ name: string; type: string; notnull: number; pk: number }>`
    select name, type, "notnull", pk from pragma_table_info(${table}) order by cid
  `.execute(db)
  const refers = await sql<{ own: string; table: string; other: string }>`
    select group_concat("from", ',') as own, "table", group_concat("to", ',') as other
    from (select * from pragma_foreign_key_list(${table}) order by id, seq) group by id, "table"
  `.execute(db)
  const indexes = await sql<{ unique: number; columns: string }>`
    select list."unique", (select group_concat(name, ',') from pragma_index_info(list.name)) as columns
    from pragma_index_list(${table}) as list where list.origin <> 'pk'
  `.execute(db)
  const keys = columns.rows.filter(({ pk }) => pk > 0).toSorted((a, b) => a.pk - b.pk)
  return {
    columns: Object.fromEntries(
      columns.rows.map(({ name, type, notnull }) => [name, typeText(type, notnull === 0)]),
    ),
    key: keys.map(({ name }) => name),
    refers: refers.rows.map(({ own, table: to, other }) => `${own} -> ${to}.${other}`).sort(),
    indexes: indexes.rows.map(({ unique, columns: names }) => indexText(unique === 1, names)).sort(),
  }
}

const postgresTable = async (db: Db, table: string): Promise<TableSchema> => {
  const columns = await sql<{ name: string; type: string; nullable: boolean }>`
    select column_name as name, data_type as type, is_nullable = 'YES' as nullable
    from information_schema.columns
    where table_schema = current_schema() and table_name = ${table} order by ordinal_position
  `.execute(db)
  const names = (numbers: string, relation: string) =>
    sql.raw(`(select string_agg(a.attname, ',' order by k.place)
      from unnest(${numbers}) with ordinality as k(number, place)
      join pg_attribute a on a.attrelid = ${relation} and a.attnum = k.number)`)
  const constraints = await sql<{ kind: string; own: string; table: string | null; other: string | null }>`
    select c.contype::text as kind, ${names('c.conkey', 'c.conrelid')} as own, t.relname as table,
      ${names('c.confkey', 'c.confrelid')} as other
    from pg_constraint c left join pg_class t on t.oid = c.confrelid
    where c.conrelid = ${table}::regclass and c.contype in ('p', 'f')
  `.execute(db)
  const indexes = await sql<{ unique: boolean; columns: string }>`
    select i.indisunique as unique, ${names('i.indkey::smallint[]', 'i.indrelid')} as columns
    from pg_index i where i.indrelid = ${table}::regclass and not i.indisprimary
  `.execute(db)
  const key = constraints.rows.find(({ kind }) => kind === 'p')?.own ?? ''
  return {
    columns: Object.fromEntries(
      columns.rows.map(({ name, type, nullable }) => [name, typeText(type, nullable)]),
    ),
    key: key === '' ? [] : key.split(','),
    refers: constraints.rows
      .filter(({ kind }) => kind === 'f')
      .map(({ own, table: to, other }) => `${own} -> ${to}.${other}`)
      .sort(),
    indexes: indexes.rows.map(({ unique, columns: own }) => indexText(unique, own)).sort(),
  }
}

const tableNames = async (db: Db, kind: EngineKind): Promise<readonly string[]> => {
  const { rows } =
    kind === 'sqlite'
      ? await sql<{ name: string }>`
          select name from sqlite_schema where type = 'table' and name not like 'sqlite%'`.execute(db)
      : await sql<{ name: string }>`
          select table_name as name from information_schema.tables
          where table_schema = current_schema()`.execute(db)
  const order: readonly string[] = TABLE_NAMES
  const place = (name: string): number => (order.includes(name) ? order.indexOf(name) : order.length)
  return rows.map(({ name }) => name).toSorted((a, b) => place(a) - place(b))
}

/** All tables as the database describes them, in the order of `TABLE_NAMES`. */
export const introspect = async (db: Db, kind: EngineKind): Promise<Schema> => {
  const schema: Record<string, TableSchema> = {}
  for (const name of await tableNames(db, kind))
    schema[name] = await (kind === 'sqlite' ? sqliteTable(db, name) : postgresTable(db, name))
  return schema
}
