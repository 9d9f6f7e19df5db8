import { describe, expect, test } from 'vitest'
import { metres } from '#basis/units.ts'
import { airPath } from '#stove/check/air/airPath.ts'
import { areaRatios } from '#stove/check/air/areaRatios.ts'
import { dutyPlace } from '#stove/check/air/dutyPlace.ts'
import { floorBlocked } from '#stove/check/air/floorBlocked.ts'
import { fuelLine } from '#stove/check/air/fuelLine.ts'
import { type Check, contextOf } from '#stove/check/context.ts'
import type { Shelf, Stove } from '#stove/model.ts'
import { soundStove } from '../soundStove.ts'
import {
  bore,
  brief,
  canPart,
  discPart,
  type Openings,
  place,
  pullOff,
  rings,
  round,
  row,
  shelf,
  stove,
  vanes,
  window,
} from '../stoves.ts'

const ask = (check: Check, what: Stove, bits: Shelf | null = null) => check(contextOf(what, bits))

/** A fuel can 120 mm high on the ground, floor at 3 mm. */
const single = (openings: Openings, more: { readonly fuelLevel?: number; readonly raised?: number } = {}) =>
  stove(
    { fuel: canPart('fuel can', {}, openings) },
    [place('fuel', 'on ground', null, { raised: more.raised ?? 0 })],
    more,
  )

describe('the fuel line', () => {
  // Floor at 3 mm, fuel 60 mm: fuel line at 63 mm; holes of 6 mm reach 3 mm down.
  const at = (height: number) =>
    ask(fuelLine, single({ upper: row('secondary', 12, round(6), height) }, { fuelLevel: 60 }))

  test('ten millimetres of free wall under the secondary row', () => {
    expect(at(76)).toEqual([])
    expect(brief(at(75))).toEqual(['warn fuel.near-secondary fuel/upper'])
    expect(at(64)[0]?.severity).toBe('warn')
    expect(brief(at(63))).toEqual(['stop fuel.over-secondary fuel/upper'])
  })

  test('the fill and the height that would do', () => {
    // Row at 70: lower edge 67, less 10, less the floor’s 3: 54 mm. Or 63 + 10 − 67 = 6 mm higher.
    const [finding] = at(70)
    expect(finding?.sentence).toContain('only 4 mm')
    expect(finding?.fix).toContain('Fill to 54 mm')
    expect(finding?.fix).toContain('6 mm')
    expect(at(76)).toEqual([])
    expect(ask(fuelLine, single({ upper: row('secondary', 12, round(6), 70) }, { fuelLevel: 54 }))).toEqual(
      [],
    )
  })

  test('primary holes belong below it', () => {
    const primary = (height: number) => ask(fuelLine, single({ low: row('primary', 12, round(6), height) }))
    expect(primary(65)).toEqual([])
    expect(brief(primary(66))).toEqual(['warn fuel.primary-above fuel/low'])
  })

  test('over the rim, and up to the concentrator', () => {
    const under = (fuelLevel: number, drop: number) =>
      brief(
        ask(
          fuelLine,
          stove(
            {
              fuel: canPart('fuel can'),
              disc: discPart('concentrator', 104, { v: vanes(6, 20, 40, 2 * drop, { bend: 'down' }) }),
            },
            [place('fuel', 'on ground'), place('disc', 'sits on', 'fuel')],
            { fuelLevel },
          ),
        ),
      )
    // Rim at 120 mm; vanes of twice the drop, bent 30°, hang by the drop.
    expect(under(110, 5)).toEqual([])
    expect(under(113, 5)).toEqual(['warn fuel.at-concentrator disc'])
    expect(under(118, 5)).toEqual(['stop fuel.over-rim fuel', 'warn fuel.at-concentrator disc'])
  })

  test('a grate lifts the fuel', () => {
    const grated = (raised: number) =>
      brief(
        ask(
          fuelLine,
          stove(
            {
              fuel: canPart('fuel can', {}, { upper: row('secondary', 12, round(6), 90) }),
              grate: discPart('grate', 98),
            },
            [place('fuel', 'on ground'), place('grate', 'stands in', 'fuel', { raised })],
          ),
        ),
      )
    // 3 + raised + 0.3 + 60 + 10 against 87.
    expect(grated(13)).toEqual([])
    expect(grated(15)).toEqual(['warn fuel.near-secondary fuel/upper'])
  })

  test('nothing under the fuel', () => {
    const open = stove({ fuel: canPart('fuel can', { bottom: pullOff(80) }) }, [place('fuel', 'on ground')])
    expect(brief(ask(fuelLine, open))).toEqual(['stop fuel.no-floor fuel'])
  })
})

