import { describe, expect, test } from 'vitest'
import { contextOf } from '#stove/check/context.ts'
import { rowEdges } from '#stove/check/spacing/rowEdges.ts'
import type { RowOpening } from '#stove/model.ts'
import {
  band,
  brief,
  type CanSpec,
  canPart,
  lone,
  place,
  round,
  row,
  shelf,
  stove,
  window,
} from '../stoves.ts'

const found = (opening: RowOpening, spec: CanSpec = {}, bits: readonly number[] | null = null) =>
  rowEdges(contextOf(lone(canPart('shell', spec, { row: opening })), bits === null ? null : shelf(...bits)))
const sixteen = (height: number): RowOpening => row('intake', 6, round(16), height)
const cut: CanSpec = { bottom: { kind: 'cut' }, top: { kind: 'cut' } }

describe('tin to the ends of the can', () => {
  // Seam 3 mm high: 16 mm holes leave height − 8 − 3.
  test('a drilled hole wants its own width to the seam', () => {
    expect(found(sixteen(27))).toEqual([])
    expect(brief(found(sixteen(26)))).toEqual(['note spacing.seam can/row'])
    expect(found(sixteen(19))[0]?.severity).toBe('note')
    expect(found(sixteen(18.5))[0]?.severity).toBe('warn')
    // Three sheets are 0.6 mm.
    expect(found(sixteen(11.5))[0]?.severity).toBe('stop')
  })

  test('into the seam: a bit snatches, snips do not cut', () => {
    expect(found(sixteen(10))[0]?.sentence).toContain('five layers')
    expect(found(sixteen(10))[0]?.severity).toBe('stop')
    // Can 120 mm high, top seam from 117 mm.
    expect(brief(found(row('outlet', 6, window(20, 20), 108)))).toEqual(['warn spacing.seam can/row'])
    expect(found(row('outlet', 6, window(20, 20), 103))).toEqual([])
  })

  test('the nearest height that would do is worked out', () => {
    expect(found(sixteen(18))[0]?.fix).toContain('27 mm')
    // From above: 117 − 16 − 8.
    expect(found(sixteen(105))[0]?.fix).toContain('93 mm')
  })

  test('and told from the edge that the maker measures from', () => {
    // Can 120 mm high, 93 mm from below.
    const fix = found({ ...sixteen(105), measuredFrom: 'top' })[0]?.fix
    expect(fix).toContain('27 mm')
    expect(fix).toContain('below the top edge')
    expect(found(sixteen(105))[0]?.fix).toContain('above the bottom edge')
  })

  test('where no height would do, the bit is worked out', () => {
    // Can 40 mm high: 34 mm of plain wall, a third of it is 11.3 mm.
    const fix = found(sixteen(20), { height: 40 })[0]?.fix
    expect(fix).toContain('11 mm')
    expect(fix).toContain('20 mm')
    expect(found(row('intake', 6, round(11), 20), { height: 40 })).toEqual([])
    expect(found(sixteen(20), { height: 40 }, [4, 6])[0]?.fix).toContain('6 mm bit from the shelf')
  })

  test('a cut edge: a strip too thin to cut, a notch that is meant, a hole that is not', () => {
    expect(found(row('outlet', 6, window(20, 20), 108), cut)[0]?.severity).toBe('warn')
    expect(found(row('outlet', 6, window(20, 20), 110), cut)).toEqual([])
    expect(brief(found(row('outlet', 6, round(20), 115), cut))).toEqual(['warn spacing.edge can/row'])
    expect(found(row('outlet', 6, window(20, 20), 107), cut)).toEqual([])
  })

  test('off the can', () => {
    expect(brief(found(sixteen(121)))).toEqual(['stop spacing.off-the-wall can/row'])
  })
})

describe('tin to a bead', () => {
  // Bead from 50 to 56 mm; 16 mm holes reach 8 mm up; three sheets are 0.6 mm.
  const beaded: CanSpec = { beads: [[50, 56]] }
  test('on it, at it, clear of it', () => {
    expect(brief(found(sixteen(45), beaded))).toEqual(['warn spacing.bead can/row'])
    expect(brief(found(sixteen(41.7), beaded))).toEqual(['note spacing.bead can/row'])
    expect(found(sixteen(41), beaded)).toEqual([])
  })

  test('the fix clears the bead', () => {
    // 50 − 0.6 − 8 = 41.4, marked out at 41 mm.
    expect(found(sixteen(45), beaded)[0]?.fix).toContain('41 mm')
  })
})

test('a damper band has edges too', () => {
  const damped = stove(
    { can: canPart('shell'), damper: band(20, { windows: row('intake', 6, window(12, 16), 9) }) },
    [place('can', 'on ground'), place('damper', 'slips over', 'can', { raised: 10 })],
  )
  // 16 mm at 9 mm: 1 mm below, 3 mm above.
  expect(brief(rowEdges(contextOf(damped, null)))).toEqual(['warn spacing.edge damper/windows'])
})
