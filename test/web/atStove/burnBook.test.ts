import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type BurnBook, openBurnBook } from '#web/atStove/burnBook.ts'
import type { BurnStore } from '#web/atStove/burnStore.ts'
import { entryText, isWeighing, litAt, standing } from '#web/atStove/entry.ts'
import { memoryStore, type PretendWorkshop, pretendWorkshop } from './workshopOf.ts'

const START = Date.parse('2031-05-17T09:00:00Z')

interface Phone {
  readonly book: BurnBook
  readonly store: BurnStore
  /** Moves its clock on [ms]. */
  readonly wait: (by: number) => void
  /** The tab is gone; a new one opens on the same phone. */
  readonly reopened: () => Promise<Phone>
}

interface PhoneWish {
  readonly ahead?: number
  readonly store?: BurnStore
  readonly start?: number
}

const phone = async (
  workshop: PretendWorkshop,
  name: string,
  { ahead = 0, store = memoryStore(), start }: PhoneWish = {},
): Promise<Phone> => {
  const begun = start ?? START - ahead
  let now = begun
  let made = 0
  const book = openBurnBook('trial-1', {
    store,
    line: workshop.line({ ahead }),
    client: name,
    now: () => now,
    newId: () => `${name}-${begun}-${++made}`,
    tell: () => undefined,
  })
  await book.reload()
  return {
    book,
    store,
    wait: (by) => {
      now += by
    },
    reopened: () => phone(workshop, name, { ahead, store, start: now + 1 }),
  }
}

const words = ({ book }: Phone): readonly string[] => standing(book.state.get().log).map(entryText)

