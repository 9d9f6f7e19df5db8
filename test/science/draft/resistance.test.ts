import { describe, expect, test } from 'vitest'
import flow from '#reference/flowChecks.json' with { type: 'json' }
import {
  annulusFriction,
  duct,
  holes,
  inSeries,
  perforatedPlateLoss,
  thickHoleLoss,
  throat,
  throatLoss,
} from '#science/draft/resistance.ts'
import { dropOf } from '#scripts/validation/draught/passages.ts'
import { relativeMiss } from '../relativeMiss.ts'

test('an opening that is a plate across one duct is the perforated plate', () => {
  for (const open of [0.1, 0.3, 0.7])
    expect(throatLoss(open, 1, 1) / open ** 2).toBeCloseTo(perforatedPlateLoss(open), 8)
})

describe('hole in creeping flow', () => {
  const diameter = 0.006
  const area = (Math.PI / 4) * diameter ** 2
  const density = 1.2
  const viscosity = 1.8e-5
  const lossAt = (reynolds: number, thickness: number): number => {
    const velocity = (reynolds * viscosity) / (density * diameter)
    const massFlow = density * velocity * area
    return (
      dropOf(holes(1, area, diameter, thickness), massFlow, density, viscosity) /
      (0.5 * density * velocity ** 2)
    )
  }

  test('ζ·Re tends to 30 in thin sheet, Idelchik diagram 8-5 as given by Electronics Cooling (1998)', () => {
    expect(lossAt(1e-4, 0) * 1e-4).toBeCloseTo(30, 2)
  })

  // Sampson's exact 12π is for one hole alone in an endless plane; a quarter more than the grid's 30.
  test('the exact single hole, 12π, lies inside the coefficient band', () => {
    const exact = (flow.creepingHole.rows[0] as { check: { Re: number; zeta: number } }).check
    expect(lossAt(1e-4, 0) * 1e-4).toBeLessThan(exact.zeta)
    expect(lossAt(1e-4, 0) * 1e-4).toBeGreaterThan(0.75 * exact.zeta)
  })

  test('thickness adds 64 t/d', () => {
    expect((lossAt(1e-4, 0.0006) - lossAt(1e-4, 0)) * 1e-4).toBeCloseTo(6.4, 2)
  })

  test('at high Reynolds number it is the thick-edged hole', () => {
    expect(lossAt(1e7, 0.001)).toBeCloseTo(thickHoleLoss(0.001, diameter), 4)
  })
})

describe('ring gap in laminar flow, exact solution', () => {
  /** f·Re of a ring gap by finite differences on the velocity profile: (1/r)(r u')' = −1, u = 0 at both walls. */
  const byFiniteDifferences = (k: number, points: number): number => {
    const step = (1 - k) / points
    const radius = (i: number): number => k + i * step
    const above = new Float64Array(points)
    const value = new Float64Array(points)
    // Thomas's algorithm over the inner points.
    for (let i = 1; i < points; i++) {
      const low = (radius(i) - step / 2) / (radius(i) * step * step)
      const high = (radius(i) + step / 2) / (radius(i) * step * step)
      const pivot = low + high - low * (above[i - 1] as number)
      above[i] = high / pivot
      value[i] = (1 + low * (value[i - 1] as number)) / pivot
    }
    let flowRate = 0
    let velocity = 0
    for (let i = points - 1; i >= 1; i--) {
      velocity = (value[i] as number) + (above[i] as number) * velocity
      flowRate += velocity * 2 * Math.PI * radius(i) * step
    }
    const mean = flowRate / (Math.PI * (1 - k * k))
    const hydraulicDiameter = 2 * (1 - k)
    // Wall stress Δp'·D/4 = D/4; f = stress/(ρū²/2), Re = ρūD/μ.
    return hydraulicDiameter ** 2 / (2 * mean)
  }

  test.each([0.05, 0.3, 0.8, 0.97])('the velocity profile solved by finite differences agrees at %d', (k) => {
    expect(relativeMiss(annulusFriction(k), byFiniteDifferences(k, 4000))).toBeLessThan(1e-4)
  })

  test('a round tube has 16, two plates have 24', () => {
    expect(annulusFriction(1e-9)).toBeLessThan(17.6)
    expect(annulusFriction(0.99999)).toBeCloseTo(24, 3)
  })

  test('drop of a round tube is Poiseuille’s 128 μ L Q/(π d⁴)', () => {
    const [radius, length, density, viscosity, massFlow] = [0.02, 0.3, 1.2, 1.8e-5, 1e-4]
    const expected = (128 * viscosity * length * (massFlow / density)) / (Math.PI * (2 * radius) ** 4)
    expect(dropOf(duct(0, radius, length), massFlow, density, viscosity)).toBeCloseTo(expected, 12)
  })
})

describe('throats', () => {
  test('a hole in the open has about the loss of a sharp orifice', () => {
    expect(
      relativeMiss(throatLoss(1, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY), 2.814),
    ).toBeLessThan(0.04)
  })

  test('a full bore has no loss', () => {
    expect(throatLoss(1, 1, 1)).toBe(0)
  })

  test('Borda–Carnot: a duct that opens into a chamber loses one velocity head', () => {
    expect(throatLoss(1, 1, Number.POSITIVE_INFINITY)).toBeCloseTo(1, 12)
  })

  test('an opening looks the same from both sides', () => {
    expect(throat(1e-3, 0.03, 5e-3, 2e-3)).toEqual(throat(1e-3, 0.03, 2e-3, 5e-3))
  })
})

test('passages in series add up', () => {
  const first = holes(10, 1e-5, 0.0035, 0.0002)
  const second = duct(0.04, 0.05, 0.1)
  const both = inSeries(first, second)
  expect(dropOf(both, 1e-4, 1.2, 1.8e-5)).toBeCloseTo(
    dropOf(first, 1e-4, 1.2, 1.8e-5) + dropOf(second, 1e-4, 1.2, 1.8e-5),
    14,
  )
})
