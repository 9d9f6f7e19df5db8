import { describe, expect, it } from 'vitest'
import { AT, act, newStove, refusal, value } from '../acts.ts'
import type { Rig } from './rig.ts'

export const documentsSuite = ({ workshop, place }: Rig) =>
  describe('documents and revisions', () => {
    it('gives text back exactly as written', async () => {
      const shop = await workshop()
      const text = '{\r\n\t"a": "½ in, 8 mm ± 0.2, 木 🔥",  "b":1 }\n\n'
      const { id, head } = await value(shop.create(act(), newStove({ text, note: 'first “cut”' })))
      const opened = await value(shop.open(id))
      expect(opened.revision).toMatchObject({ id: head, text, note: 'first “cut”', parents: [], created: AT })
      expect((await value(shop.revision(head))).text).toBe(text)
    })

    it('keeps every revision with its parents, and the newest counts', async () => {
      const shop = await workshop()
      const first = newStove()
      const { id } = await value(shop.create(act(), first))
      for (const [base, revision] of [
        [first.revision, `${id}-b`],
        [`${id}-b`, `${id}-c`],
      ] as const)
        await value(
          shop.save(act(), { document: id, base, revision, text: revision, note: `to ${revision}` }),
        )
      const history = await value(shop.history(id))
      expect(history.map((one) => [one.id, one.parents])).toEqual([
        [first.revision, []],
        [`${id}-b`, [first.revision]],
        [`${id}-c`, [`${id}-b`]],
      ])
      expect((await value(shop.open(id))).revision.text).toBe(`${id}-c`)
      expect((await value(shop.revision(first.revision))).text).toBe(first.text)
    })

    it('refuses to save over what another window saved, in a sentence, and keeps both', async () => {
      const shop = await workshop()
      const first = newStove()
      const { id } = await value(shop.create(act('one'), first))
      const save = (client: string, revision: string) =>
        shop.save(act(client), { document: id, base: first.revision, revision, text: revision, note: 'mine' })
      await value(save('one', `${id}-one`))
      const said = await refusal(save('two', `${id}-two`))
      expect(said).toEqual({
        code: 'conflict',
        sentence: `“Redshank” was saved elsewhere since this edit began (${AT}, “mine”). Neither was overwritten. Look at the other one first, or keep this one as a variant.`,
      })
      const variant = newStove({ name: 'Redshank, mine', parents: [first.revision] })
      await value(shop.create(act('two'), variant))
      const family = await value(shop.family(id))
      expect(family.map((one) => one.id)).toEqual([first.revision, `${id}-one`, variant.revision])
      expect(await value(shop.family(variant.id))).toEqual(family)
    })

    it('keeps strangers out of a family', async () => {
      const shop = await workshop()
      const [one, other] = [newStove(), newStove()]
      await value(shop.create(act(), one))
      await value(shop.create(act(), other))
      expect((await value(shop.family(one.id))).map(({ id }) => id)).toEqual([one.revision])
    })

    it('does a step once, however often it is asked for', async () => {
      const shop = await workshop()
      const step = act()
      const stove = newStove()
      const first = await value(shop.create(step, stove))
      expect(await value(shop.create(step, stove))).toEqual(first)
      expect(await value(shop.list())).toEqual([first])
      expect(await refusal(shop.create(step, newStove()))).toMatchObject({ code: 'conflict' })
    })

    it('never gives an id twice', async () => {
      const shop = await workshop()
      const stove = newStove()
      await value(shop.create(act(), stove))
      expect(await refusal(shop.create(act(), { ...stove, revision: 'other' }))).toMatchObject({
        code: 'conflict',
      })
      expect(await refusal(shop.create(act(), newStove({ revision: stove.revision })))).toMatchObject({
        code: 'conflict',
        sentence: expect.stringContaining('never written over'),
      })
      expect(await value(shop.list({ deleted: true }))).toHaveLength(1)
    })

    it('takes away without losing, and brings back', async () => {
      const shop = await workshop()
      const { id, version, head } = await value(shop.create(act(), newStove()))
      const gone = await value(shop.remove(act(), id, version))
      expect(await value(shop.list())).toEqual([])
      expect(await value(shop.list({ deleted: true }))).toEqual([gone])
      expect((await value(shop.open(id))).revision.id).toBe(head)
      const base = { document: id, base: head, revision: `${id}-2`, text: '', note: '' }
      expect(await refusal(shop.save(act(), base))).toMatchObject({ code: 'conflict' })
      await value(shop.restore(act(), id, gone.version))
      expect((await value(shop.list())).map((one) => one.id)).toEqual([id])
    })

    it('refuses a change of what was changed since', async () => {
      const shop = await workshop()
      const { id, version } = await value(shop.create(act(), newStove()))
      await value(shop.rename(act(), id, version, 'Heron'))
      for (const again of [
        shop.rename(act(), id, version, 'Greylag'),
        shop.remove(act(), id, version),
        shop.restore(act(), id, version),
      ])
        expect(await refusal(again)).toMatchObject({
          code: 'conflict',
          sentence: expect.stringContaining('“Heron” was changed elsewhere'),
        })
    })

    it('lists by kind and by what a thing belongs to', async () => {
      const shop = await workshop()
      const stove = newStove()
      await value(shop.create(act(), stove))
      await value(shop.create(act(), newStove({ kind: 'can', name: 'juice can', text: '{}' })))
      const trial = newStove({ kind: 'trial', name: 'first burn', aboutRevision: stove.revision })
      await value(shop.create(act(), trial))
      expect((await value(shop.list({ kinds: ['can', 'pot'] }))).map(({ name }) => name)).toEqual([
        'juice can',
      ])
      expect(await value(shop.list({ kinds: [] }))).toEqual([])
      const burns = await value(shop.list({ aboutDocument: stove.id }))
      expect(burns).toMatchObject([{ name: 'first burn', aboutRevision: stove.revision }])
    })

    it('says what it will not keep, and keeps nothing of it', async () => {
      const shop = await workshop()
      const wrong = [
        newStove({ name: ' ' }),
        newStove({ name: 'two\nlines' }),
        newStove({ name: 'x'.repeat(121) }),
        newStove({ id: '../etc' }),
        newStove({ revision: '' }),
        newStove({ text: 'a\0b' }),
        newStove({ text: 'half \ud83d' }),
        newStove({ text: 'x'.repeat(1_000_001) }),
        newStove({ note: 'x'.repeat(4001) }),
        newStove({ parents: ['nobody'] }),
        newStove({ kind: 'trial' }),
        newStove({ kind: 'trial', aboutRevision: 'nobody' }),
        newStove({ kind: 'photo', aboutDocument: 'nobody' }),
        newStove({ kind: 'kettle' as never }),
      ]
      for (const one of wrong) {
        const { code, sentence } = await refusal(shop.create(act(), one))
        expect(['bad input', 'too large', 'unknown']).toContain(code)
        expect(sentence).toMatch(/^[A-Zt].*\.$/s)
      }
      for (const step of [
        { ...act(), at: 'today' },
        { ...act(), at: '2031-02-31T99:00:00Z' },
        { ...act(), client: '' },
        { ...act(), id: 'a b' },
      ])
        expect(await refusal(shop.create(step, newStove()))).toMatchObject({ code: 'bad input' })
      expect(await value(shop.list({ deleted: true }))).toEqual([])
      expect(await value(shop.undoState('window'))).toEqual({ undo: null, redo: null })
    })

    it('says that it does not know', async () => {
      const shop = await workshop()
      for (const answer of [shop.open('x'), shop.revision('x'), shop.history('x'), shop.family('x')])
        expect(await refusal(answer)).toMatchObject({ code: 'unknown' })
    })

    it('is all there when it is opened again', async () => {
      const where = await place()
      const first = await workshop(where)
      const stove = await value(first.create(act(), newStove()))
      await first.close()
      const second = await workshop(where, { beginAs: null })
      expect(await value(second.list())).toEqual([stove])
      expect(await value(second.verify())).toEqual([])
    })

    it('keeps settings, with an undo like everything else', async () => {
      const shop = await workshop()
      expect(await value(shop.setting('units'))).toBeNull()
      const { head } = await value(shop.setSetting(act(), 'units', null, 'mm'))
      expect(await refusal(shop.setSetting(act(), 'units', null, 'inch'))).toMatchObject({ code: 'conflict' })
      await value(shop.setSetting(act(), 'units', head, 'both'))
      expect(await value(shop.setting('units'))).toMatchObject({ text: 'both' })
      await value(shop.undo(act()))
      expect(await value(shop.setting('units'))).toEqual({ text: 'mm', head })
      await value(shop.undo(act()))
      expect(await value(shop.setting('units'))).toBeNull()
      await value(shop.setSetting(act(), 'units', null, 'inch'))
      expect(await value(shop.setting('units'))).toMatchObject({ text: 'inch' })
    })
  })
