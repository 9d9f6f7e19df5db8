import { describe, expect, test } from 'vitest'
import { contextOf } from '#stove/check/context.ts'
import { rowSpacing } from '#stove/check/spacing/rowSpacing.ts'
import type { RowOpening, Shelf } from '#stove/model.ts'
import { brief, canPart, lone, round, row, shelf, slit, window } from '../stoves.ts'

/** A can of 314.159 mm round. */
const found = (opening: RowOpening, bits: Shelf | null = null) =>
  rowSpacing(contextOf(lone(canPart('shell', {}, { row: opening })), bits))

describe('tin between neighbours', () => {
  // A hole’s width wants 314.159/n ≥ 18: 17 holes leave 9.48 mm, 18 leave 8.45 mm.
  test('one hole’s width is enough, a little less is worth a note', () => {
    expect(found(row('intake', 17, round(9), 60))).toEqual([])
    expect(brief(found(row('intake', 18, round(9), 60)))).toEqual(['note spacing.neighbours can/row'])
  })

  // Half a hole’s width is 4.5 mm: 23 leave 4.66 mm, 24 leave 4.09 mm.
  test('less than half a hole’s width is a warning', () => {
    expect(found(row('intake', 23, round(9), 60))[0]?.severity).toBe('note')
    expect(found(row('intake', 24, round(9), 60))[0]?.severity).toBe('warn')
  })

  // Twice 0.2 mm of sheet: 33 leave 0.52 mm, 34 leave 0.24 mm, 35 overlap by 0.02 mm.
  test('less than two sheets, or none, stops', () => {
    expect(found(row('intake', 33, round(9), 60))[0]?.severity).toBe('warn')
    expect(found(row('intake', 34, round(9), 60))[0]?.severity).toBe('stop')
    expect(found(row('intake', 35, round(9), 60))[0]?.sentence).toContain('run into each other')
  })

  test('the count and the bit that would do are worked out', () => {
    // 30 holes: pitch 10.472 mm, tin 1.472 mm. 314.159/18 = 17.4 holes; half the pitch is 5.236 mm.
    const [finding] = found(row('intake', 30, round(9), 60))
    expect(finding?.sentence).toContain('leave 1.5 mm')
    expect(finding?.fix).toContain('Use 17 holes')
    expect(finding?.fix).toContain('57 % of the area')
    expect(finding?.fix).toContain('5 mm (13/64 in) bit')
    // (5/9)² = 0.309
    expect(finding?.fix).toContain('31 % of the area')
    expect(found(row('intake', 17, round(9), 60))).toEqual([])
    expect(found(row('intake', 30, round(5), 60))).toEqual([])
  })

  test('with a shelf the bit is one that is owned', () => {
    const fix = found(row('intake', 30, round(9), 60), shelf(3, 4.5, 8))[0]?.fix
    expect(fix).toContain('4.5 mm bit from the shelf')
    expect(found(row('intake', 30, round(9), 60), shelf(8))[0]?.fix).not.toContain('bit')
  })

  test('left-out positions make room only where they are', () => {
    // Ten positions of 32 mm windows at 31.4 mm; every other one left out leaves 30.8 mm.
    expect(found(row('intake', 10, window(32, 10), 60))[0]?.severity).toBe('stop')
    expect(found(row('intake', 10, window(32, 10), 60, { leftOut: [2, 4, 6, 8, 10] }))).toEqual([])
  })

  test('cuts made with snips want three millimetres whatever their width', () => {
    // 314.159/10 = 31.416: windows of 28 leave 3.4 mm, of 29 leave 2.4 mm.
    expect(found(row('intake', 10, window(28, 10), 60))).toEqual([])
    expect(brief(found(row('intake', 10, window(29, 10), 60)))).toEqual(['warn spacing.neighbours can/row'])
    expect(found(row('intake', 60, slit(20, 2, 'axis'), 60))).toEqual([])
    expect(found(row('intake', 70, slit(20, 2, 'axis'), 60))[0]?.severity).toBe('warn')
  })

  test('a single hole has no neighbour', () => {
    expect(found(row('intake', 1, round(30), 60))).toEqual([])
  })
})
