import { describe, expect, it } from 'vitest'
import type { Changes } from '#store/workshop.ts'
import { AT, act, newStove, value } from '../acts.ts'
import type { Rig } from './rig.ts'

export const changesSuite = ({ workshop, place }: Rig) =>
  describe('changes', () => {
    it('are told to another window of another program', async () => {
      const where = await place()
      const [here, there] = [await workshop(where), await workshop(where)]
      const { sequence } = await value(here.about())
      const stove = await value(there.create(act(), newStove()))
      const edit = { document: stove.id, client: 'there', at: AT, number: 0, base: stove.head, label: 'x' }
      await value(there.autosave({ ...edit, text: 'edited' }))
      const changes = await value(here.changesSince(sequence))
      expect(changes).toEqual({
        sequence: sequence + 2,
        documents: [stove],
        drafts: [{ document: stove.id, client: 'there', number: 1, closed: false }],
      })
      expect(await value(here.changesSince(changes.sequence))).toMatchObject({ documents: [], drafts: [] })
    })

    it('are watched until the watcher has seen enough', async () => {
      const where = await place()
      const [here, there] = [await workshop(where), await workshop(where)]
      const stop = new AbortController()
      const seen: Changes[] = []
      const watching = (async () => {
        for await (const changes of here.watch({ since: 0, every: 5, signal: stop.signal })) {
          seen.push(await value(changes))
          if (seen.flatMap(({ documents }) => documents).length >= 3) stop.abort()
        }
      })()
      const names = ['Redshank', 'Heron', 'Greylag']
      for (const name of names) await value(there.create(act(), newStove({ name })))
      await watching
      expect(seen.flatMap(({ documents }) => documents.map(({ name }) => name))).toEqual(names)
    })

    it('come one after the other, also when many ask at once', async () => {
      const where = await place()
      const shops = [await workshop(where), await workshop(where), await workshop(where)]
      const many = Array.from({ length: 30 }, (_, n) =>
        shops[n % 3]?.create(act(`client-${n % 3}`), newStove()),
      )
      const made = await Promise.all(many.map((one) => value(one as NonNullable<typeof one>)))
      const touched = made.map((head) => head.touched).toSorted((a, b) => a - b)
      expect(new Set(touched).size).toBe(30)
      expect(await value(shops[0]?.list() as never)).toHaveLength(30)
    })
  })
