import { describe, expect, it } from 'vitest'
import { BURN_CAUTIONS } from '#web/atStove/burnCautions.ts'
import { type Key, pressed, typed } from '#web/atStove/keypadText.ts'
import { runningTime, whenText } from '#web/atStove/runningTime.ts'
import { clockWords, countWords } from '#web/atStove/syncWords.ts'

const type = (...keys: readonly Key[]): string => keys.reduce(pressed, '')

describe('the keypad', () => {
  it('takes figures and one point, and puts a nought before a point', () => {
    expect(type('3', '1', '.', '5', '.')).toBe('31.5')
    expect(type('.', '5')).toBe('0.5')
    expect(type('0', '7')).toBe('7')
    expect(type('1', '2', '3', '4', '5', '6', '7')).toBe('123456')
    expect(type('1', '2', 'back')).toBe('1')
    expect(type('1', 'clear')).toBe('')
  })

  it('gives a number or nothing', () => {
    expect(typed('31.')).toBe('31')
    expect(typed('31.5')).toBe('31.5')
    expect(typed('')).toBeNull()
  })
})

describe('what the page says', () => {
  it('tells running time to the second', () => {
    expect([0, 999, 61_000, 3_661_000, -12_000].map(runningTime)).toEqual([
      '0:00',
      '0:00',
      '1:01',
      '1:01:01',
      '−0:12',
    ])
  })

  it('tells a moment of another day by its day', () => {
    const lit = Date.parse('2031-05-17T09:00:00Z')
    expect(whenText(lit + 61_000, lit)).toBe('1:01')
    expect(whenText(lit + 40 * 3_600_000, lit)).toBe('2031-05-19')
  })

  it('counts what is not yet with the workshop', () => {
    expect(countWords({ count: 12, waiting: 3 })).toBe('12 events, 3 not yet with the workshop')
    expect(countWords({ count: 1, waiting: 0 })).toBe('1 event, all with the workshop')
  })

  it('says how far the clocks are apart, and which way', () => {
    expect(clockWords(0)).toBeNull()
    expect(clockWords(40_000)).toContain('0:40 behind the workshop')
    expect(clockWords(-62_000)).toContain('1:02 ahead of the workshop')
  })

  it('warns of carbon monoxide, hot tin and what it does not approve', () => {
    expect(BURN_CAUTIONS).toHaveLength(3)
    expect(BURN_CAUTIONS[0]).toMatch(/carbon monoxide/)
    expect(BURN_CAUTIONS[1]).toMatch(/burn skin.*mineral ground/)
    expect(BURN_CAUTIONS[2]).toMatch(/not an approval/)
  })
})
