import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { filmAir } from '#science/heat/filmAir.ts'
import { laminarStreamNusselt, together } from '#science/heat/forcedConvection.ts'
import { discCoefficient, hotSideDownNusselt, hotSideUpNusselt } from '#science/heat/horizontalPlate.ts'
import {
  isPlateLike,
  LAMINAR_PLATE_RANGE,
  rayleighNumber,
  verticalPlateCoefficient,
  verticalPlateFullNusselt,
  verticalPlateNusselt,
} from '#science/heat/naturalConvection.ts'
import { isInside } from '#science/heat/range.ts'

const relative = (value: number, expected: number): number => Math.abs(value / expected - 1)

describe('free convection on an upright plate', () => {
  test('both forms agree within 8 % for a can, 1e4–1e7', () => {
    fc.assert(
      fc.property(fc.double({ min: 4, max: 7, noNaN: true }), (exponent) => {
        const rayleigh = 10 ** exponent
        const full = verticalPlateFullNusselt(rayleigh, 0.7)
        expect(relative(verticalPlateNusselt(rayleigh, 0.7), full)).toBeLessThan(0.08)
      }),
    )
  })

  test('rises with the difference, is symmetric in hot and cold, and takes an even wall for pure conduction', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 400, noNaN: true }),
        fc.double({ min: 1.05, max: 2, noNaN: true }),
        fc.double({ min: 0.03, max: 0.5, noNaN: true }),
        (difference, more, height) => {
          const film = 500
          const at = (d: number): number =>
            verticalPlateCoefficient(film + d / 2, film - d / 2, height, 101325)
          expect(at(difference * more)).toBeGreaterThan(at(difference))
          expect(at(-difference)).toBeCloseTo(at(difference), 10)
        },
      ),
    )
    const still = verticalPlateCoefficient(300, 300, 0.1, 101325)
    expect(still).toBeCloseTo((0.68 * filmAir(300, 101325).conductivity) / 0.1, 6)
  })

  test('the quick form for walls is the same as the long way with real properties', () => {
    const film = filmAir(400, 101325)
    const rayleigh = rayleighNumber(film, 400, 200, 0.15)
    const longWay = (verticalPlateNusselt(rayleigh, film.prandtl) * film.conductivity) / 0.15
    expect(relative(verticalPlateCoefficient(500, 300, 0.15, 101325), longWay)).toBeLessThan(0.01)
    expect(isInside(LAMINAR_PLATE_RANGE, rayleigh)).toBe(true)
  })

  test('a wide low can counts as a plate, a chimney does not', () => {
    expect(isPlateLike(0.3, 0.1, 1e7, 0.7)).toBe(true)
    expect(isPlateLike(0.05, 0.5, 1e7, 0.7)).toBe(false)
  })
})

describe('level plates', () => {
  test('stirred above is monotone and has no jump where the two laws meet', () => {
    fc.assert(
      fc.property(fc.double({ min: 4, max: 11, noNaN: true }), (exponent) => {
        const rayleigh = 10 ** exponent
        expect(hotSideUpNusselt(rayleigh * 1.0001) / hotSideUpNusselt(rayleigh) - 1).toBeGreaterThan(0)
        expect(hotSideUpNusselt(rayleigh * 1.0001) / hotSideUpNusselt(rayleigh) - 1).toBeLessThan(4e-5)
        expect(hotSideUpNusselt(rayleigh)).toBeGreaterThan(hotSideDownNusselt(rayleigh))
      }),
    )
  })

  test('a cold disc that looks down is a hot one that looks up, turned over', () => {
    const hot = discCoefficient(400, 300, 0.15, 'up', 101325)
    expect(discCoefficient(300, 400, 0.15, 'down', 101325)).toBeCloseTo(hot, 10)
    expect(discCoefficient(400, 300, 0.15, 'down', 101325)).toBeLessThan(hot)
  })
})

describe('streams and jets', () => {
  test('a stream along a wall: Incropera’s 0.664 √Re at Pr 1', () => {
    expect(laminarStreamNusselt(1e4, 1)).toBeCloseTo(66.4, 10)
  })

  test('together is at least the larger and at most a quarter more', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 100, noNaN: true }),
        fc.double({ min: 1e-3, max: 100, noNaN: true }),
        (a, b) => {
          const most = Math.max(a, b)
          expect(together(a, b)).toBeGreaterThanOrEqual(most * (1 - 1e-12))
          expect(together(a, b)).toBeLessThanOrEqual(most * 1.26)
          expect(together(a, b)).toBeCloseTo(together(b, a), 10)
        },
      ),
    )
  })
})
