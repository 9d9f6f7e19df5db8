import { describe, expect, it } from 'vitest'
import type { DocumentHead } from '#store/workshop.ts'
import { act, refusal, value } from '../acts.ts'
import { example } from './examples.ts'
import type { Rig } from './rig.ts'

export const filesSuite = ({ workshop }: Rig): void => {
  describe('single files', () => {
    it('come in once, and go out as they came', async () => {
      const shop = await workshop()
      const file = example('heron.stove.json')
      const { added } = await value(shop.importFile(act(), file))
      expect(added).toMatchObject([{ kind: 'stove', name: 'Heron' }])
      expect(await value(shop.exportFile(added[0]?.id ?? ''))).toEqual(file)
      const again = await value(shop.importFile(act(), file))
      expect(again).toEqual({ added: [], renewed: [], known: added, remarks: [] })
      const other = { ...file, text: file.text.replace('"80 mm"', '"82 mm"') }
      expect((await value(shop.importFile(act(), other))).added).toHaveLength(1)
    })

    it('of a stove go out under the name it was given since, and come back as that stove', async () => {
      const shop = await workshop()
      const file = example('heron.stove.json')
      const { added } = await value(shop.importFile(act(), file))
      const { id, version } = added[0] as DocumentHead
      const named = await value(shop.rename(act(), id, version, 'Grey heron'))
      const out = await value(shop.exportFile(id))
      expect(out.name).toBe('grey-heron.stove.json')
      expect(JSON.parse(out.text)).toEqual({ ...JSON.parse(file.text), name: 'Grey heron' })
      // A name is no change of the stove: no revision says so, and its burns stay with the one that was burned.
      expect(await value(shop.history(id))).toHaveLength(1)
      expect((await value(shop.importFile(act(), out))).known).toEqual([named])
      await value(shop.undo(act()))
      expect(await value(shop.exportFile(id))).toEqual(file)
    })

    it('of a stove with a name that no stove file may have go out as they were written', async () => {
      const shop = await workshop()
      const file = example('heron.stove.json')
      const { added } = await value(shop.importFile(act(), file))
      const { id, version } = added[0] as DocumentHead
      await value(shop.rename(act(), id, version, 'H'.repeat(100)))
      expect((await value(shop.exportFile(id))).text).toBe(file.text)
    })

    it('of a shelf become cans and bits, and a can measured again a revision', async () => {
      const shop = await workshop()
      const shelf = example('shelf.json')
      const step = act()
      const first = await value(shop.importFile(step, shelf))
      expect((await value(shop.importFile(step, shelf))).known).toHaveLength(first.added.length)
      expect(first.added.map(({ kind }) => kind)).toEqual([...Array(9).fill('can'), ...Array(12).fill('bit')])
      const said = JSON.parse((await value(shop.exportShelf())).text)
      const { cans, bits } = JSON.parse(shelf.text)
      expect(said).toEqual({ format: 'tinwright/shelf@1', bits, cans })
      const text = shelf.text.replace('"86.2 mm ± 0.2 mm"', '"86.4 mm ± 0.1 mm"')
      const second = await value(shop.importFile(act(), { ...shelf, text }))
      expect(second.renewed.map(({ name }) => name)).toEqual(['lever-lid tin'])
      expect(second.known).toHaveLength(20)
      expect(await value(shop.history(second.renewed[0]?.id ?? ''))).toHaveLength(2)
      await value(shop.undo(act()))
      expect(JSON.parse((await value(shop.exportShelf())).text).cans).toEqual(cans)
    })

    it('are refused with the line and the reason, and nothing of them is kept', async () => {
      const shop = await workshop()
      const heron = example('heron.stove.json')
      const shelf = example('shelf.json')
      for (const text of [
        '{',
        '{}',
        heron.text.replace('"80 mm"', '80'),
        heron.text.replace('stove@1', 'stove@9'),
        shelf.text.replace('shelf@1', 'shelf@9'),
        shelf.text.replace('"3 mm"', '"3"'),
      ]) {
        const said = await refusal(shop.importFile(act(), { name: 'mine.json', text }))
        expect(said.code).toBe('bad input')
        expect(said.sentence).toMatch(/^mine\.json will not do, and nothing was changed\.\n./)
      }
      const readings = { name: 'thermocouple.csv', text: example('heron.logger.csv').text }
      expect((await refusal(shop.importFile(act(), readings))).sentence).toMatch(
        /^thermocouple\.csv is a logger’s file: .*Open the burn it belongs to/,
      )
      expect(await value(shop.list({ deleted: true }))).toEqual([])
    })
  })
}
