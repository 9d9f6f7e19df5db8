import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { readQuantity } from '#basis/text/read.ts'
import { type Entry, logOf, takenBack } from '#web/atStove/entry.ts'
import { at, changed, emptyDraft } from '#web/trials/draft.ts'
import { phaseFromLog, writtenTime } from '#web/trials/phaseFromLog.ts'

const after = (minutes: number, words: Record<string, string>): Entry =>
  ({
    id: `e-${minutes}-${Object.values(words).join('').replaceAll(' ', '')}`,
    at: new Date(Date.parse('2031-05-17T09:00:00Z') + minutes * 60_000).toISOString(),
    ...words,
  }) as unknown as Entry

const BURN: readonly Entry[] = [
  after(-5, { of: 'fuel', mass: '310 g' }),
  after(0, { event: 'lit' }),
  after(2, { of: 'pot', mass: '1412 g' }),
  after(2.5, { event: 'pot on' }),
  after(9.5, { event: 'boil' }),
  after(10, { of: 'fuel', mass: '180 g' }),
  after(10.5, { of: 'pot', mass: '1395 g' }),
  after(22, { of: 'char', mass: '31 g' }),
]

describe('a phase from the log', () => {
  it('takes times from the events and weights from about its two ends', () => {
    const { draft, said } = phaseFromLog(emptyDraft(), 0, logOf(BURN))
    expect(at(draft, ['phases', 0])).toEqual({
      phase: 'high power',
      from: { at: '2 min 30 s', fuel: '310 g', pot: '1412 g' },
      to: { at: '9 min 30 s', fuel: '180 g', pot: '1395 g' },
      char: '31 g',
    })
    expect(at(draft, ['fuel', 'weighed'])).toBe('before lighting')
    expect(said).toHaveLength(8)
    expect(said).toContain(
      'That fuel was weighed before lighting: what burnt in the 2 min 30 s until “pot on” counts as burnt in this phase.',
    )
  })

  it('says nothing of fuel that was weighed when the phase began', () => {
    const [, ...rest] = BURN
    const then = phaseFromLog(emptyDraft(), 0, logOf([...rest, after(2.2, { of: 'fuel', mass: '301 g' })]))
    expect(at(then.draft, ['phases', 0, 'from', 'fuel'])).toBe('301 g')
    expect(then.said.join(' ')).not.toContain('before lighting')
    expect(at(then.draft, ['fuel', 'weighed'])).toBe('at the start')
  })

  it('leaves what was filled in by hand', () => {
    const mine = changed(emptyDraft(), ['phases', 0, 'to', 'fuel'], '175 g')
    expect(at(phaseFromLog(mine, 0, logOf(BURN)).draft, ['phases', 0, 'to', 'fuel'])).toBe('175 g')
    // A weight told by hand stays, and what was said of when it was weighed with it.
    const told = changed(
      changed(emptyDraft(), ['phases', 0, 'from', 'fuel'], '305 g'),
      ['fuel', 'weighed'],
      'at the start',
    )
    expect(at(phaseFromLog(told, 0, logOf(BURN)).draft, ['fuel', 'weighed'])).toBe('at the start')
  })

  it('takes nothing that was taken back, and says so where nobody noted the lighting', () => {
    const [, lit, ...rest] = BURN
    const { draft, said } = phaseFromLog(emptyDraft(), 0, logOf([takenBack(lit as Entry), ...rest]))
    expect(draft).toEqual(emptyDraft())
    expect(said[0]).toContain('Nobody noted when it was lit')
  })

  it('writes times that a trial file reads back to the second', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 43_200 }), (seconds) => {
        const read = orThrow(readQuantity(writtenTime(seconds * 1000), '', 'timeAfterLighting'))
        expect(read).toBe(seconds)
      }),
    )
  })
})
