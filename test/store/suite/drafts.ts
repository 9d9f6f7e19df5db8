import { describe, expect, it } from 'vitest'
import { KEPT_ENTRIES } from '#store/drafts/drafts.ts'
import type { Autosave, Workshop } from '#store/workshop.ts'
import { AT, act, newStove, refusal, value } from '../acts.ts'
import type { Rig } from './rig.ts'

const edit = (document: string, own: Partial<Autosave> = {}): Autosave => ({
  document,
  client: 'window',
  at: AT,
  number: 0,
  base: null,
  text: 'edited',
  label: 'move the upper row',
  ...own,
})

const begun = async (shop: Workshop) => {
  const stove = newStove({ text: 'as saved' })
  const { id } = await value(shop.create(act(), stove))
  const draft = await value(shop.autosave(edit(id, { base: stove.revision })))
  return { id, base: stove.revision, draft }
}

export const draftsSuite = ({ workshop, place }: Rig) =>
  describe('edits in progress', () => {
    it('are there after a reload, with their undo', async () => {
      const where = await place()
      const first = await workshop(where)
      const { id, draft } = await begun(first)
      await first.close()
      const shop = await workshop(where)
      expect(await value(shop.draft(id, 'window'))).toEqual(draft)
      expect(draft).toMatchObject({
        text: 'edited',
        undo: 'move the upper row',
        redo: null,
        unsaved: true,
        number: 1,
      })
      expect(await value(shop.drafts())).toEqual([draft])
    })

    it('go back to what they began from and forth again', async () => {
      const shop = await workshop()
      const { id, base } = await begun(shop)
      await value(shop.autosave(edit(id, { base, number: 1, text: 'twice', label: 'change the bit' })))
      const where = (number: number) => ({ document: id, client: 'window', at: AT, number })
      expect(await value(shop.undoEdit(where(2)))).toMatchObject({ text: 'edited', redo: 'change the bit' })
      expect(await value(shop.undoEdit(where(3)))).toMatchObject({
        text: 'as saved',
        undo: null,
        unsaved: false,
      })
      expect(await refusal(shop.undoEdit(where(4)))).toMatchObject({ code: 'nothing left' })
      expect(await value(shop.redoEdit(where(4)))).toMatchObject({ text: 'edited' })
      const other = await value(shop.autosave(edit(id, { base, number: 5, text: 'another way' })))
      expect(other).toMatchObject({ undo: 'move the upper row', redo: null })
      expect(await refusal(shop.redoEdit(where(6)))).toMatchObject({ code: 'nothing left' })
    })

    it('of two windows do not know each other', async () => {
      const shop = await workshop()
      const { id, base, draft } = await begun(shop)
      await value(shop.autosave(edit(id, { base, client: 'other', text: 'theirs' })))
      expect(await value(shop.draft(id, 'window'))).toEqual(draft)
      expect((await value(shop.drafts(id))).map(({ client, text }) => [client, text])).toEqual([
        ['window', 'edited'],
        ['other', 'theirs'],
      ])
    })

    it('of a duplicated tab are refused instead of written over', async () => {
      const shop = await workshop()
      const { id, base } = await begun(shop)
      await value(shop.autosave(edit(id, { base, number: 1, text: 'from one tab' })))
      const said = await refusal(shop.autosave(edit(id, { base, number: 1, text: 'from its copy' })))
      expect(said).toMatchObject({ code: 'conflict' })
      expect(said.sentence).toContain('Another window has gone on with this very edit')
      expect(await refusal(shop.autosave(edit(id, { base, text: 'from a third' })))).toEqual(said)
      expect(await value(shop.draft(id, 'window'))).toMatchObject({ text: 'from one tab' })
    })

    it('are kept once when the answer was lost', async () => {
      const shop = await workshop()
      const { id, base } = await begun(shop)
      const again = edit(id, { base, number: 1, text: 'again' })
      const kept = await value(shop.autosave(again))
      expect(await value(shop.autosave(again))).toEqual(kept)
    })

    it('go on from the revision they are saved as, with their undo', async () => {
      const shop = await workshop()
      const { id, base } = await begun(shop)
      const wanted = {
        document: id,
        base,
        revision: `${id}-2`,
        text: 'edited',
        note: '',
        draft: { number: 1 },
      }
      await value(shop.save(act(), wanted))
      const draft = await value(shop.draft(id, 'window'))
      expect(draft).toMatchObject({
        base: `${id}-2`,
        number: 2,
        unsaved: false,
        undo: 'move the upper row',
      })
      const back = { document: id, client: 'window', at: AT, number: 2 }
      expect(await value(shop.undoEdit(back))).toMatchObject({ text: 'as saved', unsaved: true })
    })

    it('are not saved as something they do not say', async () => {
      const shop = await workshop()
      const { id, base } = await begun(shop)
      const wanted = {
        document: id,
        base,
        revision: `${id}-2`,
        text: 'other',
        note: '',
        draft: { number: 1 },
      }
      expect(await refusal(shop.save(act(), wanted))).toMatchObject({ code: 'conflict' })
      expect(
        await refusal(shop.save(act(), { ...wanted, text: 'edited', draft: { number: 7 } })),
      ).toMatchObject({ code: 'conflict' })
      expect((await value(shop.open(id))).revision.id).toBe(base)
    })

    it('may be of a stove that is not saved yet', async () => {
      const shop = await workshop()
      const stove = newStove({ text: 'a new one' })
      const draft = await value(shop.autosave(edit(stove.id, { text: stove.text })))
      expect(draft).toMatchObject({ base: null, unsaved: true, undo: null })
      await value(shop.create(act(), { ...stove, draft: { number: draft.number } }))
      expect(await value(shop.draft(stove.id, 'window'))).toMatchObject({
        base: stove.revision,
        unsaved: false,
      })
    })

    it('can be put away and begun again from a newer revision', async () => {
      const shop = await workshop()
      const { id, base } = await begun(shop)
      await value(shop.closeDraft({ document: id, client: 'window', at: AT, number: 1 }))
      expect(await value(shop.drafts())).toEqual([])
      expect(await value(shop.draft(id, 'window'))).toMatchObject({ closed: true, text: 'edited' })
      const save = { document: id, base, revision: `${id}-2`, text: 'newer', note: '' }
      await value(shop.save(act('other'), save))
      const again = await value(
        shop.autosave(edit(id, { base: `${id}-2`, number: 2, text: 'newer still', label: 'drill more' })),
      )
      expect(again).toMatchObject({ base: `${id}-2`, closed: false, undo: 'drill more' })
      const where = (number: number) => ({ document: id, client: 'window', at: AT, number })
      expect(await value(shop.undoEdit(where(3)))).toMatchObject({ text: 'newer', unsaved: false })
      expect(await value(shop.undoEdit(where(4)))).toMatchObject({ text: 'edited' })
    })

    it('reach far back, but not without end', async () => {
      const shop = await workshop()
      const { id, base } = await begun(shop)
      const last = KEPT_ENTRIES + 20
      for (let number = 1; number < last; number++)
        await value(shop.autosave(edit(id, { base, number, text: `edit ${number}` })))
      let draft = await value(shop.draft(id, 'window'))
      let steps = 0
      while (draft !== null && draft.undo !== null) {
        draft = await value(shop.undoEdit({ document: id, client: 'window', at: AT, number: draft.number }))
        steps++
      }
      expect(steps).toBe(KEPT_ENTRIES - 1)
    })

    it('cannot be gone on with where there is none', async () => {
      const shop = await workshop()
      expect(await value(shop.draft('x', 'window'))).toBeNull()
      expect(
        await refusal(shop.undoEdit({ document: 'x', client: 'window', at: AT, number: 1 })),
      ).toMatchObject({ code: 'unknown' })
      expect(await refusal(shop.autosave(edit('x', { base: 'nobody' })))).toMatchObject({ code: 'unknown' })
    })
  })