describe('what openings are called and where they lie', () => {
  const of = (what: Stove) => brief(ask(dutyPlace, what))

  test('the sound stove is named rightly', () => {
    expect(of(soundStove())).toEqual([])
  })

  test('an intake on the fuel can', () => {
    expect(of(soundStove({ fuel: { low: row('intake', 13, round(10), 20) } }))).toEqual([
      'warn duty.intake fuel/low',
    ])
    // With no shell round it, it is only a matter of names.
    expect(of(single({ low: row('intake', 13, round(10), 20) }))).toEqual(['note duty.intake fuel/low'])
    expect(ask(dutyPlace, single({ low: row('intake', 13, round(10), 20) }))[0]?.fix).toBe(
      'Call them primary.',
    )
    expect(ask(dutyPlace, single({ low: row('intake', 13, round(10), 100) }))[0]?.fix).toBe(
      'Call them secondary.',
    )
  })

  test('primary or secondary on the shell', () => {
    expect(of(soundStove({ shell: { intake: row('primary', 12, round(18), 30) } }))).toEqual([
      'warn duty.primary shell/intake',
    ])
    expect(of(soundStove({ shell: { intake: row('secondary', 12, round(18), 30) } }))).toEqual([
      'warn duty.secondary shell/intake',
    ])
  })

  test('tertiary and outlet belong over the concentrator', () => {
    // The disc lies at 168 mm: shell 180 mm high, so a row at 172 mm on it is above, at 160 mm below.
    const third = (height: number) =>
      of(soundStove({ shell: { third: row('tertiary', 8, round(6), height) } }))
    expect(third(172)).toEqual([])
    expect(third(160)).toEqual(['warn duty.tertiary shell/third'])
    expect(of(soundStove({ shell: { out: row('outlet', 8, round(6), 160) } }))).toEqual([
      'warn duty.outlet shell/out',
    ])
  })

  test('an intake above the secondary row is cold', () => {
    // Secondary from 144 to 152 mm.
    expect(of(soundStove({ shell: { intake: row('intake', 12, round(6), 154) } }))).toEqual([])
    expect(of(soundStove({ shell: { intake: row('intake', 12, round(6), 156) } }))).toEqual([
      'note duty.intake shell/intake',
    ])
  })
})

describe('air under a floor', () => {
  const floor: Openings = {
    floor: rings('primary', 8, [
      [16, 6],
      [32, 12],
    ]),
  }

  test('flat on the ground no air comes', () => {
    expect(brief(ask(floorBlocked, single(floor)))).toEqual(['stop air.floor-blocked fuel/floor'])
  })

  test('the gap round the rim has to be as large as the holes', () => {
    // Twice 18 · 16π = 904.8 mm² over 2π · 51.2 = 321.7 mm of rim: 5.62 mm, set as 6 mm.
    expect(brief(ask(floorBlocked, single(floor, { raised: 5.5 })))).toEqual([
      'warn air.floor-throttled fuel/floor',
    ])
    expect(ask(floorBlocked, single(floor, { raised: 6 }))).toEqual([])
    expect(ask(floorBlocked, single(floor))[0]?.fix).toContain('6 mm')
  })

  const standing = (shellFloor: Openings, raised: number) =>
    stove(
      {
        shell: canPart('shell', { body: 150, height: 180 }, shellFloor),
        fuel: canPart('fuel can', {}, floor),
      },
      [place('shell', 'on ground', null, { raised: 20 }), place('fuel', 'stands in', 'shell', { raised })],
    )
  test('flat on the closed floor of the shell, or on an open one', () => {
    expect(brief(ask(floorBlocked, standing({}, 0)))).toEqual(['stop air.floor-blocked fuel/floor'])
    expect(ask(floorBlocked, standing({}, 6))).toEqual([])
    expect(ask(floorBlocked, standing({ holes: rings('intake', 10, [[20, 6]]) }, 0))).toEqual([])
  })

  test('a grate flat on a closed floor', () => {
    const grated = (raised: number) =>
      stove(
        {
          fuel: canPart('fuel can'),
          grate: discPart('grate', 98, { g: rings('primary', 5, [[20, 8]], 'face') }),
        },
        [place('fuel', 'on ground'), place('grate', 'stands in', 'fuel', { raised })],
      )
    expect(brief(ask(floorBlocked, grated(0)))).toEqual(['stop air.floor-blocked grate/g'])
    expect(ask(floorBlocked, grated(5))).toEqual([])
  })
})

