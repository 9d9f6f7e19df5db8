import { describe, expect, it } from 'vitest'
import { demoFiles } from '#cli/bench/demoFiles.ts'
import { AT, act, newStove, refusal, value } from '../acts.ts'
import { EXAMPLES } from './examples.ts'
import type { Rig } from './rig.ts'

const demo = demoFiles(EXAMPLES)

export const demoSuite = ({ workshop }: Rig): void => {
  describe('the demo', () => {
    it('is laid in once, into a workshop in which nothing was ever made', async () => {
      const shop = await workshop()
      const { added } = await value(shop.loadDemo(act('demo'), demo))
      expect(added.filter(({ kind }) => kind === 'stove').map(({ name }) => name)).toEqual([
        'Greylag',
        'Redshank',
        'Heron',
        'Heron A, as planned',
        'Heron B, wider bore',
        'Heron C, taller riser',
        'Heron D, narrow windows',
        'Heron E, 24 air holes',
        'Heron F, 12 intake holes',
      ])
      expect(added.filter(({ kind }) => kind === 'trial')).toHaveLength(24)
      const times = added.map(({ created }) => created)
      expect(times.filter((at) => !at.startsWith(AT.slice(0, -1)))).toEqual([])
      expect(times).toEqual(times.toSorted())
      expect((await value(shop.about())).demo).toBe(AT)
      expect(await value(shop.loadDemo(act('demo'), demo))).toEqual({ added: [] })
      for (const { id, version } of added) await value(shop.remove(act(), id, version))
      expect(await value(shop.loadDemo(act('demo'), demo))).toEqual({ added: [] })
      expect(await value(shop.list())).toEqual([])
    })

    it('holds the series as a family, each burn beside the stove that was burned', async () => {
      const shop = await workshop()
      const { added } = await value(shop.loadDemo(act('demo'), demo))
      const named = new Map(added.map((head) => [head.name, head]))
      const heron = named.get('Heron')
      const family = await value(shop.family(named.get('Heron B, wider bore')?.id ?? ''))
      const letters = 'ABCDEF'
        .split('')
        .map((letter) => added.find(({ name }) => name.startsWith(`Heron ${letter}, `)))
      expect(family.map(({ id, parents }) => [id, parents])).toEqual([
        [heron?.head, []],
        ...letters.map((one, i) => [one?.head, [i === 0 ? heron?.head : letters[0]?.head]]),
      ])
      for (const { note } of family.slice(1)) expect(note).not.toMatch(/^(From the file|$)/)
      for (const { aboutDocument, aboutRevision, id } of added.filter(({ kind }) => kind === 'trial')) {
        const said = JSON.parse((await value(shop.open(id))).revision.text).stove
        expect(named.get(`${said.name} ${said.variant}`)).toMatchObject({
          id: aboutDocument,
          head: aboutRevision,
        })
      }
      for (const stove of letters)
        expect(await value(shop.list({ kinds: ['trial'], aboutDocument: stove?.id ?? '' }))).toHaveLength(4)
    })

    it("is in nobody's undo, and comes back out of an archive", async () => {
      const shop = await workshop()
      await value(shop.loadDemo(act('demo'), demo))
      expect(await value(shop.undoState('window'))).toEqual({ undo: null, redo: null })
      const other = await workshop()
      await value(other.importArchive(act(), (await value(shop.exportArchive(AT))).bytes))
      const heads = async (one: typeof shop) =>
        (await value(one.list()))
          .map(({ id, head, aboutRevision, created }) => ({ id, head, aboutRevision, created }))
          .toSorted((a, b) => (a.created < b.created ? -1 : 1))
      expect(await heads(other)).toEqual(await heads(shop))
    })

    it('is laid in whole or not at all', async () => {
      const shop = await workshop()
      const turned = [...demo].reverse()
      expect((await refusal(shop.loadDemo(act('demo'), turned))).code).toBe('unknown')
      const orphan = demo.filter(({ name }) => name !== 'heron-a.stove.json')
      expect((await refusal(shop.loadDemo(act('demo'), orphan))).code).toBe('bad input')
      expect(await value(shop.list({ deleted: true }))).toEqual([])
      expect((await value(shop.about())).demo).toBeNull()
    })

    it("leaves a maker's own workshop as it is", async () => {
      const shop = await workshop()
      await value(shop.create(act(), newStove()))
      await value(shop.undo(act()))
      expect(await value(shop.loadDemo(act('demo'), demo))).toEqual({ added: [] })
      expect((await value(shop.about())).demo).toBeNull()
    })
  })
}
