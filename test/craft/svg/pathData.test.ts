import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readPathData, type Segment } from '#craft/svg/pathData.ts'

const cubic = (from: readonly number[], segment: Segment, t: number): readonly [number, number] => {
  const points = [from[0], from[1], ...segment.slice(1)] as number[]
  const at = (k: number): number =>
    (1 - t) ** 3 * (points[k] as number) +
    3 * (1 - t) ** 2 * t * (points[2 + k] as number) +
    3 * (1 - t) * t ** 2 * (points[4 + k] as number) +
    t ** 3 * (points[6 + k] as number)
  return [at(0), at(1)]
}

describe('a path in absolute lines and curves', () => {
  test('relative and short commands', () => {
    expect(readPathData('M10 20h5v-3l1,2H0V0Z')).toEqual([
      ['M', 10, 20],
      ['L', 15, 20],
      ['L', 15, 17],
      ['L', 16, 19],
      ['L', 0, 19],
      ['L', 0, 0],
      ['Z'],
    ])
  })

  test('pairs after a move are lines, and closing goes back to the start', () => {
    expect(readPathData('m1 1 2 0zm1 1h1')).toEqual([
      ['M', 1, 1],
      ['L', 3, 1],
      ['Z'],
      ['M', 2, 2],
      ['L', 3, 2],
    ])
  })

  test('smooth curves take the mirrored handle', () => {
    expect(readPathData('M0 0C0 1 1 2 2 2S4 1 4 0')[2]).toEqual(['C', 3, 2, 4, 1, 4, 0])
  })

  test('a quadratic curve and its cubic are the same curve', () => {
    const [, curve] = readPathData('M0 0Q2 4 6 0') as [Segment, Segment]
    for (const t of [0.2, 0.5, 0.9]) {
      const [x, y] = cubic([0, 0], curve, t)
      expect(x).toBeCloseTo(2 * (1 - t) * t * 2 + t * t * 6, 12)
      expect(y).toBeCloseTo(2 * (1 - t) * t * 4, 12)
    }
  })

  test('arcs of circles keep their radius and end where they should, whichever of the four is asked for', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 50, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0.05, max: 6.2, noNaN: true }),
        fc.boolean(),
        (radius, from, turn, sweep) => {
          const end = from + (sweep ? turn : -turn)
          const at = (angle: number): readonly [number, number] => [
            7 + radius * Math.cos(angle),
            radius * Math.sin(angle),
          ]
          const d = `M${at(from).join(' ')}A${radius} ${radius} 0 ${turn > Math.PI ? 1 : 0} ${sweep ? 1 : 0} ${at(end).join(' ')}`
          const segments = readPathData(d)
          let start = segments[0]?.slice(1) as number[]
          let gone = 0
          for (const segment of segments.slice(1)) {
            for (const t of [0.25, 0.5, 0.75]) {
              const [x, y] = cubic(start, segment, t)
              expect(Math.hypot(x - 7, y)).toBeCloseTo(radius, 3)
            }
            const [x, y] = segment.slice(-2) as [number, number]
            const step = Math.atan2(y, x - 7) - Math.atan2(start[1] as number, (start[0] as number) - 7)
            gone += ((step * (sweep ? 1 : -1) + 4 * Math.PI) % (2 * Math.PI)) * (sweep ? 1 : -1)
            start = [x, y]
          }
          expect(start[0]).toBeCloseTo(at(end)[0], 9)
          expect(Math.abs(gone)).toBeCloseTo(turn, 6)
        },
      ),
    )
  })

  test.each(['M1', 'M1 2L3', 'X1 2', 'M0 0A1 1 0 0 1 2'])('%s is refused', (d) => {
    expect(() => readPathData(d)).toThrow(SyntaxError)
  })
})
