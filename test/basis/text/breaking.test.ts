import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { brokenLines } from '#basis/text/breaking.ts'

const within = (text: string, width: number): readonly string[] =>
  brokenLines(text, (line) => line.length <= width)

const VALUES = [
  '31 mm (1 7/32 in)',
  '± 1 mm (3/64 in)',
  '0.26 g/s (2.1 lb/h)',
  '862 °C (1584 °F)',
  '1 L (1.06 US qt)',
]

describe('text that is broken into lines', () => {
  test('loses and gains no word, and no line is too wide but for a word that is', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.stringMatching(/^[a-z]{1,9}$/), fc.constantFrom(...VALUES)), { minLength: 1 }),
        fc.integer({ min: 12, max: 60 }),
        (words, width) => {
          const text = words.join(' ')
          const lines = within(text, width)
          expect(lines.join(' ')).toBe(text)
          for (const line of lines) expect(line.length).toBeLessThanOrEqual(width)
        },
      ),
    )
  })

  test('holds a value together with its unit and its bracket wherever one line holds it', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.stringMatching(/^[a-z]{1,9}$/), fc.constantFrom(...VALUES)), { minLength: 1 }),
        fc.integer({ min: 24, max: 60 }),
        (words, width) => {
          const lines = within(words.join(' '), width)
          for (const value of words.filter((word) => VALUES.includes(word)))
            expect(lines.some((line) => line.includes(value))).toBe(true)
        },
      ),
    )
  })

  test('parts a range before its bracket, sizes between their figures, and never a figure from its unit', () => {
    expect(within('likely 1.26 to 1.81 kW (4300 to 6200 Btu/h)', 24)).toEqual([
      'likely 1.26 to 1.81 kW',
      '(4300 to 6200 Btu/h)',
    ])
    expect(within('about 20 × 12 × 6 mm (13/16 × 1/2 × 1/4 in)', 16)).toEqual([
      'about',
      '20 × 12 × 6 mm',
      '(13/16 × 1/2',
      '× 1/4 in)',
    ])
    for (let width = 9; width < 40; width++)
      expect(within('a bore of 12.7 mm (1/2 in) and 8 % of it', width).join('\n')).not.toMatch(
        /\d\n(?:mm|in|%)/,
      )
  })
})