describe('the log of a burn on a phone', () => {
  it('notes without a workshop, counts what waits, and brings it all when the workshop is back', async () => {
    const workshop = pretendWorkshop()
    workshop.fault = 'out of reach'
    const one = await phone(workshop, 'one')
    await one.book.note({ event: 'lit' })
    one.wait(60_000)
    await one.book.note({ of: 'char', mass: '31 g' })
    await one.book.sync()
    expect(one.book.state.get()).toMatchObject({ count: 2, waiting: 2, visit: { kind: 'out of reach' } })
    workshop.fault = 'none'
    await one.book.sync()
    expect(one.book.state.get()).toMatchObject({ count: 2, waiting: 0, visit: { kind: 'been there' } })
    expect(workshop.events).toHaveLength(2)
    expect(words(one)).toEqual(['Lit', 'Char: 31 g'])
  })

  it('a lost answer brings no event twice', async () => {
    const workshop = pretendWorkshop()
    const one = await phone(workshop, 'one')
    workshop.fault = 'answers lost'
    await one.book.note({ event: 'lit' })
    await one.book.sync()
    expect(one.book.state.get().waiting).toBe(1)
    expect(workshop.events).toHaveLength(1)
    workshop.fault = 'none'
    await one.book.sync()
    expect(one.book.state.get()).toMatchObject({ count: 1, waiting: 0 })
    expect(workshop.events).toHaveLength(1)
  })

  it('goes on after the tab was killed: what was noted is there, lit when it was lit', async () => {
    const workshop = pretendWorkshop()
    workshop.fault = 'out of reach'
    const one = await phone(workshop, 'one')
    await one.book.note({ event: 'lit' })
    one.wait(120_000)
    const again = await one.reopened()
    expect(litAt(again.book.state.get().log)).toBe(START)
    await again.book.note({ event: 'boil' })
    workshop.fault = 'none'
    await again.book.sync()
    expect(workshop.events.map(({ id }) => id)).toHaveLength(2)
    expect(words(again)).toEqual(['Lit', 'Boil'])
  })

  it('corrects and takes back, on this phone and on the other', async () => {
    const workshop = pretendWorkshop()
    const [one, two] = [await phone(workshop, 'one'), await phone(workshop, 'two')]
    const lit = await one.book.note({ event: 'lit' })
    one.wait(1000)
    const smoke = await one.book.note({ event: 'smoke' })
    one.wait(1000)
    const char = await one.book.note({ of: 'char', mass: '310 g' })
    if (lit === null || smoke === null || char === null) throw new Error('Not noted')
    await one.book.sync()
    await two.book.sync()
    await two.book.takeBack(smoke)
    await two.book.correct(char, { mass: '31 g' })
    await two.book.sync()
    await one.book.correct(lit, { at: '2031-05-17T08:59:50.000Z' })
    await one.book.sync()
    await two.book.sync()
    for (const device of [one, two]) {
      expect(words(device)).toEqual(['Lit', 'Char: 31 g'])
      expect(litAt(device.book.state.get().log)).toBe(START - 10_000)
    }
    expect(workshop.events.filter(({ replaces }) => replaces !== null)).toHaveLength(3)
    expect(workshop.events.filter(({ withdrawn }) => withdrawn)).toHaveLength(1)
  })

  it('moves what a wrong clock noted onto the workshop’s clock, and sends it so', async () => {
    const workshop = pretendWorkshop()
    workshop.fault = 'out of reach'
    // 40 s behind, as the workshop will say.
    const one = await phone(workshop, 'one', { ahead: 40_000 })
    await one.book.note({ event: 'lit' })
    expect(litAt(one.book.state.get().log)).toBe(START - 40_000)
    workshop.fault = 'none'
    await one.book.sync()
    expect(litAt(one.book.state.get().log)).toBe(START)
    expect(workshop.events[0]?.at).toBe('2031-05-17T09:00:00.000Z')
    expect(JSON.parse(workshop.events[0]?.body ?? '').at).toBe('2031-05-17T09:00:00.000Z')
    one.wait(10_000)
    await one.book.note({ event: 'flame on' })
    expect(standing(one.book.state.get().log)[1]?.at).toBe('2031-05-17T09:00:10.000Z')
  })

  it('does not take a second of travel for another clock', async () => {
    const workshop = pretendWorkshop()
    const one = await phone(workshop, 'one', { ahead: 900 })
    await one.book.note({ event: 'lit' })
    await one.book.sync()
    expect(one.book.state.get().shift).toBe(0)
  })

  it('shows the log that a trial came with', async () => {
    const workshop = pretendWorkshop(
      JSON.stringify({ events: [{ id: 'a-0001', at: '2031-05-17T08:30:00Z', event: 'lit' }] }),
    )
    const one = await phone(workshop, 'one')
    await one.book.sync()
    expect(words(one)).toEqual(['Lit'])
  })

  it('with cuts, lost answers and killed tabs in any order, two phones end with every entry once', async () => {
    const step = fc.record({
      phone: fc.constantFrom(0, 1),
      does: fc.constantFrom('note', 'weigh', 'undo', 'sync', 'kill', 'out of reach', 'answers lost', 'none'),
    })
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 30 }), async (steps) => {
        const workshop = pretendWorkshop()
        const phones = [await phone(workshop, 'one'), await phone(workshop, 'two', { ahead: 5000 })]
        let noted = 0
        let undone = 0
        for (const { phone: which, does } of steps) {
          const device = phones[which] as Phone
          device.wait(1000)
          if (does === 'note' || does === 'weigh') {
            noted++
            await device.book.note(does === 'note' ? { event: 'smoke' } : { of: 'fuel', mass: '80 g' })
          } else if (does === 'undo') {
            const mine = standing(device.book.state.get().log).at(-1)
            if (mine !== undefined) {
              await device.book.takeBack(mine)
              // News of the other phone may come in the same moment.
              expect(standing(device.book.state.get().log).map(({ id }) => id)).not.toContain(mine.id)
              undone++
            }
          } else if (does === 'sync') await device.book.sync()
          else if (does === 'kill') phones[which] = await device.reopened()
          else workshop.fault = does
        }
        workshop.fault = 'none'
        for (const round of [0, 1]) for (const { book } of phones) await book.sync().then(() => round)
        const [a, b] = phones.map(({ book }) => book.state.get())
        expect(a?.log).toEqual(b?.log)
        expect([a?.waiting, b?.waiting]).toEqual([0, 0])
        const all = [...(a?.log.events ?? []), ...(a?.log.masses ?? [])]
        expect(all).toHaveLength(noted)
        expect(new Set(all.map(({ id }) => id)).size).toBe(noted)
        // Both may have taken back the same one, each before it heard of the other.
        expect(a?.count).toBeGreaterThanOrEqual(noted - undone)
        expect(all.filter((entry) => !isWeighing(entry) && entry.event !== 'smoke')).toEqual([])
      }),
      { numRuns: 150 },
    )
  })
})
