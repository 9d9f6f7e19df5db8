import { describe, expect, test } from 'vitest'
import { type Chamber, type ChamberMap, mapChambers, type Throat } from '#science/draft/chambers.ts'
import type { Profile, ProfilePlate, ProfileWall } from '#stove/assembly/profile.ts'

/** A can's wall of 0.2 mm tin; millimetres. */
const wall = (part: string, radius: number, bottom: number, top: number): ProfileWall => ({
  part,
  innerRadius: (radius - 0.2) / 1000,
  outerRadius: radius / 1000,
  bottom: bottom / 1000,
  top: top / 1000,
})

const plate = (
  part: string,
  inner: number,
  outer: number,
  height: number,
  more: Partial<ProfilePlate> = {},
): ProfilePlate => ({
  part,
  face: 'face',
  bore: inner > 0 ? 'bore' : null,
  innerRadius: inner / 1000,
  outerRadius: outer / 1000,
  height: height / 1000,
  ...more,
})

const ground = plate('ground', 0, 10_000, 0)
const ring = (inner: number, outer: number): number => (Math.PI * (outer ** 2 - inner ** 2)) / 1e6

const named = ({ chambers }: ChamberMap, within: string): Chamber[] =>
  chambers.filter((c) => c.within === within)
const only = <T>(list: readonly T[]): T => {
  expect(list).toHaveLength(1)
  return list[0] as T
}
const toOpenAir = ({ throats }: ChamberMap): Throat[] =>
  throats.filter(({ below, above }) => below === null || above === null)

/** Shell with a floor, fuel can 20 mm over it, both 120 mm high at the top. */
const shell = [wall('shell', 55, 0, 120)]
const fuelCan = [wall('fuel can', 45, 20, 120)]
const floors = [ground, plate('shell', 0, 55, 0), plate('fuel can', 0, 45, 20)]

describe('two walls', () => {
  const open = mapChambers({ walls: [...shell, ...fuelCan], plates: floors })

  test('are three spaces: under the fuel can, in it, and the gap round it', () => {
    expect(open.chambers).toHaveLength(3)
    const [under, gap] = named(open, 'shell')
    expect(under).toMatchObject({ innerRadius: 0, bottom: 0, top: 0.02 })
    expect(gap).toMatchObject({ innerRadius: 0.045, bottom: 0.02, top: 0.12 })
    expect(only(named(open, 'fuel can'))).toMatchObject({ innerRadius: 0, bottom: 0.02, top: 0.12 })
  })

  test('without a ring the gap is open at the top over its whole width', () => {
    const gap = named(open, 'shell')[1]
    const mouth = only(toOpenAir(open).filter(({ below }) => below === gap))
    expect(mouth.area).toBeCloseTo(ring(45, 54.8), 9)
    expect(mouth.hydraulicDiameter).toBeCloseTo(2 * 0.0098, 9)
  })

  test('a ring from can to shell closes the gap', () => {
    const closed = mapChambers({
      walls: [...shell, ...fuelCan],
      plates: [...floors, plate('shell', 44, 55, 120, { face: 'top', bore: null })],
    })
    expect(toOpenAir(closed)).toHaveLength(1)
    expect(only(toOpenAir(closed)).below?.within).toBe('fuel can')
    expect(only(toOpenAir(closed)).area).toBeCloseTo(ring(0, 44), 9)
  })

  test('a ring that leaves a slit lets through what it leaves', () => {
    const slit = mapChambers({
      walls: [...shell, ...fuelCan],
      plates: [...floors, plate('shell', 48, 55, 120, { face: 'top', bore: null })],
    })
    const gap = named(slit, 'shell')[1]
    expect(only(toOpenAir(slit).filter(({ below }) => below === gap)).area).toBeCloseTo(ring(45, 48), 9)
  })

  test('tin on tin is tight: a slit of 0.1 mm is none', () => {
    const tight = mapChambers({
      walls: [...shell, ...fuelCan],
      plates: [...floors, plate('shell', 45.1, 55, 120, { face: 'top', bore: null })],
    })
    expect(toOpenAir(tight).every(({ below }) => below?.within === 'fuel can')).toBe(true)
  })

  test('the space under the fuel can meets the gap over the gap’s width', () => {
    const [under, gap] = named(open, 'shell')
    const throat = only(open.throats.filter(({ below, above }) => below === under && above === gap))
    expect(throat.area).toBeCloseTo(ring(45, 54.8), 9)
    expect(throat.height).toBe(0.02)
  })
})

