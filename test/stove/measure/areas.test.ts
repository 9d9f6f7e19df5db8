import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { metres } from '#basis/units.ts'
import { placeParts } from '#stove/assembly/place.ts'
import { areasOf } from '#stove/measure/areas.ts'
import { placedOpenings } from '#stove/measure/openingPlace.ts'
import { waysOut } from '#stove/measure/waysOut.ts'
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

  test('every place on the way, in its order', () => {
    const { stages } = areas(soundStove())
    expect(stages.map(({ what, part }) => [what, part])).toEqual([
      ['gap', 'shell'],
      ['intake', 'shell'],
      ['primary and secondary', 'fuel'],
      ['passage', 'ring'],
      ['outlet', 'stand'],
    ])
    expect(stages.slice(1).map(({ area }) => Math.round(mm2(area)))).toEqual([3054, 2931, 2827, 3200])
  })
})

describe('ways out', () => {
  const ways = (what: Stove) => {
    const placed = orThrow(placeParts(what))
    return waysOut(what, placed, placedOpenings(placed)).map(({ part, by, area, height }) => [
      part,
      by,
      Math.round(mm2(area)),
      Math.round(height * 1000),
    ])
  }
  const breathers = { outlet: row('tertiary', 10, round(8), 20) }

  test('outlet windows, 50 mm up a stand on a shell of 180 mm', () => {
    expect(ways(soundStove())).toEqual([['stand', 'outlet', 3200, 230]])
  })

  test('the open top where no pot is on it', () => {
    // π/4 · 120² = 11310 mm².
    expect(ways({ ...soundStove({ stand: breathers }), potDiameter: null })).toEqual([
      ['stand', 'open top', 11310, 260],
    ])
  })

  test('the ring under a pot on rods', () => {
    // π · 152.4 · 12 = 5745 mm².
    expect(ways({ ...soundStove({ stand: breathers }), potGap: metres(0.012) })).toEqual([
      ['stand', 'under pot', 5745, 260],
    ])
  })

  test('air holes where nothing else is left', () => {
    expect(ways(soundStove({ stand: breathers }))).toEqual([['stand', 'for want of one', 503, 200]])
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
    ['outlet', Math.round(Math.PI * 39.8 ** 2)],
  ])
})