describe('a way in and a way out', () => {
  const of = (what: Stove) => brief(ask(airPath, what))

  test('a sound stove has both', () => {
    expect(of(soundStove())).toEqual([])
  })

  test('no air to the fuel', () => {
    const upper = row('secondary', 12, round(6), 100)
    expect(of(single({ upper }))).toEqual(['stop air.no-primary fuel'])
    expect(of(single({ upper, low: row('primary', 12, round(6), 20) }))).toEqual([])
    expect(of(single({ upper, screws: row('fixing', 3, round(3), 20) }))).toEqual([
      'stop air.no-primary fuel',
    ])
  })

  test('no air for the gas', () => {
    expect(of(single({ low: row('primary', 12, round(6), 20) }))).toEqual(['warn air.no-secondary fuel'])
  })

  test('no air into the shell', () => {
    const lidded = (openings: Openings) =>
      stove(
        {
          shell: canPart('shell', { body: 150, height: 140 }, openings),
          fuel: canPart(
            'fuel can',
            { height: 137 },
            { low: row('primary', 12, round(6), 20), upper: row('secondary', 12, round(6), 100) },
          ),
          // Lies on both rims: the fuel can ends at 140 mm as the shell does.
          lid: discPart('lid ring', 152, { mouth: bore(95) }),
        },
        [place('shell', 'on ground'), place('fuel', 'stands in', 'shell'), place('lid', 'sits on', 'shell')],
      )
    expect(of(lidded({}))).toEqual(['stop air.no-intake shell'])
    expect(of(lidded({ intake: row('intake', 12, round(16), 30) }))).toEqual([])
  })

  test('the pot closes the top', () => {
    const topped = (pot: number | null, openings: Openings = {}) =>
      stove(
        {
          fuel: canPart(
            'fuel can',
            {},
            { low: row('primary', 12, round(6), 20), upper: row('secondary', 12, round(6), 100) },
          ),
          stand: canPart('pot stand', { bottom: { kind: 'open' } }, openings),
        },
        [place('fuel', 'on ground'), place('stand', 'sits on', 'fuel')],
        { pot },
      )
    expect(of(topped(150))).toEqual(['stop air.no-outlet stand'])
    expect(of(topped(null))).toEqual([])
    expect(of(topped(150, { out: row('outlet', 6, window(15, 15), 90) }))).toEqual([])
    expect(of(topped(150, { in: row('tertiary', 6, window(15, 15), 90) }))).toEqual([
      'warn air.no-outlet stand',
    ])
    expect(of({ ...topped(150), potGap: metres(0.01) })).toEqual([])
  })

  test('no can for the fuel', () => {
    expect(of(stove({ shell: canPart('shell') }, [place('shell', 'on ground')]))).toEqual([
      'stop parts.no-fuel-can shell',
    ])
  })
})

