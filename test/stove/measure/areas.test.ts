import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { placeParts } from '#stove/assembly/place.ts'
import { areasOf } from '#stove/measure/areas.ts'
import type { Stove } from '#stove/model.ts'
import { soundStove } from '../check/soundStove.ts'
import { bore, canPart, discPart, place, round, row, stove } from '../check/stoves.ts'

const areas = (what: Stove) => areasOf(what, orThrow(placeParts(what)))
const mm2 = (area: number | undefined | null) => (area ?? Number.NaN) * 1e6

describe('open areas', () => {
  test('by duty', () => {
    const { byDuty, bed } = areas(soundStove())
    expect(mm2(bed)).toBeCloseTo(Math.PI * 49.8 ** 2, 6)
    expect(mm2(byDuty.intake)).toBeCloseTo(12 * Math.PI * 81, 6)
    expect(mm2(byDuty.primary)).toBeCloseTo(19 * Math.PI * 16 + 13 * Math.PI * 25, 6)
    expect(mm2(byDuty.secondary)).toBeCloseTo(19 * Math.PI * 16, 6)
    expect(mm2(byDuty.passage)).toBeCloseTo(Math.PI * 900, 6)
    expect(mm2(byDuty.outlet)).toBeCloseTo(3200, 6)
    expect(mm2(byDuty.tertiary)).toBe(0)
  })

  test('the choke is the smallest place for the gas that goes through it', () => {
    // Gas of 1009.15 K asks for √(1009.15/293.15) = 1.855 times the cold area: 2827 mm² count as 1524.
    const { choke, stages } = areas(soundStove())
    expect(choke?.what).toBe('passage')
    expect(choke?.part).toBe('ring')
    expect(mm2(choke?.effective)).toBeCloseTo((Math.PI * 900) / 1.85537, 1)
    expect(stages.map(({ what }) => what)).toEqual([
      'gap',
      'intake',
      'primary and secondary',
      'passage',
      'outlet',
    ])
  })

  test('a small intake chokes', () => {
    // 5 · 254.5 = 1272 mm² is less than 1524.
    expect(areas(soundStove({ shell: { intake: row('intake', 5, round(18), 30) } })).choke?.what).toBe(
      'intake',
    )
  })
})

describe('the gap between the cans', () => {
  test('its section, and what the upper seam leaves of it', () => {
    const { gaps, stages } = areas(soundStove({ ring: 145 }))
    expect(gaps.map(({ inner, outer }) => [inner, outer])).toEqual([['fuel', 'shell']])
    expect(mm2(gaps[0]?.section)).toBeCloseTo(Math.PI * (74.8 ** 2 - 50 ** 2), 6)
    // Between intake at 30 and secondary at 148 mm nothing but plain wall: the lower seam is at 18 mm.
    expect(mm2(stages[0]?.area)).toBeCloseTo(Math.PI * (74.8 ** 2 - 50 ** 2), 6)
    // At the rim the disc of 145 mm leaves a ring to the shell.
    expect(mm2(gaps[0]?.atTop)).toBeCloseTo(Math.PI * (74.8 ** 2 - 72.5 ** 2), 6)
  })

  const hung = (mouth: number) =>
    areas(
      stove(
        {
          shell: canPart('shell', { body: 150, height: 150 }),
          lid: discPart('lid ring', 152, { mouth: bore(mouth) }),
          fuel: canPart('fuel can', { height: 130, bottom: { kind: 'drawn' } }),
        },
        [place('shell', 'on ground'), place('lid', 'sits on', 'shell'), place('fuel', 'hangs in', 'lid')],
      ),
    )

  test('a can that hangs by its seam closes it', () => {
    expect(mm2(hung(101).gaps[0]?.atTop)).toBe(0)
  })

  test('a mouth wider than the seam leaves a ring', () => {
    // Seam radius 51.2 mm.
    expect(mm2(hung(106).gaps[0]?.atTop)).toBeCloseTo(Math.PI * (53 ** 2 - 51.2 ** 2), 6)
  })

  test('a mouth with a can in it is no passage', () => {
    expect(hung(101).stages.filter(({ what }) => what === 'passage')).toEqual([])
  })
})

test('a riser is a stage of its own', () => {
  const { stages } = areas(
    stove({ fuel: canPart('fuel can'), riser: canPart('riser', { body: 80, bottom: { kind: 'open' } }) }, [
      place('fuel', 'on ground'),
      place('riser', 'sits on', 'fuel'),
    ]),
  )
  expect(stages.map(({ what, area }) => [what, Math.round(mm2(area))])).toEqual([
    ['riser', Math.round(Math.PI * 39.8 ** 2)],
  ])
})