describe('a concentrator', () => {
  const walls = [...shell, ...fuelCan]

  test('on the shell with its bore over the fuel can leaves one way out, its bore', () => {
    const map = mapChambers({ walls, plates: [...floors, plate('concentrator', 20, 55, 120)] })
    const bore = only(toOpenAir(map))
    expect(bore.area).toBeCloseTo(ring(0, 20), 9)
    expect(bore.rim?.part).toBe('concentrator')
    expect(bore.below?.within).toBe('fuel can')
    expect(bore.hydraulicDiameter).toBeCloseTo(0.04, 9)
  })

  test('on the fuel can alone leaves the gap open beside it', () => {
    const map = mapChambers({ walls, plates: [...floors, plate('concentrator', 20, 46, 120)] })
    const beside = only(toOpenAir(map).filter(({ below }) => below?.within === 'shell'))
    expect(beside.area).toBeCloseTo(ring(46, 54.8), 9)
    expect(beside.rim).toBeNull()
  })

  test('two discs on each other let through the narrower bore only', () => {
    const map = mapChambers({
      walls,
      plates: [...floors, plate('lid ring', 44, 55, 120), plate('concentrator', 20, 55, 120.3)],
    })
    const out = only(toOpenAir(map))
    expect(out.area).toBeCloseTo(ring(0, 20), 9)
    expect(out.rim?.part).toBe('concentrator')
  })

  test.each([0.2, 0.7, 1.5, 3])('%d mm thick, it stays tight under the stand on it', (thickness) => {
    const stand = wall('stand', 50, 120 + thickness, 200)
    const map = mapChambers({
      walls: [...walls, stand],
      plates: [...floors, plate('concentrator', 20, 55, 120, { thickness: thickness / 1000 })],
    })
    const bore = only(map.throats.filter(({ rim }) => rim?.part === 'concentrator'))
    expect(bore.above?.within).toBe('stand')
    expect(only(toOpenAir(map)).below?.within).toBe('stand')
  })

  test('two thick discs stay tight too', () => {
    const map = mapChambers({
      walls: [...walls, wall('stand', 50, 122, 200)],
      plates: [
        ...floors,
        plate('lid ring', 44, 55, 120, { thickness: 1e-3 }),
        plate('concentrator', 20, 55, 121, { thickness: 1e-3 }),
      ],
    })
    expect(only(map.throats.filter(({ rim }) => rim?.part === 'concentrator')).above?.within).toBe('stand')
    expect(only(toOpenAir(map)).below?.within).toBe('stand')
  })
})

describe('what stands on top', () => {
  const disc = plate('concentrator', 20, 55, 120)
  const walls = [...shell, ...fuelCan]

  test('a riser is a space of its own, open at the top over its bore', () => {
    const map = mapChambers({ walls: [...walls, wall('riser', 36, 120, 300)], plates: [...floors, disc] })
    const riser = only(named(map, 'riser'))
    expect(riser).toMatchObject({ innerRadius: 0, bottom: 0.12, top: 0.3 })
    expect(only(toOpenAir(map)).below).toBe(riser)
    expect(only(toOpenAir(map)).area).toBeCloseTo(ring(0, 35.8), 9)
  })

  test('a riser as wide as the can under it, with nothing between, is the same space', () => {
    const map = mapChambers({
      walls: [wall('fuel can', 45, 20, 120), wall('riser', 45.1, 120, 300)],
      plates: [ground, plate('fuel can', 0, 45, 20)],
    })
    expect(only(map.chambers)).toMatchObject({ bottom: 0.02, top: 0.3 })
  })

  test('a stand wider than the disc lets air in round it from below', () => {
    const map = mapChambers({ walls: [...walls, wall('stand', 65, 120, 190)], plates: [...floors, disc] })
    const round = only(map.throats.filter(({ below, above }) => below === null && above?.within === 'stand'))
    // From the shell's outside, which is wider than the disc, to the stand's inside.
    expect(round.area).toBeCloseTo(ring(55, 64.8), 9)
  })

  test('a stand narrower than the disc is tight at its foot', () => {
    const map = mapChambers({ walls: [...walls, wall('stand', 50, 120, 190)], plates: [...floors, disc] })
    expect(map.throats.filter(({ below, above }) => below === null && above?.within === 'stand')).toEqual([])
  })

  test('a stand that slips over the shell is a second gap, open below', () => {
    const map = mapChambers({ walls: [...walls, wall('stand', 60, 100, 190)], plates: [...floors, disc] })
    const skirt = only(named(map, 'stand').filter(({ innerRadius }) => innerRadius > 0))
    expect(skirt).toMatchObject({ innerRadius: 0.055, bottom: 0.1, top: 0.12 })
    expect(only(toOpenAir(map).filter(({ above }) => above === skirt)).area).toBeCloseTo(ring(55, 59.8), 9)
  })

  test('a pot that covers the stand closes it', () => {
    const map = mapChambers({
      walls: [...walls, wall('stand', 50, 120, 190)],
      plates: [...floors, disc, plate('pot', 0, 80, 190, { face: null })],
    })
    expect(toOpenAir(map)).toEqual([])
  })

  test('a pot smaller than the stand leaves a ring', () => {
    const map = mapChambers({
      walls: [...walls, wall('stand', 50, 120, 190)],
      plates: [...floors, disc, plate('pot', 0, 40, 190, { face: null })],
    })
    expect(only(toOpenAir(map)).area).toBeCloseTo(ring(40, 49.8), 9)
  })
})