describe('areas', () => {
  const of = (what: Stove) => brief(ask(areaRatios, what))

  test('the sound stove lies within every range', () => {
    expect(of(soundStove())).toEqual([])
  })

  // Section 7791.28 mm²: 11 % is 857.0, 15 % is 1168.7 mm².
  test('secondary share of the section', () => {
    const secondary = (count: number, hole: number) =>
      ask(areaRatios, soundStove({ fuel: { upper: row('secondary', count, round(hole), 130) } })).filter(
        ({ code }) => code === 'areas.secondary-to-bed',
      )
    // Holes of 8 mm are 50.27 mm²: 18 are 904.8 (11.6 %), 17 are 854.5 (10.97 %), 11 are 552.9 (7.1 %).
    expect(secondary(18, 8)).toEqual([])
    expect(secondary(17, 8)[0]?.severity).toBe('note')
    expect(secondary(11, 8)[0]?.severity).toBe('warn')
    // 857.0/50.27 = 17.05: eighteen, and 314.16/18 − 8 = 9.5 mm of tin. Or √(4 · 1012.9/(11π)) = 10.8 mm: 11 mm.
    expect(secondary(11, 8)[0]?.fix).toContain('Use 18 holes')
    expect(secondary(11, 8)[0]?.fix).toContain('11 mm')
    expect(secondary(11, 11)).toEqual([])
  })

  test('with a shelf the bit is an owned one', () => {
    const meagre = soundStove({ fuel: { upper: row('secondary', 11, round(8), 130) } })
    // 11 holes want 9.96 to 11.63 mm.
    expect(ask(areaRatios, meagre, shelf(8, 10, 12))[0]?.fix).toContain('10 mm bit from the shelf')
    expect(ask(areaRatios, meagre, shelf(8, 12))[0]?.fix).not.toContain('from the shelf')
  })

  test('where neither would do, an area is asked for', () => {
    // 5 mm is 19.63 mm²: 44 holes would stand 2.1 mm apart, and 30 of 6.5 mm 4 mm apart.
    const fix = ask(areaRatios, soundStove({ fuel: { upper: row('secondary', 30, round(5), 130) } }))[0]?.fix
    expect(fix).toContain('Add a second row')
    expect(fix).toContain('857 mm²')
  })

  test('intake against what it feeds', () => {
    // 955 + 1976 = 2931 mm²; 18 mm is 254.5 mm²: 11 are 2799 (0.955), 5 are 1272 (0.434).
    const intake = (count: number) => soundStove({ shell: { intake: row('intake', count, round(18), 30) } })
    expect(of(intake(11))).toEqual(['note areas.intake-small shell/intake'])
    expect(of(intake(5))).toEqual(['warn areas.intake-small shell/intake'])
    // 1/(1 + 0.955²) = 52 %.
    expect(ask(areaRatios, intake(11))[0]?.sentence).toContain('52 %')
    expect(ask(areaRatios, intake(11))[0]?.fix).toContain('Use 12 holes')
  })

  test('primary against secondary', () => {
    // Without the wall row 955 mm² of floor holes: once the secondary.
    const floorOnly = soundStove({ fuel: { low: row('fixing', 3, round(3), 20) } })
    expect(of(floorOnly)).toEqual(['note areas.primary-to-secondary fuel/floor'])
    // Twice 955 mm². The floor of 99.6 mm holds π/(8 √3) · π (49.8 − 8)² = 1245 mm² with full webs.
    const fix = ask(areaRatios, floorOnly)[0]?.fix
    expect(fix).toContain('Leave it where a prediction burns clean')
    expect(fix).toContain('room for about 1245 mm²')
  })

  test('a ring left open over the secondary row', () => {
    // Disc 145 mm in 149.6 mm: π(74.8² − 72.5²) = 1064 mm² against 955; 148.4 mm: 281 mm², 0.29; 149 mm: touching.
    expect(of(soundStove({ ring: 145 }))).toEqual(['warn areas.leak-at-rim fuel'])
    expect(of(soundStove({ ring: 148.4 }))).toEqual(['note areas.leak-at-rim fuel'])
    expect(of(soundStove({ ring: 149 }))).toEqual([])
  })

  test('outlet against the concentrator', () => {
    // 2827 mm²: 7 windows of 400 mm² are 2800, 4 are 1600.
    const outlet = (count: number) =>
      of(soundStove({ stand: { outlet: row('outlet', count, window(20, 20), 50) } }))
    expect(outlet(7)).toEqual(['note areas.outlet-small stand/outlet'])
    expect(outlet(4)).toEqual(['warn areas.outlet-small stand/outlet'])
    // Ten air holes of 8 mm are 503 mm², all there is; rods of 3 mm under the pot leave π · 152.4 · 3 = 1436 mm².
    const shut = soundStove({ stand: { outlet: row('tertiary', 10, round(8), 20) } })
    expect(of(shut)).toEqual(['warn areas.outlet-small stand'])
    expect(ask(areaRatios, shut)[0]?.fix).toContain('Cut windows close under the rim of “stand”: 2827 mm²')
    const lifted = { ...shut, potGap: metres(0.003) }
    expect(of(lifted)).toEqual(['warn areas.outlet-small stand'])
    expect(ask(areaRatios, lifted)[0]?.fix).toContain('Stand the pot 2 times as high')
  })
})
