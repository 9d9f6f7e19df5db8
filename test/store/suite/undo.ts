import { describe, expect, it } from 'vitest'
import { act, newStove, refusal, value } from '../acts.ts'
import type { Rig } from './rig.ts'

export const undoSuite = ({ workshop }: Rig) =>
  describe('undo and redo', () => {
    it('takes back and does again, step by step, and says what', async () => {
      const shop = await workshop()
      const first = newStove()
      const made = await value(shop.create(act(), first))
      const save = { document: made.id, base: first.revision, revision: 'later', text: 'later', note: '' }
      await value(shop.save(act(), { ...save, revision: `${made.id}-2` }))
      const last = (await value(shop.list()))[0]
      await value(shop.rename(act(), made.id, last?.version ?? 0, 'Heron'))

      expect(await value(shop.undoState('window'))).toMatchObject({
        undo: { label: 'rename “Redshank” to “Heron”' },
        redo: null,
      })
      const shown = async () =>
        (await value(shop.list({ deleted: true }))).map(({ name, head, deleted }) => [name, head, deleted])
      const states = [await shown()]
      for (let n = 0; n < 3; n++) {
        const { documents } = await value(shop.undo(act()))
        expect(documents).toHaveLength(1)
        states.push(await shown())
      }
      expect(states).toEqual([
        [['Heron', `${made.id}-2`, false]],
        [['Redshank', `${made.id}-2`, false]],
        [['Redshank', first.revision, false]],
        [['Redshank', first.revision, true]],
      ])
      expect(await refusal(shop.undo(act()))).toMatchObject({ code: 'nothing left' })
      for (const state of states.slice(0, 3).reverse()) {
        await value(shop.redo(act()))
        expect(await shown()).toEqual(state)
      }
      expect(await refusal(shop.redo(act()))).toMatchObject({ code: 'nothing left' })
    })

    it('leaves no revision out of the history, whatever is taken back', async () => {
      const shop = await workshop()
      const first = newStove()
      const { id } = await value(shop.create(act(), first))
      const save = (revision: string) =>
        shop.save(act(), { document: id, base: first.revision, revision, text: revision, note: '' })
      await value(save(`${id}-left`))
      await value(shop.undo(act()))
      await value(save(`${id}-right`))
      expect((await value(shop.history(id))).map((one) => one.id)).toEqual([
        first.revision,
        `${id}-left`,
        `${id}-right`,
      ])
      expect(await refusal(shop.redo(act()))).toMatchObject({ code: 'nothing left' })
    })

    it('belongs to the window', async () => {
      const shop = await workshop()
      const [mine, theirs] = [newStove({ name: 'mine' }), newStove({ name: 'theirs' })]
      await value(shop.create(act('me'), mine))
      await value(shop.create(act('them'), theirs))
      await value(shop.undo(act('me')))
      expect((await value(shop.list())).map(({ name }) => name)).toEqual(['theirs'])
    })

    it('does not take back what another window has built on', async () => {
      const shop = await workshop()
      const first = newStove()
      const { id } = await value(shop.create(act('me'), first))
      await value(
        shop.save(act('them'), {
          document: id,
          base: first.revision,
          revision: `${id}-2`,
          text: 'theirs',
          note: '',
        }),
      )
      const said = await refusal(shop.undo(act('me')))
      expect(said).toMatchObject({ code: 'conflict' })
      expect(said.sentence).toContain('“Redshank” was changed elsewhere since')
      expect((await value(shop.open(id))).revision.text).toBe('theirs')
    })

    it('takes a renaming back although another window has saved since', async () => {
      const shop = await workshop()
      const first = newStove()
      const { id, version } = await value(shop.create(act('them'), first))
      await value(shop.rename(act('me'), id, version, 'Heron'))
      const save = { document: id, base: first.revision, revision: `${id}-2`, text: 'theirs', note: '' }
      await value(shop.save(act('them'), save))
      await value(shop.undo(act('me')))
      expect((await value(shop.open(id))).document).toMatchObject({ name: 'Redshank', head: `${id}-2` })
    })

    it('is done once, however often it is asked for', async () => {
      const shop = await workshop()
      await value(shop.create(act(), newStove({ name: 'a' })))
      await value(shop.create(act(), newStove({ name: 'b' })))
      const step = act()
      const report = await value(shop.undo(step))
      expect(await value(shop.undo(step))).toEqual(report)
      expect((await value(shop.list())).map(({ name }) => name)).toEqual(['a'])
      expect(await refusal(shop.redo(step))).toMatchObject({ code: 'conflict' })
    })
  })
