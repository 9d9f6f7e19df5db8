import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { columns, labelled, wrap } from '#compose/page/text.ts'

const word = fc.stringMatching(/^[a-z]{1,9}$/)
const words = fc.array(word, { minLength: 1, maxLength: 40 })
const width = fc.integer({ min: 20, max: 100 })

describe('wrapping', () => {
  it('loses no word and is never wider than asked', () => {
    fc.assert(
      fc.property(words, width, (said, columnsOf) => {
        const text = wrap(said.join(' '), columnsOf, '  ', '    ')
        expect(text.split(/\s+/).filter((one) => one !== '')).toEqual(said)
        for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(columnsOf)
      }),
    )
  })

  it('fills each line: the first word of the next one would not have fitted', () => {
    fc.assert(
      fc.property(words, width, (said, columnsOf) => {
        const lines = wrap(said.join(' '), columnsOf).split('\n')
        for (const [i, line] of lines.slice(1).entries()) {
          const [first = ''] = line.split(' ')
          expect((lines[i] as string).length + 1 + first.length).toBeGreaterThan(columnsOf)
        }
      }),
    )
  })

  it('keeps a figure and its unit together', () => {
    const said =
      'a hole of 12.7 mm (1/2 in) at 100 mm (3 15/16 in), 12 % of 6 3/16 in, 20 °C, 3 m/s and 2.1 in² of it'
    for (let columnsOf = 12; columnsOf < 100; columnsOf++) {
      const text = wrap(said, columnsOf)
      expect(text).not.toMatch(/\d\n(mm|in|%|°C|m\/s|in²)/)
      expect(text).not.toMatch(/\d\n\d+\/\d/)
      expect(text.replaceAll('\n', ' ')).toBe(said)
    }
  })

  it('keeps a value and the same in brackets on one line wherever one line holds it', () => {
    const said = 'a rim 2 mm (5/64 in) off, ± 1 mm (3/64 in), pieces of 20 × 12 mm (13/16 × 1/2 in)'
    for (let columnsOf = 30; columnsOf < 80; columnsOf++) {
      const text = wrap(said, columnsOf)
      expect(text).not.toMatch(/\n\(|\n[×±]?\d+(?:\/\d+)? in|[×±]\n/)
      expect(text.replaceAll('\n', ' ')).toBe(said)
    }
  })

  it('never breaks a word that is too long', () => {
    expect(wrap('see /a/very/long/path here', 10)).toBe('see\n/a/very/long/path\nhere')
  })
})

it('labels stand in a column, their text beside them', () => {
  expect(
    labelled(
      [
        ['fuel', 'one two three four'],
        ['firepower', 'much'],
      ],
      23,
    ),
  ).toBe('  fuel       one two\n             three four\n  firepower  much')
})

describe('a table', () => {
  const rows = [
    ['name', 'n'],
    ['a', '10'],
  ]
  it('aligns names to the left and figures to the right', () => {
    expect(columns(rows, ['left', 'right'])).toBe('  name   n\n  a     10')
  })
  it('stands closer where the page is narrow', () => {
    expect(columns(rows, ['left', 'right'], 9)).toBe('  name  n\n  a    10')
  })
})
