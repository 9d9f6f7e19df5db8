import { describe, expect, test } from 'vitest'
import { readShelf } from '#stove/document/shelf.ts'

const shelf = (bits: unknown, cans: unknown, format = 'tinwright/shelf@1') =>
  readShelf(JSON.stringify({ format, bits, cans }))

const told = (...file: Parameters<typeof shelf>) => {
  const outcome = shelf(...file)
  if (outcome.ok) throw new Error('was read')
  return outcome.problems.map(({ code, field }) => [code, field])
}

describe('a shelf', () => {
  test('keeps bits by their names, steps of a step drill as steps', () => {
    const outcome = shelf(['6 mm', '5/8 in', '#7', { step: ['4 mm', '5/16 in'] }], {})
    if (!outcome.ok) throw new Error('was not read')
    const { bits } = outcome.value
    expect(bits.map(({ name }) => name)).toEqual(['6 mm', '5/8 in', '#7', '4 mm step', '5/16 in step'])
    // #7 is 0.2010 in: ASME B94.11M, as listed in drills.json.
    expect((bits[2]?.diameter ?? 0) * 1000).toBeCloseTo(5.1054, 9)
    expect((bits[4]?.diameter ?? 0) * 1000).toBeCloseTo(7.9375, 9)
  })

  test('tells every bit and can that cannot be', () => {
    expect(
      told(['6', 7, { stpe: ['4 mm'] }, { step: ['4 mm', 'q9'] }], {
        bent: { height: '100 mm' },
        odd: { code: '307x409', colour: 'red' },
      }),
    ).toEqual([
      ['length.no-unit', 'bits[0]'],
      ['length.no-unit', 'bits[1]'],
      ['key.unknown', 'bits[2].stpe'],
      ['length.not-a-number', 'bits[3].step[1]'],
      ['can.no-size', 'cans.bent'],
      ['key.unknown', 'cans.odd.colour'],
    ])
    expect(told([], { swapped: { seamDiameter: '80 mm', bodyDiameter: '90 mm', height: '100 mm' } })).toEqual(
      [['can.body-over-seam', 'cans.swapped.bodyDiameter']],
    )
  })

  test('is no stove, and not of tomorrow', () => {
    expect(told([], {}, 'tinwright/stove@1')).toEqual([['format.other-kind', 'format']])
    expect(told([], {}, 'tinwright/shelf@2')).toEqual([['format.newer', 'format']])
  })
})
