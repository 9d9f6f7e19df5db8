import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { networkDrive } from '#store/engine/networkDrive.ts'
import { MIGRATIONS } from '#store/migrations/list.ts'
import type { Migration } from '#store/migrations/migration.ts'
import { type Opening, openWorkshop } from '#store/open.ts'
import { AT, act, newStove, open, refusal, value } from './acts.ts'

let root: string
let folder: string
let file: string
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'tinwright-opening-'))
})
beforeEach((context) => {
  folder = join(root, context.task.id)
  mkdirSync(folder)
  file = join(folder, 'workshop')
})
afterAll(() => rmSync(root, { recursive: true }))

const opening: Opening = { at: AT, beginAs: 'workshop-1' }

/** Every file in the folder, byte for byte. */
const bytesThere = (of = folder) =>
  Object.fromEntries(
    readdirSync(of)
      .sort()
      .map((name) => [
        name,
        statSync(join(of, name)).isFile() ? readFileSync(join(of, name), 'base64') : '/',
      ]),
  )

/** Refused with a sentence, and nothing there is changed by a byte. */
const refusedUntouched = async (place = file, own: Partial<Opening> = {}) => {
  const before = bytesThere(dirname(place))
  const said = await refusal(openWorkshop({ file: place }, { ...opening, ...own }))
  expect(bytesThere(dirname(place))).toEqual(before)
  expect(said.sentence).toMatch(/^[^\n]+\.$/)
  return said
}

const begin = async (): Promise<void> => {
  const shop = await open({ file })
  for (let n = 0; n < 20; n++) await value(shop.create(act(), newStove({ text: 'x'.repeat(9000) })))
  await shop.close()
}

describe('opening a workshop', () => {
  it('begins one where there is none, folders and all, in the way it has to be kept', async () => {
    const deep = join(folder, 'a', 'b', 'workshop')
    const shop = await open({ file: deep })
    expect(await value(shop.about())).toEqual({
      id: 'workshop-1',
      format: 1,
      created: AT,
      demo: null,
      sequence: 0,
      place: deep,
    })
    expect(readdirSync(dirname(deep)).filter((name) => name.includes('part'))).toEqual([])
    await shop.close()
    expect(readdirSync(dirname(deep))).toEqual(['workshop'])
    const database = new DatabaseSync(deep)
    expect(database.prepare('pragma journal_mode').get()).toEqual({ journal_mode: 'wal' })
    database.close()
  })

  it('refuses one that is not there when it has to be', async () => {
    expect(await refusedUntouched(file, { beginAs: null })).toMatchObject({
      code: 'missing',
      sentence: `There is no workshop at ${file}. Look at the name and the folder.`,
    })
  })

  it('refuses a folder, a text, an empty file and a database of another program', async () => {
    mkdirSync(file)
    expect(await refusedUntouched()).toMatchObject({
      code: 'not a workshop',
      sentence: `${file} is no workshop: it is a folder. Nothing was changed. Name another file.`,
    })
    const others: readonly (readonly [string, string, string])[] = [
      ['text', 'a stove is a stove', 'its first bytes'],
      ['empty', '', 'it is empty'],
      ['stub', 'SQLite', 'its first bytes'],
    ]
    for (const [name, text, why] of others) {
      writeFileSync(join(folder, name), text)
      const said = await refusedUntouched(join(folder, name))
      expect(said.code).toBe('not a workshop')
      expect(said.sentence).toContain(why)
    }
    const other = join(folder, 'other')
    const database = new DatabaseSync(other)
    database.exec('create table stoves (name text)')
    database.close()
    expect((await refusedUntouched(other)).sentence).toContain('it is a database of another program')
    expect(
      await refusedUntouched(join(folder, 'text', 'workshop'.replace('/', ''))).catch(() => null),
    ).toBeNull()
  })

  it('refuses a newer one, and says which', async () => {
    await begin()
    const database = new DatabaseSync(file)
    database.exec('pragma user_version = 9; update workshop set format = 9')
    database.close()
    expect(await refusedUntouched()).toEqual({
      code: 'newer',
      sentence: `The workshop ${file} is newer than this program: format 9, this reads up to 1. Nothing was changed. Open it with the newer program, or update this one.`,
    })
  })

  it('writes nothing more once a newer program has brought it up to date', async () => {
    const shop = await open({ file })
    const database = new DatabaseSync(file)
    database.exec('update workshop set format = 2')
    database.close()
    expect(await refusal(shop.create(act(), newStove()))).toMatchObject({ code: 'newer' })
    expect(await value(shop.list())).toEqual([])
    await shop.close()
  })

  it('refuses a damaged one: cut short, overwritten, only a header', async () => {
    await begin()
    const { size } = statSync(file)
    const spoil = (name: string, how: (path: string) => void): string => {
      const path = join(folder, name)
      copyFileSync(file, path)
      how(path)
      return path
    }
    const spoilt = [
      spoil('half', (path) => truncateSync(path, size >> 1)),
      spoil('header', (path) => truncateSync(path, 4096)),
      spoil('stub', (path) => truncateSync(path, 60)),
      spoil('noise', (path) => {
        const bytes = readFileSync(path)
        bytes.fill(0xa5, 4096, 4096 * 12)
        writeFileSync(path, bytes)
      }),
    ]
    for (const path of spoilt) {
      const said = await refusedUntouched(path)
      expect(said.code, path).toBe('damaged')
      expect(said.sentence).toMatch(/is damaged: .*Nothing was changed/)
    }
  })

  it('notices a revision whose letters changed on the drive, and hands out the others', async () => {
    const shop = await open({ file })
    const [good, bad] = [newStove({ text: 'whole' }), newStove({ text: 'Eight holes of 6 mm' })]
    await value(shop.create(act(), good))
    await value(shop.create(act(), bad))
    await shop.close()
    const bytes = readFileSync(file)
    const at = bytes.indexOf('Eight holes')
    bytes.write('Sixty', at)
    writeFileSync(file, bytes)
    const again = await open({ file })
    expect(await refusal(again.open(bad.id))).toMatchObject({ code: 'damaged' })
    expect((await value(again.open(good.id))).revision.text).toBe('whole')
    expect(await value(again.verify())).toEqual([expect.stringContaining(bad.revision)])
    expect(await refusal(again.exportArchive(AT))).toMatchObject({ code: 'damaged' })
    await again.close()
  })

  it('refuses a network drive before anything is made there', async () => {
    const nfs = { typeOf: () => 0x6969 }
    expect(await refusedUntouched(file, nfs)).toMatchObject({
      code: 'network drive',
      sentence: expect.stringContaining('lies on a network drive (NFS)'),
    })
    await begin()
    expect(await refusedUntouched(file, nfs)).toMatchObject({ code: 'network drive' })
    expect(networkDrive(folder, () => 0xef53)).toBeNull()
    expect(networkDrive(folder, () => null)).toBeNull()
  })

  it('refuses a place where nothing can be written', async (context) => {
    // The system lets its superuser write anywhere.
    if (process.getuid?.() === 0) process.seteuid?.(65534)
    if (process.geteuid?.() === 0 || process.platform === 'win32') context.skip('needs a plain user')
    const own = mkdtempSync(join(tmpdir(), 'tinwright-locked-'))
    try {
      const path = join(own, 'workshop')
      const shop = await open({ file: path })
      await shop.close()
      chmodSync(own, 0o555)
      expect(await refusedUntouched(path)).toMatchObject({ code: 'read-only' })
      expect(await refusedUntouched(join(own, 'new'))).toMatchObject({ code: 'read-only' })
      expect((await refusal(openWorkshop({ file: join(own, 'a', 'b') }, opening))).code).toBe('read-only')
      chmodSync(own, 0o755)
      chmodSync(path, 0o444)
      expect(await refusedUntouched(path)).toMatchObject({ code: 'read-only' })
    } finally {
      chmodSync(own, 0o755)
      rmSync(own, { recursive: true })
      if (process.getuid?.() === 0) process.seteuid?.(0)
    }
  })

  it('looks through the log of a program that was killed', async () => {
    const shop = await open({ file })
    const stove = await value(shop.create(act(), newStove()))
    // As it lies on the drive at this moment: a file, its log, and nothing closed.
    const killed = join(folder, 'killed')
    for (const end of ['', '-wal']) copyFileSync(file + end, killed + end)
    await shop.close()
    const again = await open({ file: killed })
    expect(await value(again.list())).toEqual([stove])
    await again.close()
  })

  it('waits for another writer, but not without end, and goes on when there is none', async () => {
    const shop = await open({ file }, { patience: 100 })
    const other = new DatabaseSync(file)
    other.exec('begin immediate')
    const [step, stove] = [act(), newStove()]
    expect(await refusal(shop.create(step, stove))).toMatchObject({
      code: 'busy',
      sentence: expect.stringContaining('Another program is writing to the workshop'),
    })
    expect(await value(shop.list())).toEqual([])
    await shop.close()
    const patient = await open({ file }, { patience: 60_000 })
    setTimeout(() => other.exec('commit'), 20)
    await value(patient.create(step, stove))
    other.close()
    await patient.close()
  })
})

