import { describe, expect, test } from 'vitest'
import { fromMillimetres as mm } from '#basis/units.ts'
import { contextOf } from '#stove/check/context.ts'
import { drillReach } from '#stove/check/drill/drillReach.ts'
import { brief, type CanSpec, canPart, lone, type Openings, plain, rings, round, row } from '../stoves.ts'

const found = (spec: CanSpec, openings: Openings) =>
  drillReach(contextOf(lone(canPart('fuel can', spec, openings)), null))

describe('a floor pattern', () => {
  const pattern: Openings = {
    floor: rings('primary', 6, [
      [15, 6],
      [32, 12],
    ]),
  }

  // A bit of 6 mm is 93 mm long, 25 mm of it in the chuck: 68 mm free, then 45 mm of chuck, 40 mm wide.
  test('a shallow can lets the drill in, a deeper one only the chuck, a deep one nothing', () => {
    expect(found({ height: 70 }, pattern)).toEqual([])
    const [deeper] = found({ height: 100 }, pattern)
    // The chuck keeps 20 mm from the wall at 49.8 mm: 29.8 mm, so the outer ring of 12 is out of reach.
    expect(deeper?.severity).toBe('note')
    expect(deeper?.sentence).toContain('12 of the 18 holes')
    expect(deeper?.fix).toContain('from outside')
    const [deep] = found({ height: 150 }, pattern)
    expect(deep?.sentence).toContain('does not reach the 18 holes')
  })

  test('a wide can has room for the chuck', () => {
    expect(found({ body: 150, height: 100 }, pattern)).toEqual([])
  })

  test('neither from outside nor from inside', () => {
    const sunk = { ...plain, countersink: mm(100) }
    expect(brief(found({ height: 230, bottom: sunk }, pattern))).toEqual([
      'warn drill.cannot-reach can/floor',
    ])
  })
})

describe('a hole in the wall', () => {
  // A step drill at 20 mm: (20 − 4)/2 + 1 = 9 steps of 5 mm = 45 mm deep.
  test('the step drill meets the far wall of a narrow can', () => {
    expect(brief(found({ body: 45 }, { r: row('intake', 3, round(20), 60) }))).toEqual([
      'warn drill.far-wall can/r',
    ])
    expect(found({ body: 46 }, { r: row('intake', 3, round(20), 60) })).toEqual([])
    expect(found({ body: 45 }, { r: row('intake', 3, round(12), 60) })).toEqual([])
  })

  test('finer than a millimetre, or than the sheet', () => {
    expect(brief(found({}, { r: row('fixing', 3, round(0.8), 60) }))).toEqual(['warn drill.too-small can/r'])
    expect(found({}, { r: row('fixing', 3, round(1), 60) })).toEqual([])
    expect(found({ wall: 1.5 }, { r: row('fixing', 3, round(1.2), 60) })).toHaveLength(1)
  })
})
