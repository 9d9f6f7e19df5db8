import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { Kysely, sql } from 'kysely'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { nodeSqliteDialect } from '#store/engine/sqliteDialect.ts'

interface Cans {
  can: { id: number; name: string; lid: Uint8Array | null }
}

let database: DatabaseSync
let db: Kysely<Cans>
beforeEach(async () => {
  database = new DatabaseSync(':memory:')
  db = new Kysely<Cans>({ dialect: nodeSqliteDialect({ database, patience: 0 }) })
  await sql`create table can (id integer primary key, name text not null unique, lid blob)`.execute(db)
})
afterEach(() => db.destroy())

const can = (id: number, name = `can ${id}`) => ({ id, name, lid: null })

describe('kysely on the SQLite of Node', () => {
  it('gives rows for whatever returns rows, and counts for the rest', async () => {
    const returned = await db.insertInto('can').values(can(1)).returning(['id', 'name']).execute()
    expect(returned).toEqual([{ id: 1, name: 'can 1' }])
    const inserted = await db
      .insertInto('can')
      .values([can(2), can(3)])
      .executeTakeFirstOrThrow()
    expect(inserted).toMatchObject({ insertId: 3n, numInsertedOrUpdatedRows: 2n })
    const updated = await db.updateTable('can').set({ name: sql`name || '!'` }).executeTakeFirstOrThrow()
    expect(updated.numUpdatedRows).toBe(3n)
    const deleted = await db.deleteFrom('can').where('id', '<', 3).executeTakeFirstOrThrow()
    expect(deleted.numDeletedRows).toBe(2n)
    expect(await db.selectFrom('can').selectAll().execute()).toEqual([{ id: 3, name: 'can 3!', lid: null }])
  })

  it('gives bytes and text back as they came', async () => {
    const lid = Uint8Array.from({ length: 256 }, (_, n) => n)
    await db.insertInto('can').values({ id: 1, name: 'Dose ½ 木 🔥', lid }).execute()
    expect(await db.selectFrom('can').selectAll().executeTakeFirst()).toEqual({
      id: 1,
      name: 'Dose ½ 木 🔥',
      lid,
    })
  })

  it('streams row by row', async () => {
    await db
      .insertInto('can')
      .values([1, 2, 3].map((id) => can(id)))
      .execute()
    const ids: number[] = []
    for await (const { id } of db.selectFrom('can').selectAll().orderBy('id').stream()) ids.push(id)
    expect(ids).toEqual([1, 2, 3])
  })

  it('takes a transaction back whole, and says what was wrong', async () => {
    const broken = db.transaction().execute(async (trx) => {
      await trx.insertInto('can').values(can(1)).execute()
      await trx.insertInto('can').values(can(2, 'can 1')).execute()
    })
    await expect(broken).rejects.toMatchObject({ message: expect.stringContaining('UNIQUE'), errcode: 2067 })
    expect(database.isTransaction).toBe(false)
    expect(await db.selectFrom('can').selectAll().execute()).toEqual([])
  })

  it('says what was wrong also where SQLite has rolled back by itself', async () => {
    const broken = db.transaction().execute(async (trx) => {
      await trx.insertInto('can').values(can(1)).execute()
      await sql`insert or rollback into can (id, name) values (1, 'x')`.execute(trx)
    })
    await expect(broken).rejects.toMatchObject({ message: expect.stringContaining('UNIQUE') })
    expect(await db.selectFrom('can').selectAll().execute()).toEqual([])
  })

  it('runs transactions that are asked for at once one after the other', async () => {
    const both = [1, 2].map((n) =>
      db.transaction().execute(async (trx) => {
        const before = await trx.selectFrom('can').selectAll().execute()
        await new Promise((done) => setTimeout(done, 5))
        await trx.insertInto('can').values(can(n)).execute()
        return before.length
      }),
    )
    expect(await Promise.all(both)).toEqual([0, 1])
  })

  it('takes the write lock at the start, and none to read', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'tinwright-dialect-'))
    const path = join(folder, 'cans')
    const [own, other] = [new DatabaseSync(path), new DatabaseSync(path)]
    const mine = new Kysely<Cans>({ dialect: nodeSqliteDialect({ database: own, patience: 0 }) })
    const otherWrites = async () => other.exec('begin immediate; rollback')
    try {
      await mine.transaction().setAccessMode('read only').execute(otherWrites)
      const both = mine.transaction().execute(otherWrites)
      await expect(both).rejects.toMatchObject({ errcode: 5 })
    } finally {
      await mine.destroy()
      other.close()
      rmSync(folder, { recursive: true })
    }
  })
})
