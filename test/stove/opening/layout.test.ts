import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Metres } from '#basis/units.ts'
import { fromMillimetres } from '#basis/units.ts'
import {
  closestHoles,
  hexagonalByCount,
  hexagonalByPitch,
  hexagonalCounts,
  ringsLayout,
  sunflowerByCount,
  sunflowerByPitch,
} from '#stove/opening/layout.ts'

const mm = fromMillimetres
const millimetre = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => mm(value))

describe('hexagonal pattern', () => {
  test('whole rings hold 1, 7, 13, 19, 31, 37, 43, 55, 61 … holes (counted on a drawn grid)', () => {
    expect(hexagonalCounts(100)).toEqual([1, 7, 13, 19, 31, 37, 43, 55, 61, 73, 85, 91, 97])
  })

  test('a disc of two pitches holds nineteen, one of √3 pitches thirteen', () => {
    expect(hexagonalByPitch(mm(9), mm(18))).toHaveLength(19)
    expect(hexagonalByPitch(mm(9), mm(9 * Math.sqrt(3)))).toHaveLength(13)
    expect(hexagonalByPitch(mm(9), mm(8.9))).toHaveLength(1)
  })

  test('neighbours are one pitch apart and nothing lies outside', () => {
    fc.assert(
      fc.property(millimetre(3, 20), millimetre(20, 60), (pitch, fill) => {
        const holes = hexagonalByPitch(pitch, fill)
        expect(closestHoles(holes) / pitch).toBeCloseTo(1, 9)
        expect(Math.max(...holes.map(({ radius }) => radius))).toBeLessThanOrEqual(fill * (1 + 1e-9))
        // Gauss's circle: the number of holes is the area over the cell √3/2 p², to within the rim.
        const expected = (Math.PI * fill ** 2) / ((Math.sqrt(3) / 2) * pitch ** 2)
        const rim = (2 * Math.PI * fill) / pitch
        expect(Math.abs(holes.length - expected)).toBeLessThan(rim + 4)
      }),
    )
  })

  test('a count that fills whole rings reaches exactly to the rim; another is refused', () => {
    for (const count of hexagonalCounts(400).slice(1)) {
      const holes = hexagonalByCount(count, mm(40))
      expect(holes).toHaveLength(count)
      expect(Math.max(...(holes ?? []).map(({ radius }) => radius))).toBeCloseTo(mm(40), 12)
    }
    for (const count of [0, 1, 2, 6, 12, 36, 38]) expect(hexagonalByCount(count, mm(40))).toBeNull()
  })

  test('by count and by pitch agree', () => {
    const byCount = hexagonalByCount(37, mm(30)) ?? []
    const byPitch = hexagonalByPitch(closestHoles(byCount), mm(30))
    expect(byPitch).toHaveLength(37)
    for (const [index, { radius, bearing }] of byPitch.entries()) {
      expect(radius).toBeCloseTo(byCount[index]?.radius ?? Number.NaN, 12)
      expect(bearing).toBeCloseTo(byCount[index]?.bearing ?? Number.NaN, 9)
    }
  })
})

describe('sunflower pattern', () => {
  // The documentation of the Perl module Math::PlanePath::VogelFloret (read in a stored copy): a
  // radius factor of 0.624 keeps the closest two points one apart.
  test('holes of pitch p need the scale 0.624 p', () => {
    const holes = sunflowerByPitch(mm(10), mm(60))
    expect(mm(60) / Math.sqrt(holes.length + 1)).toBeLessThan(0.6245 * mm(10))
    expect((holes[0]?.radius ?? 0) / mm(10)).toBeCloseTo(0.624, 3)
  })

  test('no two holes are closer than the pitch, and the closest are at it', () => {
    fc.assert(
      fc.property(millimetre(3, 12), millimetre(26, 60), (pitch, fill) => {
        const holes = sunflowerByPitch(pitch, fill)
        expect(holes.length).toBeGreaterThanOrEqual(4)
        expect(closestHoles(holes) / pitch).toBeCloseTo(1, 9)
        expect(Math.max(...holes.map(({ radius }) => radius))).toBeLessThanOrEqual(fill * (1 + 1e-9))
      }),
    )
  })

  test('every hole has the same share of the disc: the inner half of them fills half the area', () => {
    const holes = sunflowerByCount(400, mm(50))
    expect(holes).toHaveLength(400)
    expect(holes.at(-1)?.radius).toBeCloseTo(mm(50), 12)
    const within = holes.filter(({ radius }) => radius <= mm(50) / Math.sqrt(2))
    expect(within).toHaveLength(200)
  })

  test('consecutive holes are a golden angle apart: 137.508°', () => {
    const [first, second] = sunflowerByCount(2, mm(50))
    expect((second?.bearing ?? 0) - (first?.bearing ?? 0)).toBeCloseTo(137.508, 3)
  })
})

describe('rings', () => {
  test('six holes on a ring are as far from each other as from the middle', () => {
    const holes = ringsLayout([{ radius: mm(12), count: 6, bearing: 0 }], true)
    expect(holes).toHaveLength(7)
    expect(closestHoles(holes)).toBeCloseTo(mm(12), 12)
  })

  test('the chord pitch is D sin(π/n): rows of can_seams_tinplate.json, circumference_division', () => {
    for (const { diameter, count, chord } of [
      { diameter: 100, count: 6, chord: 50 },
      { diameter: 83, count: 8, chord: 31.76272 },
      { diameter: 157.1625, count: 24, chord: 20.51382 },
    ]) {
      const holes = ringsLayout([{ radius: mm(diameter / 2), count, bearing: 30 }], false)
      expect(closestHoles(holes) * 1000).toBeCloseTo(chord, 4)
    }
  })

  test('turning a ring turns every hole and nothing else', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.double({ min: -360, max: 360, noNaN: true }),
        (count, turn) => {
          const ring = { radius: 0.02 as Metres, count, bearing: 0 }
          const still = ringsLayout([ring], false)
          const turned = ringsLayout([{ ...ring, bearing: turn }], false)
          for (const [index, hole] of turned.entries()) {
            expect(hole.bearing).toBeGreaterThanOrEqual(0)
            expect(hole.bearing).toBeLessThan(360)
            const by = (hole.bearing - (still[index]?.bearing ?? 0) - turn) / 360
            expect(by).toBeCloseTo(Math.round(by), 9)
          }
        },
      ),
    )
  })
})