describe('the foot', () => {
  test('on the ground is shut', () => {
    const map = mapChambers({ walls: [wall('fuel can', 45, 0, 120)], plates: [ground] })
    expect(toOpenAir(map).every(({ above }) => above === null)).toBe(true)
  })

  test('raised on feet is open over the whole can', () => {
    const map = mapChambers({ walls: [wall('fuel can', 45, 15, 120)], plates: [ground] })
    const foot = only(toOpenAir(map).filter(({ below }) => below === null))
    expect(foot.area).toBeCloseTo(ring(0, 44.8), 9)
    expect(foot.height).toBe(0.015)
  })
})

describe('cuts at the floor and the top of the fuel', () => {
  const map = mapChambers({ walls: [...shell, ...fuelCan], plates: floors }, [0.02, 0.08])

  test('part the fuel can in two, joined over its whole bore', () => {
    const [bed, flame] = named(map, 'fuel can')
    expect(bed).toMatchObject({ bottom: 0.02, top: 0.08 })
    expect(flame).toMatchObject({ bottom: 0.08, top: 0.12 })
    expect(only(map.throats.filter(({ below, above }) => below === bed && above === flame)).area).toBeCloseTo(
      ring(0, 44.8),
      9,
    )
  })

  test('leave the gap beside it whole', () => {
    expect(named(map, 'shell').filter(({ innerRadius }) => innerRadius > 0)).toHaveLength(1)
  })
})

describe('looking through a wall or a plate', () => {
  const map = mapChambers({ walls: [...shell, ...fuelCan], plates: floors })

  test('finds the space on either side of a wall at a height', () => {
    expect(map.beside('shell', 0.01, 'outside')).toBeNull()
    expect(map.beside('shell', 0.01, 'inside')).toBe(named(map, 'shell')[0])
    expect(map.beside('fuel can', 0.05, 'outside')).toBe(named(map, 'shell')[1])
    expect(map.beside('fuel can', 0.05, 'inside')).toBe(only(named(map, 'fuel can')))
  })

  test('finds the spaces under and over a floor', () => {
    const floor = floors[2] as ProfilePlate
    expect(map.across(floor, 0.01)).toEqual({
      below: named(map, 'shell')[0],
      above: only(named(map, 'fuel can')),
    })
  })

  test('sees that other tin covers a hole', () => {
    const cover = plate('tray', 0, 30, 20.2)
    const covered = mapChambers({ walls: [...shell, ...fuelCan], plates: [...floors, cover] })
    expect(covered.across(floors[2] as ProfilePlate, 0.01)).toBe('covered')
    expect(covered.across(floors[2] as ProfilePlate, 0.04)).not.toBe('covered')
  })
})

describe('every map', () => {
  const profiles: Record<string, Profile> = {
    'two walls': { walls: [...shell, ...fuelCan], plates: floors },
    'with riser': {
      walls: [...shell, ...fuelCan, wall('riser', 36, 120, 300)],
      plates: [...floors, plate('concentrator', 20, 55, 120)],
    },
    'with a wide stand': {
      walls: [...shell, ...fuelCan, wall('stand', 65, 120, 190)],
      plates: [...floors, plate('concentrator', 20, 55, 120)],
    },
  }

  test.each(Object.entries(profiles))('%s: scaled by two, areas are four times as large', (_, profile) => {
    const scaled: Profile = {
      walls: profile.walls.map((w) => ({
        ...w,
        innerRadius: 2 * w.innerRadius,
        outerRadius: 2 * w.outerRadius,
        bottom: 2 * w.bottom,
        top: 2 * w.top,
      })),
      plates: profile.plates.map((p) => ({
        ...p,
        innerRadius: 2 * p.innerRadius,
        outerRadius: 2 * p.outerRadius,
        height: 2 * p.height,
      })),
    }
    const small = mapChambers(profile)
    const large = mapChambers(scaled)
    expect(large.chambers).toHaveLength(small.chambers.length)
    expect(large.throats.map(({ area }) => area)).toEqual(
      small.throats.map(({ area }) => expect.closeTo(4 * area, 12)),
    )
  })

  test.each(Object.entries(profiles))('%s: a passage is no wider than the spaces it joins', (_, profile) => {
    for (const { below, above, area } of mapChambers(profile).throats)
      for (const chamber of [below, above])
        if (chamber !== null)
          expect(area * 1e6).toBeLessThanOrEqual(
            ring(chamber.innerRadius * 1000, chamber.outerRadius * 1000) * 1e6 * (1 + 1e-9),
          )
  })

  test.each(Object.entries(profiles))('%s: the order of the parts makes no difference', (_, profile) => {
    const turned = mapChambers({ walls: profile.walls.toReversed(), plates: profile.plates.toReversed() })
    const straight = mapChambers(profile)
    const areas = (map: ChamberMap) => map.throats.map(({ area }) => area).sort((a, b) => a - b)
    expect(areas(turned)).toEqual(areas(straight))
    expect(turned.chambers).toHaveLength(straight.chambers.length)
  })
})
