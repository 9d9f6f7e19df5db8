import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { logOf, writtenLog } from '#proof/trial/log.ts'
import { EVENT_KINDS } from '#proof/trial/logSchema.ts'
import { isOneBurn, type TrialWords, toldAgain } from '#proof/trial/toldAgain.ts'

const words = (more: object): TrialWords => ({ format: 'tinwright/trial@1', ...more }) as TrialWords
const tell = (here: object, came: object, before: readonly object[] = []) =>
  toldAgain(words(here), writtenLog(here), words(came), before.map(words))

const entry = fc.record({
  id: fc.nat({ max: 6 }).map((n) => `id-${n}`),
  at: fc.integer({ min: 10, max: 59 }).map((s) => `2031-05-17T09:00:${s}Z`),
  event: fc.constantFrom(...EVENT_KINDS.filter((kind) => kind !== 'damper to' && kind !== 'refuel')),
  edit: fc.nat({ max: 2 }),
})
const telling = fc.record({
  events: fc.uniqueArray(entry, { selector: ({ id }) => id }),
  about: fc.constantFrom('a', 'b'),
  fuel: fc.record({ batch: fc.constantFrom('1', '2') }, { requiredKeys: [] }),
})

describe('a burn told again', () => {
  it('loses nothing of its log, says nothing twice, and adds nothing the second time', () => {
    fc.assert(
      fc.property(telling, telling, (here, came) => {
        const { words: now, entries } = tell(here, came)
        const log = logOf([], writtenLog(now ?? here))
        expect(log).toEqual(logOf(came.events as never, writtenLog(here)))
        expect(tell(now ?? here, came)).toMatchObject({ words: null, entries: 0, filled: [] })
        // Which way round they come does not matter to the log.
        expect(logOf([], writtenLog(tell(came, here).words ?? came))).toEqual(log)
        if (now === null) expect(entries).toBe(0)
      }),
    )
  })

  it('takes what only the file tells, and leaves what is told otherwise', () => {
    const here = { phases: [{ phase: 'high power', from: { at: '0 s' }, to: {} }], wentWrong: ['knocked'] }
    const came = {
      phases: [
        { phase: 'high power', from: { at: '0 s', fuel: '310 g' }, to: { at: '9 min' } },
        { phase: 'simmer', from: { at: '9 min' }, to: { at: '30 min' } },
      ],
      wentWrong: ['knocked', 'spilled'],
      weather: { temperature: '18 °C' },
    }
    expect(tell(here, came)).toEqual({
      words: words(came),
      entries: 0,
      filled: [
        'phases.0.from.fuel',
        'phases.0.to.at',
        'phases.1.phase',
        'phases.1.from.at',
        'phases.1.to.at',
        'wentWrong.1',
        'weather.temperature',
      ],
      apart: [],
    })
    expect(tell(came, { ...came, weather: { temperature: '19 °C' } })).toMatchObject({
      words: null,
      apart: ['weather.temperature'],
    })
  })

  it('never puts half of one telling beside half of another', () => {
    const here = { fuel: { moisture: { meter: '10 %' } }, weather: { altitude: '240 m' } }
    const came = { fuel: { moisture: { before: '60 g', after: '54 g' } }, weather: { pressure: '985 hPa' } }
    expect(tell(here, came)).toMatchObject({ words: null, apart: ['fuel.moisture', 'weather'] })
    const high = { phases: [{ phase: 'high power', from: { at: '0 s' }, to: {} }] }
    const simmer = { phases: [{ phase: 'simmer', from: { at: '0 s', fuel: '90 g' }, to: {} }] }
    expect(tell(high, simmer)).toMatchObject({ words: null, apart: ['phases.0'] })
  })

  it('is only an older telling where the text once was that: nothing to say of it', () => {
    expect(tell({ about: 'now' }, { about: 'once' }, [{ about: 'once' }]).apart).toEqual([])
    expect(tell({ about: 'now' }, { about: 'once' }).apart).toEqual(['about'])
  })

  it('is known by an entry at its moment; a copy for the next burn has others', () => {
    const log = (at: string) => writtenLog({ events: [{ id: 'id-1', at, event: 'lit' }] })
    expect(isOneBurn(log('2031-05-17T09:00:00Z'), log('2031-05-17T11:00:00+02:00'))).toBe(true)
    expect(isOneBurn(log('2031-05-17T09:00:00Z'), log('2031-05-18T09:00:00Z'))).toBe(false)
  })
})
