import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import type { Workshop } from '#store/workshop.ts'
import { AT, act, fresh, newStove, refusal, value } from '../acts.ts'
import { example } from './examples.ts'
import type { Rig } from './rig.ts'

const demo = ['heron.stove.json', 'redshank.stove.json', 'greylag.stove.json', 'shelf.json'].map(example)

const png = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1, 2, 3])

/** A workshop with something of everything in it. */
const furnish = async (shop: Workshop): Promise<void> => {
  await value(shop.loadDemo(act('demo'), demo))
  const stove = newStove({ name: 'Con' })
  await value(shop.create(act(), stove))
  const save = { document: stove.id, base: stove.revision, text: 'later ½', note: 'more holes' }
  await value(shop.save(act(), { ...save, revision: fresh('revision') }))
  await value(shop.create(act(), newStove({ name: 'Con', parents: [stove.revision] })))
  const gone = await value(shop.create(act(), newStove({ name: '木' })))
  await value(shop.remove(act(), gone.id, gone.version))
  const trial = newStove({ kind: 'trial', name: 'first burn', aboutRevision: stove.revision })
  await value(shop.create(act(), trial))
  const event = { id: fresh('event'), at: AT, body: '{}' }
  const taken = { id: fresh('event'), at: AT, body: '{}', replaces: event.id, withdrawn: true }
  await value(shop.logEvents({ trial: trial.id, client: 'phone', at: AT, events: [event, taken] }))
  const photo = { id: fresh('photo'), revision: fresh('revision'), name: 'flame', bytes: png }
  await value(shop.attach(act(), { ...photo, aboutDocument: trial.id }))
}

/** All that an archive carries, without what belongs to one workshop only. */
const contents = async (shop: Workshop) => {
  const heads = await value(shop.list({ deleted: true }))
  return Promise.all(
    heads.map(async ({ id, kind, name, head, deleted, aboutDocument, aboutRevision, created }) => ({
      ...{ id, kind, name, head, deleted, aboutDocument, aboutRevision, created },
      text: (await value(shop.open(id))).revision.text,
      history: await value(shop.history(id)),
      events:
        kind === 'trial'
          ? (await value(shop.events(id))).map(({ sequence: _, ...event }) => event)
          : undefined,
      bytes: kind === 'photo' ? [...(await value(shop.photo(id))).bytes] : undefined,
    })),
  )
}

const NONE = { added: 0, renewed: 0, revisions: 0, events: 0, photos: 0, apart: [], strange: [] }

const withFile = (archive: Uint8Array, path: string, content: string | null): Uint8Array => {
  const files = unzipSync(archive)
  if (content === null) delete files[path]
  else files[path] = strToU8(content)
  return zipSync(files)
}

const changedManifest = (archive: Uint8Array, change: (manifest: Record<string, unknown[]>) => void) => {
  const manifest = JSON.parse(strFromU8(unzipSync(archive)['manifest.json'] as Uint8Array))
  change(manifest)
  return withFile(archive, 'manifest.json', JSON.stringify(manifest))
}

