import { describe, expect, test } from 'vitest'
import { contextOf } from '#stove/check/context.ts'
import { rowsMeet } from '#stove/check/spacing/rowsMeet.ts'
import type { RowOpening } from '#stove/model.ts'
import { brief, canPart, lone, round, row } from '../stoves.ts'

const found = (lower: RowOpening, upper: RowOpening) =>
  rowsMeet(contextOf(lone(canPart('shell', {}, { lower, upper })), null))

describe('rows that meet', () => {
  // One over the other: tin is the difference of heights less 4 less 3.
  const lower = row('intake', 12, round(8), 40)
  const upper = (height: number, bearing = 0): RowOpening => row('intake', 12, round(6), height, { bearing })

  test('one over the other, in four steps', () => {
    expect(found(lower, upper(53))).toEqual([])
    expect(brief(found(lower, upper(52)))).toEqual(['note spacing.rows-meet can/upper'])
    expect(found(lower, upper(49))[0]?.severity).toBe('warn')
    expect(found(lower, upper(47.2))[0]?.severity).toBe('stop')
    expect(found(lower, upper(46))[0]?.sentence).toContain('run into each other')
  })

  test('the width of the smaller one is asked for', () => {
    expect(found(lower, upper(49))[0]?.sentence).toContain('6 mm')
  })

  test('staggered by half a pitch they clear each other at one height', () => {
    // Pitch 26.18 mm: 13.09 − 4 − 3 = 6.09 mm.
    expect(found(lower, upper(40, 15))).toEqual([])
  })

  test('the fix is a turn or a height that does clear', () => {
    const [finding] = found(lower, upper(47))
    // Up: 40 + 4 + 6 + 3 = 53. Round: 11.01 mm sideways with 7 mm up make 13.05; 13° are 11.34 mm, 12° 10.47 mm.
    expect(finding?.fix).toContain('53 mm')
    expect(finding?.fix).toContain('13° ')
    expect(found(lower, upper(53))).toEqual([])
    expect(found(lower, upper(47, 13))).toEqual([])
    expect(found(lower, upper(47, 12))).not.toEqual([])
  })

  test('across the front mark, with different counts', () => {
    // 358° and 0°: 1.745 mm apart round a can of 314.16 mm, 8 mm up: 8.19 − 6 = 2.19 mm.
    const one = row('intake', 1, round(6), 40, { bearing: 358 })
    const other = row('secondary', 5, round(6), 48)
    expect(found(one, other)[0]?.sentence).toContain('2.2 mm')
  })

  test('what has no room is not advised', () => {
    // 12 holes of 6 mm 3 mm above the others would have to rise to 116 mm, into the seam at 117 mm: the
    // lower row goes down instead, and with a third row below there is only the turn.
    const low = row('intake', 12, round(8), 103)
    const high = row('intake', 12, round(6), 106)
    expect(found(low, high)[0]?.fix).not.toContain('“upper” 116 mm')
    // 106 − 3 − 6 − 4 = 93.
    expect(found(low, high)[0]?.fix).toContain('put “lower” 93 mm')
    const crowded = rowsMeet(
      contextOf(
        lone(canPart('shell', {}, { third: row('intake', 12, round(8), 85), lower: low, upper: high })),
        null,
      ),
    ).find(({ opening }) => opening === 'upper')
    expect(crowded?.fix).toContain('Turn')
    expect(crowded?.fix).not.toContain('put')
  })

  test('which row is written first does not matter', () => {
    const swapped = rowsMeet(contextOf(lone(canPart('shell', {}, { upper: upper(49), lower })), null))
    expect(swapped).toEqual(found(lower, upper(49)))
  })
})
