import { describe, expect, it } from 'vitest'
import { readAloud } from '#craft/card/list.ts'
import { spoken } from '#craft/card/spoken.ts'
import { MAKING_CAUTIONS } from '#craft/caution.ts'
import { disagreements, dualValues } from '#craft/page/dualValues.ts'
import type { Stove } from '#stove/model.ts'
import { testStoves } from '../stoves.ts'
import { decks } from './decks.ts'

describe('a text in words', () => {
  it.each([
    ['12 mm (15/32 in)', '12 millimetres (15/32 inch)'],
    ['100.4 mm (3 15/16 in)', '100.4 millimetres (3 and 15/16 inches)'],
    ['127 mm (5 in)', '127 millimetres (5 inches)'],
    ['1 mm (0.04 in)', '1 millimetre (0.04 inch)'],
    ['25.4 mm (1 in)', '25.4 millimetres (1 inch)'],
    ['1.81 kW (6190 Btu/h)', '1.81 kilowatts (6190 Btu an hour)'],
    ['1 h 12 min', '1 hour 12 minutes'],
    ['1 L boils', '1 litre boils'],
    ['first at 10°', 'first at 10 degrees'],
  ])('%s is read %s', (written, read) => {
    expect(spoken(written)).toBe(read)
  })
})

/** The list in signs again, for the code that cross-checks lengths. */
const inSigns = (list: string): string =>
  list
    .replace(/(\d) and (\d+\/\d+) inch/g, '$1 $2 inch')
    .replace(/ inch(?:es)?\b/g, ' in')
    .replace(/ millimetres?\b/g, ' mm')

const lists: readonly { readonly name: string; readonly stove: Stove; readonly list: string }[] = [
  ...decks.map(({ name, input, made }) => ({ name, stove: input.stove, list: made.list })),
  ...testStoves
    .map((make) => make())
    .map((stove) => ({
      name: stove.name,
      stove,
      list: readAloud({ stove, figures: null, date: '2031-05-17' }),
    })),
]

describe.each(lists)('the text list of $name', ({ stove, list }) => {
  it('has a line for every opening, under its part, and for every can', () => {
    const blocks = list.split('\n\n').map((block) => block.split('\n'))
    for (const [name, part] of stove.parts) {
      const block = blocks.find(([head = '']) => head === name || head.startsWith(`${name}, `)) ?? []
      for (const opening of part.openings.keys())
        expect(block.filter((line) => line.startsWith(`  ${opening}: `))).toHaveLength(1)
      if (part.form === 'can') expect(block[0]).toContain(part.can.code ?? 'can as measured')
    }
  })

  it('says every length in millimetres and in inches, which agree', () => {
    const text = inSigns(list)
    expect(disagreements(text)).toEqual([])
    for (const stretch of dualValues(text))
      if (stretch.kind === 'text') expect(stretch.text).not.toMatch(/\d (?:mm|cm|in)\b/)
  })

  it('leaves no sign that is read aloud in two ways', () => {
    expect(list.replace(/Ø/g, '')).toBe(list)
    expect(list).not.toMatch(/\d (?:mm|in|kW|g|oz|h|s|L|min)\b|°/)
  })

  it('carries every caution and the day', () => {
    for (const caution of MAKING_CAUTIONS) expect(list).toContain(caution)
    expect(list).toContain('Tinwright, 2031-05-17')
  })
})

describe('a row with a hole left out', () => {
  it('is read as a maker would say it', () => {
    const redshank = decks.find(({ name }) => name.includes('redshank'))
    expect(redshank?.made.list).toContain(
      '  intake: 11 holes, 12 millimetres (15/32 inch), 21 millimetres (13/16 inch) from the bottom edge to the hole centre; 12 places, the first at the front, place 7 left out\n',
    )
  })
})
