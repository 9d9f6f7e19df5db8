import { describe, expect, test } from 'vitest'
import stands from '#reference/standingSticks.json' with { type: 'json' }
import { standingResistance, tippedResistance } from '#science/fuel/bedResistance.ts'
import { sauterDiameter } from '#science/fuel/pieces.ts'
import { block, rod } from './pieces.ts'

/** Kozeny's constant of a round rod's channels, out of the law: viscous = k (4/d)²(1 − ε)²/ε³. */
const kozeny = (solid: number): number => {
  const void3 = (1 - solid) ** 3
  return (standingResistance(1 - solid, rod(10, 40), 0.04).viscous * void3) / (400 * solid) ** 2
}

describe('channels between standing rods, solved by SciPy in random stands', () => {
  type Row = [number, number, number, number, number, number]
  test.each(stands.rows as Row[])(
    '%d rods across, %d solid',
    (_across, solid, _count, mean, lowest, highest) => {
      // One number for stands that differ by two from each other: within 1.6 of the mean of each kind.
      expect(kozeny(solid) / mean).toBeGreaterThan(1 / 1.6)
      expect(kozeny(solid) / mean).toBeLessThan(1.6)
      expect(lowest).toBeLessThan(mean)
      expect(highest).toBeGreaterThan(mean)
    },
  )

  test('over all of them it does not lean', () => {
    const means = (stands.rows as Row[]).map((row) => Math.log(kozeny(row[1]) / row[3]))
    const lean = Math.exp(means.reduce((sum, one) => sum + one, 0) / means.length)
    expect(Math.abs(lean - 1)).toBeLessThan(0.15)
  })

  test('proof of the solver: Poiseuille’s empty can, exact', () => {
    const { permeability, expected } = stands.emptyCan
    expect(Math.abs(permeability / expected - 1)).toBeLessThan(0.005)
  })

  // K = (r²/4s)(−ln s − 1.476 + 2s − s²/2 − 0.0509 s⁴), Drummond & Tahir 1984, from memory: printed beside the solver.
  test.each(stands.squareArray as [number, number][])(
    'proof of the solver: square array, %d solid',
    (s, K) => {
      const series = (-Math.log(s) - 1.476 + 2 * s - s ** 2 / 2 - 0.0509 * s ** 4) / (4 * s)
      console.log(
        `rods in a square, ${s} solid: solver ${K.toPrecision(4)}, series (from memory) ${series.toPrecision(4)}`,
      )
      // The free-surface cell of Happel (1959), exact for its own ring, spreads the gap evenly, so a square array passes more.
      const ring = (-Math.log(s) - 1.5 + 2 * s - s ** 2 / 2) / (4 * s)
      expect(K).toBeGreaterThan(ring)
      expect(K / ring).toBeLessThan(1.35)
    },
  )
})

describe('upright beside tipped in, by ratio', () => {
  const sticks = rod(10, 40)
  const drop = (bed: { viscous: number; inertial: number }, velocity: number): number =>
    bed.viscous * 1.8e-5 * velocity + bed.inertial * 1.2 * velocity ** 2

  // Velocities of a natural draught.
  test.each([0.02, 0.04, 0.06])(
    'the same sticks, as many in the can, at %d m/s: a fifth at most',
    (velocity) => {
      for (const voidFraction of [0.4, 0.5, 0.6]) {
        const upright = drop(standingResistance(voidFraction, sticks, 0.04), velocity)
        const tipped = drop(tippedResistance(voidFraction, sauterDiameter(sticks)), velocity)
        expect(upright / tipped).toBeLessThan(1 / 5)
        expect(upright / tipped).toBeGreaterThan(1 / 20)
      }
    },
  )

  test('packed tighter they resist more, thinner sticks too', () => {
    const at = (voidFraction: number, diameter: number) =>
      standingResistance(voidFraction, rod(diameter, 40), 0.04).viscous
    expect(at(0.35, 10)).toBeGreaterThan(at(0.45, 10))
    expect(at(0.45, 6)).toBeCloseTo(at(0.45, 10) * (10 / 6) ** 2, 0)
  })

  test('split sticks as wide as round ones are thick have the same wall for their wood', () => {
    const round = standingResistance(0.4, rod(10, 40), 0.04)
    const square = standingResistance(0.4, block(40, 10, 10), 0.04)
    expect(square.viscous / round.viscous).toBeCloseTo(1, 12)
  })
})
