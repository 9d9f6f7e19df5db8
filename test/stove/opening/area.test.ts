import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { degrees, fromMillimetres } from '#basis/units.ts'
import type { Opening, VanesOpening, WallHole } from '#stove/model.ts'
import { holeArea, hydraulicDiameter, openingArea, vaneGap } from '#stove/opening/area.ts'

const mm = fromMillimetres

const rowOf = (hole: WallHole, count = 1, leftOut: readonly number[] = []): Opening => ({
  kind: 'row',
  duty: 'secondary',
  hole,
  count,
  leftOut,
  height: mm(50),
  bearing: degrees(0),
})

const vanes = (angle: number, over: Partial<VanesOpening> = {}): VanesOpening => ({
  kind: 'vanes',
  duty: 'passage',
  face: 'face',
  count: 8,
  innerRadius: mm(12),
  outerRadius: mm(30),
  width: mm(9),
  angle: degrees(angle),
  bend: 'up',
  hand: 'clockwise',
  bearing: degrees(0),
  ...over,
})

/** Area of a shape by counting raster cells whose middle lies inside it [mm²]. */
const raster = (width: number, height: number, inside: (x: number, y: number) => boolean): number => {
  const step = 0.02
  let cells = 0
  for (let x = step / 2; x < width; x += step)
    for (let y = step / 2; y < height; y += step) cells += inside(x, y) ? 1 : 0
  return cells * step * step
}

describe('areas', () => {
  test('a round-footed window has the area a raster counts', () => {
    const [width, height] = [10, 18]
    const counted = raster(
      width,
      height,
      (x, y) => y >= width / 2 || Math.hypot(x - width / 2, y - width / 2) <= width / 2,
    )
    const hole: WallHole = { shape: 'window', width: mm(width), height: mm(height), foot: 'round', bit: null }
    expect(holeArea(rowOf(hole)) * 1e6).toBeCloseTo(counted, 1)
    // Exact, by hand: 10 · 13 + π 5²/2.
    expect(holeArea(rowOf(hole)) * 1e6).toBeCloseTo(169.2699, 4)
  })

  test('a round foot takes (1 − π/4) w²/2 off the square one', () => {
    const square: WallHole = { shape: 'window', width: mm(8), height: mm(14), foot: 'square', bit: null }
    const lost = holeArea(rowOf(square)) - holeArea(rowOf({ ...square, foot: 'round' }))
    expect(lost * 1e6).toBeCloseTo(((1 - Math.PI / 4) * 64) / 2, 9)
  })

  test('a row counts drilled holes only', () => {
    const hole: WallHole = { shape: 'round', diameter: mm(16), bit: '16 mm' }
    expect(openingArea(rowOf(hole, 8, [5])) * 1e6).toBeCloseTo(7 * Math.PI * 64, 9)
  })

  test('patterns and bores', () => {
    const holes = Array.from({ length: 19 }, () => ({ radius: mm(0), bearing: degrees(0) }))
    const pattern: Opening = {
      kind: 'pattern',
      duty: 'primary',
      face: 'bottom',
      layout: 'hexagonal',
      diameter: mm(4),
      bit: '4 mm',
      holes,
    }
    expect(openingArea(pattern) * 1e6).toBeCloseTo(19 * Math.PI * 4, 9)
    expect(openingArea({ kind: 'bore', duty: 'passage', face: 'face', diameter: mm(45) }) * 1e6).toBeCloseTo(
      1590.431,
      3,
    )
  })
})

describe('vanes', () => {
  test('the gap is the distance from the turned tip to the far edge of the window', () => {
    for (const angle of [0, 15, 30, 45, 59]) {
      const turn = (angle * Math.PI) / 180
      const tip = { x: 9 * Math.cos(turn), y: 9 * Math.sin(turn) }
      expect(vaneGap(vanes(angle)) * 1000).toBeCloseTo(Math.hypot(9 - tip.x, tip.y), 9)
    }
  })

  test('at 60° the gap is the window itself, and stays so', () => {
    expect(vaneGap(vanes(60)) * 1000).toBeCloseTo(9, 9)
    expect(vaneGap(vanes(90)) * 1000).toBeCloseTo(9, 9)
    expect(openingArea(vanes(90)) * 1e6).toBeCloseTo(8 * 18 * 9, 9)
  })

  test('bending further never closes them', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 90, noNaN: true }),
        (a, b) => {
          expect(openingArea(vanes(Math.min(a, b)))).toBeLessThanOrEqual(openingArea(vanes(Math.max(a, b))))
        },
      ),
    )
  })

  test('unbent vanes let nothing through', () => {
    expect(openingArea(vanes(0))).toBe(0)
    expect(hydraulicDiameter(vanes(0))).toBe(0)
  })
})

describe('hydraulic diameter', () => {
  const length = fc.double({ min: 1, max: 60, noNaN: true })

  test('of a circle is its diameter, of a square its side', () => {
    fc.assert(
      fc.property(length, (size) => {
        const round = rowOf({ shape: 'round', diameter: mm(size), bit: null })
        const square = rowOf({
          shape: 'window',
          width: mm(size),
          height: mm(size),
          foot: 'square',
          bit: null,
        })
        expect(hydraulicDiameter(round) * 1000).toBeCloseTo(size, 9)
        expect(hydraulicDiameter(square) * 1000).toBeCloseTo(size, 9)
      }),
    )
  })

  test('of a narrow slit is twice its width, and never more', () => {
    fc.assert(
      fc.property(length, length, (a, b) => {
        const [width, long] = a < b ? [a, b] : [b, a]
        const slit = rowOf({ shape: 'slit', length: mm(long), width: mm(width), along: 'axis' })
        expect(hydraulicDiameter(slit)).toBeLessThan(2 * mm(width))
        expect(hydraulicDiameter(slit)).toBeGreaterThanOrEqual(mm(width) * (1 - 1e-12))
      }),
    )
  })

  test('grows with the size of any hole of one shape', () => {
    const shapes: ((scale: number) => WallHole)[] = [
      (s) => ({ shape: 'round', diameter: mm(8 * s), bit: null }),
      (s) => ({ shape: 'window', width: mm(10 * s), height: mm(18 * s), foot: 'round', bit: null }),
      (s) => ({ shape: 'slit', length: mm(20 * s), width: mm(2 * s), along: 'round' }),
    ]
    for (const shape of shapes) {
      expect(hydraulicDiameter(rowOf(shape(3))) / hydraulicDiameter(rowOf(shape(1)))).toBeCloseTo(3, 9)
      expect(holeArea(rowOf(shape(3))) / holeArea(rowOf(shape(1)))).toBeCloseTo(9, 9)
    }
  })
})