describe('an older workshop', () => {
  const withMore: readonly Migration[] = [
    ...MIGRATIONS,
    {
      format: 2,
      up: async (db) => {
        await db.schema.alterTable('documents').addColumn('colour', 'text').execute()
      },
    },
  ]
  const broken: readonly Migration[] = [
    ...withMore.slice(0, 1),
    {
      format: 2,
      up: async (db) => {
        await db.schema.alterTable('documents').addColumn('colour', 'text').execute()
        throw new Error('a fault of ours')
      },
    },
  ]

  it('is copied beside itself, then brought up to date, with all that is in it', async () => {
    await begin()
    const before = await open({ file })
    const all = await value(before.list())
    await before.close()
    const after = await open({ file }, { migrations: withMore })
    expect(await value(after.list())).toEqual(all)
    expect((await value(after.about())).format).toBe(2)
    await value(after.create(act(), newStove()))
    await after.close()
    const copy = readdirSync(folder).find((name) => name.endsWith('.backup')) ?? ''
    expect(copy).toBe('workshop.format-1.20310517T140500Z.backup')
    const old = await open({ file: join(folder, copy) })
    expect(await value(old.list())).toEqual(all)
    await old.close()
    expect((await refusedUntouched()).code).toBe('newer')
  })

  it('stays as it is when bringing it up to date fails half way', async () => {
    await begin()
    await expect(openWorkshop({ file }, { ...opening, migrations: broken })).rejects.toThrow(
      'a fault of ours',
    )
    const still = await open({ file })
    expect((await value(still.about())).format).toBe(1)
    expect(await value(still.list())).toHaveLength(20)
    await still.close()
  })

  it('is brought up to date once by two programs at once', async () => {
    await begin()
    const both = await Promise.all([
      open({ file }, { migrations: withMore }),
      open({ file }, { migrations: withMore }),
    ])
    for (const shop of both) {
      expect((await value(shop.about())).format).toBe(2)
      await shop.close()
    }
  })
})
