import { describe, expect, it } from 'vitest'
import type { Alignment } from '#proof/logger/align.ts'
import type { Channel } from '#proof/logger/readLog.ts'
import { emptyDraft } from '#web/trials/draft.ts'
import { massOffers, waterOffers } from '#web/trials/logger/readingOffers.ts'

// Invented readings: one a second for ten minutes, the logger begun 30 s before lighting.
const SECONDS = Array.from({ length: 631 }, (_, i) => i)
const channel = (
  quantity: Channel['quantity'],
  value: (at: number) => number,
  times: readonly number[] = SECONDS,
): Channel => ({
  name: quantity,
  quantity,
  time: Float64Array.from(times),
  value: Float64Array.from(times, value),
  line: Uint32Array.from(times, (at) => at + 2),
})
const alignment: Alignment = { offset: -30, rate: 1, residuals: [], cautions: [] }
const phases = (more: object = {}, end = '9 min') => [
  { phase: 'high power', from: { at: '1 min', fuel: '300 g' }, to: { at: end }, ...more },
]
const draft = (told = phases()) => ({ ...emptyDraft(), phases: told }) as ReturnType<typeof emptyDraft>

/** Loses a tenth of a gram a second after lighting. */
const scale = channel('mass', (at) => 1.5 - 0.0001 * Math.max(0, at - 30))
const water = channel('temperature', (at) => 288.15 + 0.15 * Math.max(0, at - 30))

describe('readings offered for the phases', () => {
  it('are those at the ends of a phase, with the moment on both clocks, and what stands there now', () => {
    expect(waterOffers(water, alignment, draft()).offers).toEqual([
      {
        path: ['phases', 0, 'from', 'water'],
        label: 'High power, water at the start',
        text: '24.0 °C',
        how: [],
        after: 60,
        logger: 90,
        now: null,
      },
      {
        path: ['phases', 0, 'to', 'water'],
        label: 'High power, water at the end',
        text: '96.0 °C',
        how: [],
        after: 540,
        logger: 570,
        now: null,
      },
    ])
    const [start] = massOffers(scale, 'fuel', alignment, draft()).offers
    expect(start).toMatchObject({ text: '1494.0 g', now: '300 g' })
  })

  it('tell the fuel that is left from what the whole stove lost, char taken off', () => {
    const [open] = massOffers(scale, 'stove', alignment, draft()).offers
    expect(open).toMatchObject({
      path: ['phases', 0, 'to', 'fuel'],
      text: '252.0 g',
      how: [
        '300.0 g at the start, less the 48.0 g that the scale lost.',
        'The char is in it still: weigh that first, and it is taken off.',
      ],
    })
    const [charred] = massOffers(scale, 'stove', alignment, draft(phases({ char: '20 g' }))).offers
    expect(charred?.text).toBe('232.0 g')
    expect(charred?.how).toEqual([
      '300.0 g at the start, less the 48.0 g that the scale lost, less 20.0 g of char.',
    ])
  })

  it('are none where they would be guesses, and say why', () => {
    const noTimes = draft([{ phase: 'high power', from: {}, to: {} }] as never)
    expect(waterOffers(water, alignment, noTimes)).toMatchObject({
      offers: [],
      said: [expect.stringMatching(/^No phase has a time/)],
    })
    // After the logger had stopped.
    expect(waterOffers(water, alignment, draft(phases({}, '30 min'))).offers).toHaveLength(1)
    const pot = channel('mass', (at) => 3 - 0.001 * at)
    expect(massOffers(pot, 'stove', alignment, draft()).said).toEqual([
      'High power: the scale lost 480.0 g, more than the 300.0 g of fuel that was there. Was the pot on it, or fuel put in on the way?',
    ])
    const unweighed = draft([{ phase: 'high power', from: { at: '1 min' }, to: { at: '9 min' } }] as never)
    expect(massOffers(scale, 'stove', alignment, unweighed).said).toEqual([
      'High power: say how much fuel there was at the start; the scale tells only what went since.',
    ])
  })

  it('say where the reading stands out from its neighbours', () => {
    const { offers } = waterOffers(water, alignment, draft(), new Set([92]))
    expect(offers.map(({ how }) => how)).toEqual([
      ['Line 92 stands out from its neighbours: look twice.'],
      [],
    ])
  })
})
