import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { instantText } from '#proof/trial/instant.ts'
import { EVENT_KINDS, type EventFile } from '#proof/trial/logSchema.ts'
import { mergeEvents } from '#proof/trial/mergeTrials.ts'

const entry = (ids: number): fc.Arbitrary<EventFile> =>
  fc
    .record(
      {
        id: fc.nat({ max: ids }).map((n) => `id-${n}`),
        at: fc.integer({ min: 0, max: 400 }).map((s) => instantText(1_937_000_000 + s / 10)),
        event: fc.constantFrom(...EVENT_KINDS),
        edit: fc.nat({ max: 3 }),
        withdrawn: fc.boolean(),
        text: fc.constantFrom('a', 'b'),
      },
      { requiredKeys: ['id', 'at', 'event'] },
    )
    .map((one) => one as EventFile)
const log = fc.array(entry(8), { maxLength: 12 })

describe('two phones at one burn, or three', () => {
  it('in whatever order, and however often, they are merged, the log is the same', () => {
    fc.assert(
      fc.property(log, log, log, (a, b, c) => {
        const once = mergeEvents(a, b, c)
        expect(mergeEvents(c, b, a)).toEqual(once)
        expect(mergeEvents(mergeEvents(a, b), c)).toEqual(once)
        expect(mergeEvents(a, mergeEvents(b, c))).toEqual(once)
        expect(mergeEvents(once, once, b, a)).toEqual(once)
      }),
      { numRuns: 500 },
    )
  })

  it('nothing is lost and nothing is there twice', () => {
    fc.assert(
      fc.property(log, log, (a, b) => {
        const merged = mergeEvents(a, b).map(({ id }) => id)
        expect([...merged].sort()).toEqual([...new Set([...a, ...b].map(({ id }) => id))].sort())
      }),
    )
  })

  it('the order of keys in an entry does not matter', () => {
    const [one, other] = [
      { id: 'id-1', at: '2031-05-17T09:00:00Z', event: 'note', text: 'x' },
      { text: 'x', event: 'note', at: '2031-05-17T09:00:00Z', id: 'id-1' },
    ] as [EventFile, EventFile]
    expect(mergeEvents([one], [other])).toEqual([one])
  })

  it('an entry taken back on one phone stays away when the other brings it again', () => {
    const noted: EventFile = { id: 'id-1', at: '2031-05-17T09:00:00Z', event: 'smoke' }
    const back: EventFile = { ...noted, edit: 1, withdrawn: true }
    expect(mergeEvents([back], [noted])).toEqual([back])
  })
})