export const archiveSuite = ({ workshop }: Rig): void => {
  describe('a whole workshop as one archive', () => {
    it('brings everything into an empty workshop, and the same again from there', async () => {
      const [from, to] = [await workshop(), await workshop()]
      await furnish(from)
      const archive = await value(from.exportArchive(AT))
      const report = await value(to.importArchive(act(), archive.bytes))
      expect(report).toEqual({
        ...NONE,
        added: archive.documents,
        revisions: archive.revisions,
        events: 2,
        photos: 1,
        kept: 0,
      })
      expect(await contents(to)).toEqual(await contents(from))
      expect(await value(to.verify())).toEqual([])
      const again = unzipSync((await value(to.exportArchive(AT))).bytes)
      const first = unzipSync(archive.bytes)
      expect(Object.keys(again).sort()).toEqual(Object.keys(first).sort())
      for (const path of Object.keys(first))
        if (path !== 'manifest.json') expect(again[path], path).toEqual(first[path])
    })

    it('is plain files that a person finds their way in, on any system', async () => {
      const shop = await workshop()
      await furnish(shop)
      const files = unzipSync((await value(shop.exportArchive(AT))).bytes)
      const paths = Object.keys(files)
      expect(paths).toContain('stoves/redshank/001.stove.json')
      expect(paths).toContain('stoves/con-2/002.stove.json')
      expect(paths).toContain('stoves/con-3/001.stove.json')
      expect(paths).toContain('stoves/stove/001.stove.json')
      expect(paths).toContain('trials/first-burn/events.json')
      expect(strFromU8(files['stoves/redshank/001.stove.json'] as Uint8Array)).toBe(demo[1]?.text)
      expect(strFromU8(files['READ-ME.txt'] as Uint8Array)).toContain('tinwright workshop import')
    })

    it('changes nothing where everything is there already', async () => {
      const shop = await workshop()
      await furnish(shop)
      const before = await contents(shop)
      const { bytes, documents } = await value(shop.exportArchive(AT))
      const state = await value(shop.undoState('window'))
      expect(await value(shop.importArchive(act(), bytes))).toEqual({ ...NONE, kept: documents })
      expect(await contents(shop)).toEqual(before)
      expect(await value(shop.undoState('window'))).toEqual(state)
      expect((await value(shop.exportArchive(AT))).bytes).toEqual(bytes)
    })

    it('merges with what was done meanwhile, in both', async () => {
      const [mine, theirs] = [await workshop(), await workshop()]
      const [ahead, behind, apart] = [newStove({ name: 'ahead' }), newStove({ name: 'behind' }), newStove()]
      for (const one of [ahead, behind, apart]) await value(mine.create(act(), one))
      await value(theirs.importArchive(act(), (await value(mine.exportArchive(AT))).bytes))
      const save = (shop: Workshop, stove: typeof ahead, revision: string) =>
        value(
          shop.save(act(), { document: stove.id, base: stove.revision, revision, text: revision, note: '' }),
        )
      await save(theirs, ahead, `${ahead.id}-theirs`)
      await save(mine, behind, `${behind.id}-mine`)
      await save(mine, apart, `${apart.id}-mine`)
      await save(theirs, apart, `${apart.id}-theirs`)
      await value(theirs.create(act(), newStove({ name: 'new there' })))
      const { bytes } = await value(theirs.exportArchive(AT))
      const report = await value(mine.importArchive(act(), bytes))
      expect(report).toEqual({ ...NONE, added: 1, renewed: 1, kept: 1, revisions: 3, apart: ['Redshank'] })
      const heads = (await value(mine.list())).map(({ head }) => head)
      expect(heads.slice(0, 3)).toEqual([`${ahead.id}-theirs`, `${behind.id}-mine`, `${apart.id}-mine`])
      expect((await value(mine.revision(`${apart.id}-theirs`))).text).toBe(`${apart.id}-theirs`)
      expect(await value(mine.importArchive(act(), bytes))).toMatchObject({ added: 0, revisions: 0 })
      await value(mine.undo(act()))
      expect((await value(mine.list())).map(({ head }) => head)).toEqual([
        ahead.revision,
        `${behind.id}-mine`,
        `${apart.id}-mine`,
      ])
    })

    it('brings back what was taken away here, and one undo takes it away again', async () => {
      const shop = await workshop()
      const stove = await value(shop.create(act(), newStove()))
      const { bytes } = await value(shop.exportArchive(AT))
      await value(shop.remove(act(), stove.id, stove.version))
      expect(await value(shop.importArchive(act(), bytes))).toMatchObject({ renewed: 1, added: 0 })
      expect(await value(shop.list())).toHaveLength(1)
      await value(shop.undo(act()))
      expect(await value(shop.list())).toEqual([])
    })

    it('is refused when it is spoilt, with a sentence, and nothing of it is kept', async () => {
      const [from, shop] = [await workshop(), await workshop()]
      await furnish(from)
      const { bytes } = await value(from.exportArchive(AT))
      const path = 'stoves/redshank/001.stove.json'
      const spoilt: readonly (readonly [string, Uint8Array, string])[] = [
        ['no zip', strToU8('{}'), 'not a workshop'],
        ['nothing', new Uint8Array(), 'not a workshop'],
        ['no manifest', withFile(bytes, 'manifest.json', null), 'not a workshop'],
        ['another manifest', withFile(bytes, 'manifest.json', '{"format":"x"}'), 'not a workshop'],
        ['newer', withFile(bytes, 'manifest.json', '{"format":"tinwright/archive@9"}'), 'newer'],
        ['no JSON', withFile(bytes, 'manifest.json', '{'), 'damaged'],
        ['a file missing', withFile(bytes, path, null), 'damaged'],
        ['a file changed', withFile(bytes, path, '{}'), 'damaged'],
        ['cut short', bytes.subarray(0, bytes.length >> 1), 'damaged'],
        ['leads out', withFile(bytes, '../outside.json', '{}'), 'bad input'],
        ['leads out', withFile(bytes, 'stoves/../../outside', '{}'), 'bad input'],
        ['leads out', withFile(bytes, '/etc/passwd', '{}'), 'bad input'],
        ['leads out', withFile(bytes, 'C:\\outside', '{}'), 'bad input'],
        ['named twice', changedManifest(bytes, (m) => m.documents?.push(m.documents[0])), 'damaged'],
        ['no head', changedManifest(bytes, (m) => m.revisions?.pop()), 'damaged'],
        ['no documents', changedManifest(bytes, (m) => m.documents?.splice(0)), 'damaged'],
        ['an unknown key', changedManifest(bytes, (m) => Object.assign(m, { extra: 1 })), 'damaged'],
        [
          'a circle',
          changedManifest(bytes, (m) => {
            const [a, b] = m.revisions as { id: string; parents: string[] }[]
            a?.parents.push(b?.id ?? '')
            b?.parents.push(a?.id ?? '')
          }),
          'damaged',
        ],
        [
          'a bad id',
          changedManifest(bytes, (m) => Object.assign(m.documents?.[0] as object, { name: 'a\nb' })),
          'bad input',
        ],
      ]
      for (const [what, archive, code] of spoilt) {
        const said = await refusal(shop.importArchive(act(), archive))
        expect(said.code, `${what}: ${said.sentence}`).toBe(code)
        expect(said.sentence, what).toMatch(/Nothing was changed/)
      }
      expect(await value(shop.list({ deleted: true }))).toEqual([])
      expect((await value(shop.exportArchive(AT))).revisions).toBe(0)
    })

    it('is refused whole when one revision contradicts what is here', async () => {
      const [from, shop] = [await workshop(), await workshop()]
      const stove = newStove({ text: 'theirs' })
      await value(from.create(act(), newStove()))
      await value(from.create(act(), stove))
      await value(shop.create(act(), { ...stove, text: 'mine' }))
      const { bytes } = await value(from.exportArchive(AT))
      expect(await refusal(shop.importArchive(act(), bytes))).toMatchObject({ code: 'conflict' })
      expect(await value(shop.list())).toHaveLength(1)
      expect((await value(shop.open(stove.id))).revision.text).toBe('mine')
    })

    it('tells of files that belong to nothing, and of edits that are not in it', async () => {
      const shop = await workshop()
      const stove = await value(shop.create(act(), newStove()))
      const edit = { document: stove.id, client: 'w', at: AT, number: 0, base: stove.head, label: 'x' }
      await value(shop.autosave({ ...edit, text: 'edited' }))
      const archive = await value(shop.exportArchive(AT))
      expect(archive.unsaved).toBe(1)
      const more = withFile(archive.bytes, '__MACOSX/._x', 'x')
      expect((await value(shop.importArchive(act(), more))).strange).toEqual(['__MACOSX/._x'])
    })
  })
}
