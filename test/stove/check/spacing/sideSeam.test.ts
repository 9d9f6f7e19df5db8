import { describe, expect, test } from 'vitest'
import { contextOf } from '#stove/check/context.ts'
import { sideSeam } from '#stove/check/spacing/sideSeam.ts'
import type { RowOpening } from '#stove/model.ts'
import { brief, canPart, lone, round, row } from '../stoves.ts'

/** 100 mm body: one degree is 0.8727 mm; the seam stiffens 2.5 mm either side of it. */
const found = (opening: RowOpening, seam: number | null = 0) =>
  sideSeam(contextOf(lone(canPart('shell', { sideSeam: seam }, { row: opening })), null))

describe('the welded side seam', () => {
  test('a hole on it, a hole beside it, a hole clear of it', () => {
    expect(brief(found(row('intake', 6, round(8), 60)))).toEqual(['warn spacing.side-seam can/row'])
    // 6° is 5.24 mm, less 4 mm of hole.
    expect(brief(found(row('intake', 6, round(8), 60, { bearing: 6 })))).toEqual([
      'note spacing.side-seam can/row',
    ])
    // 8° is 6.98 mm, less 4 mm.
    expect(found(row('intake', 6, round(8), 60, { bearing: 8 }))).toEqual([])
  })

  test('it names the position and a turn that clears it', () => {
    const [finding] = found(row('intake', 6, round(8), 60), 120)
    expect(finding?.sentence).toContain('Position 3 ')
    // 2.5 + 0.4 + 4 = 6.9 mm is 7.91°.
    expect(finding?.fix).toContain('8° clockwise')
    expect(found(row('intake', 6, round(8), 60, { bearing: 8 }), 120)).toEqual([])
  })

  test('the shorter way round is taken', () => {
    expect(found(row('intake', 6, round(8), 60, { bearing: 358 }))[0]?.fix).toContain('6° anticlockwise')
  })

  test('a row too dense to clear it is left alone where it stands best', () => {
    // 40 holes of 4 mm: pitch 9°, tin 3.85 mm; middle between two leaves 1.93 mm each side.
    expect(found(row('intake', 40, round(4), 60, { bearing: 4.5 }))).toEqual([])
    expect(found(row('intake', 40, round(4), 60))[0]?.severity).toBe('warn')
  })

  test('nothing is said of a seam nobody knows, or of a hole left out', () => {
    expect(found(row('intake', 6, round(8), 60), null)).toEqual([])
    expect(found(row('intake', 6, round(8), 60, { leftOut: [1] }))).toEqual([])
  })
})
