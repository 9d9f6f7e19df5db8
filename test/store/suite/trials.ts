import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { NewEvent, Workshop } from '#store/workshop.ts'
import { standingEvents } from '#wire/trials.ts'
import { AT, act, fresh, newStove, refusal, value } from '../acts.ts'
import type { Rig } from './rig.ts'

const minute = (n: number): string => `2031-05-17T14:${String(n).padStart(2, '0')}:00Z`

const event = (own: Partial<NewEvent> = {}): NewEvent => ({
  id: fresh('event'),
  at: AT,
  body: '{ "kind": "boil" }',
  ...own,
})

const burn = async (shop: Workshop): Promise<string> => {
  const stove = newStove()
  await value(shop.create(act(), stove))
  const trial = newStove({ kind: 'trial', name: 'first burn', aboutRevision: stove.revision, text: '{}' })
  return (await value(shop.create(act(), trial))).id
}

const png = (extra = 0): Uint8Array =>
  Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, ...new Array(16).fill(extra)])

export const trialsSuite = ({ workshop, runs }: Rig): void => {
  describe('events of a trial', () => {
    it('come together from two phones, whatever is sent twice and in whatever order', async () => {
      const shop = await workshop()
      await fc.assert(
        fc.asyncProperty(
          fc.array(fc.array(fc.nat(11), { maxLength: 6 }), { maxLength: 8 }),
          async (batches) => {
            const trial = await burn(shop)
            const all = Array.from({ length: 12 }, (_, n) => event({ at: minute(n) }))
            for (const [n, picks] of batches.entries()) {
              const events = picks.map((pick) => all[pick] as NewEvent)
              const kept = await value(shop.logEvents({ trial, client: `phone-${n % 2}`, at: AT, events }))
              expect(kept.map(({ id }) => id)).toEqual(events.map(({ id }) => id))
            }
            const sent = new Set(batches.flat().map((pick) => all[pick]?.id))
            const found = await value(shop.events(trial))
            expect(found.map(({ id }) => id).toSorted()).toEqual([...sent].toSorted())
            expect(found.map(({ sequence }) => sequence)).toEqual(
              found.map(({ sequence }) => sequence).toSorted((a, b) => a - b),
            )
          },
        ),
        { numRuns: runs },
      )
    })

    it('are corrected and taken back by events, and nothing is lost', async () => {
      const shop = await workshop()
      const trial = await burn(shop)
      const [lit, boil] = [event({ at: minute(1) }), event({ at: minute(9) })]
      const corrected = event({ at: minute(2), replaces: lit.id })
      const withdrawn = event({ at: minute(9), replaces: boil.id, withdrawn: true })
      const log = (...events: NewEvent[]) => value(shop.logEvents({ trial, client: 'phone', at: AT, events }))
      const standing = async () => standingEvents(await value(shop.events(trial))).map(({ id }) => id)
      await log(boil, lit)
      expect(await standing()).toEqual([lit.id, boil.id])
      await log(corrected, withdrawn)
      expect(await standing()).toEqual([corrected.id])
      const undone = event({ at: boil.at, replaces: withdrawn.id })
      await log(undone)
      expect(await standing()).toEqual([corrected.id, undone.id])
      expect(await value(shop.events(trial))).toHaveLength(5)
    })

    it('are asked for from where one stopped', async () => {
      const shop = await workshop()
      const trial = await burn(shop)
      const log = (one: NewEvent) => value(shop.logEvents({ trial, client: 'phone', at: AT, events: [one] }))
      const [first] = await log(event())
      const [second] = await log(event())
      expect(await value(shop.events(trial, first?.sequence))).toEqual([second])
    })

    it('are refused where the id says something else already, with the whole batch', async () => {
      const shop = await workshop()
      const trial = await burn(shop)
      const one = event()
      const batch = { trial, client: 'phone', at: AT }
      await value(shop.logEvents({ ...batch, events: [one] }))
      const other = { ...one, body: '{ "kind": "flame out" }' }
      const said = await refusal(shop.logEvents({ ...batch, events: [event(), other] }))
      expect(said).toMatchObject({ code: 'conflict' })
      expect(await value(shop.events(trial))).toHaveLength(1)
    })

    it('belong to trials only, and are not too large', async () => {
      const shop = await workshop()
      const trial = await burn(shop)
      const stove = await value(shop.create(act(), newStove()))
      const batch = { trial, client: 'phone', at: AT }
      const wrong = [
        { ...batch, trial: stove.id, events: [event()] },
        { ...batch, events: [event({ body: 'x'.repeat(10_001) })] },
        { ...batch, events: [event({ withdrawn: true })] },
        { ...batch, events: [event({ at: 'noon' })] },
        { ...batch, events: new Array<NewEvent>(5001).fill(event()) },
      ]
      for (const one of wrong)
        expect(['bad input', 'too large']).toContain((await refusal(shop.logEvents(one))).code)
      expect(await value(shop.events(trial))).toEqual([])
      expect(await refusal(shop.events(stove.id))).toMatchObject({ code: 'bad input' })
    })

    it('reach a trial that was taken away while the phone was out of reach', async () => {
      const shop = await workshop()
      const trial = await burn(shop)
      const { version } = (await value(shop.open(trial))).document
      await value(shop.remove(act(), trial, version))
      await value(shop.logEvents({ trial, client: 'phone', at: AT, events: [event()] }))
      expect(await value(shop.events(trial))).toHaveLength(1)
    })
  })

  describe('photos', () => {
    it('come back byte for byte, with the kind that the bytes show', async () => {
      const shop = await workshop()
      const trial = await burn(shop)
      const bytes = png()
      const photo = {
        id: fresh('photo'),
        revision: fresh('revision'),
        name: 'flame',
        aboutDocument: trial,
        bytes,
      }
      const step = act()
      const head = await value(shop.attach(step, photo))
      expect(await value(shop.attach(step, photo))).toEqual(head)
      const found = await value(shop.photo(head.id))
      expect(found).toMatchObject({ document: head, mediaType: 'image/png' })
      expect([...found.bytes]).toEqual([...bytes])
      expect(await value(shop.list({ kinds: ['photo'], aboutDocument: trial }))).toEqual([head])
      await value(shop.undo(act()))
      expect(await value(shop.list({ kinds: ['photo'] }))).toEqual([])
      await value(shop.redo(act()))
      expect((await value(shop.photo(head.id))).bytes).toHaveLength(bytes.length)
    })

    it('are refused where they are none, or too large', async () => {
      const shop = await workshop()
      const aboutDocument = await burn(shop)
      const photo = (bytes: Uint8Array) => ({
        id: fresh('photo'),
        revision: fresh('revision'),
        name: 'flame',
        aboutDocument,
        bytes,
      })
      const svg = new TextEncoder().encode('<svg onload="alert(1)"/>')
      for (const bytes of [new Uint8Array(), svg])
        expect(await refusal(shop.attach(act(), photo(bytes)))).toMatchObject({ code: 'bad input' })
      const large = new Uint8Array(16_000_001)
      large.set(png())
      expect(await refusal(shop.attach(act(), photo(large)))).toMatchObject({ code: 'too large' })
      expect(await value(shop.list({ kinds: ['photo'], deleted: true }))).toEqual([])
      expect(await refusal(shop.photo(aboutDocument))).toMatchObject({ code: 'bad input' })
    })
  })
}
