import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { filmAir } from '#science/heat/filmAir.ts'
import { impingingJetNusselt } from '#science/heat/impingingJet.ts'
import { discToDisc } from '#science/heat/viewFactors.ts'
import { flameShareOnBottom } from '#science/pot/bottomRadiation.ts'
import { medianPotCoefficients, potCoefficients } from '#science/pot/coefficients.ts'
import { openSideHeat } from '#science/pot/openSide.ts'
import { bottomArea, potHeatCapacity, potVolume, waterDepth, workingSide } from '#science/pot/pot.ts'
import { type PotHeat, type PotHeatInput, potHeat } from '#science/pot/potHeat.ts'
import { saturationTemperature } from '#science/pot/saturation.ts'
import { skirtHeat } from '#science/pot/skirt.ts'
import { bottomConductance } from '#science/pot/underBottom.ts'

/** An invented pot over an invented can stove: 2.5 kW of gas, a litre of water. */
const usual: PotHeatInput = {
  pot: { diameter: 0.16, height: 0.1, lid: true, wall: 0.001, metal: 'aluminium' },
  waterMass: 1,
  waterTemperature: 333.15,
  gas: { massFlow: 0.0025, temperature: 950, specificHeat: 1150 },
  openingDiameter: 0.09,
  gap: 0.03,
  flame: { radiated: 375, height: 0.25 },
  bodies: [],
  skirt: null,
  air: { temperature: 293.15, pressure: 101325, humidity: 0.5 },
  windSpeed: 0,
}

const net = (heat: PotHeat): number => heat.bottomConvection + heat.bottomRadiation + heat.side - heat.loss

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const anyInput: fc.Arbitrary<PotHeatInput> = fc
  .record({
    diameter: number(0.08, 0.3),
    height: number(0.05, 0.25),
    lid: fc.boolean(),
    fill: number(0.05, 0.95),
    warmth: number(0, 0.97),
    flow: number(0, 0.02),
    gas: number(300, 1500),
    opening: number(0.03, 0.15),
    gap: number(0.005, 0.2),
    radiated: number(0, 1500),
    flame: number(0, 0.6),
    skirt: fc.option(number(0.004, 0.03)),
    pressure: number(55000, 103000),
    wind: number(0, 8),
  })
  .map((x) => {
    const pot = {
      diameter: x.diameter,
      height: x.height,
      lid: x.lid,
      wall: 0.0006,
      metal: 'stainless steel' as const,
    }
    return {
      pot,
      waterMass: x.fill * potVolume(pot) * 980,
      // Between the air and the boiling point at that pressure.
      waterTemperature: 291 + x.warmth * (saturationTemperature(x.pressure) - 291),
      gas: { massFlow: x.flow, temperature: x.gas, specificHeat: 1120 },
      openingDiameter: x.opening,
      gap: x.gap,
      flame: { radiated: x.radiated, height: x.flame },
      bodies: [{ temperature: 1000, area: 0.004, emissivity: 0.85, viewOfPot: 0.2 }],
      skirt: x.skirt === null ? null : { gap: x.skirt, height: x.height, emissivity: 0.8 },
      air: { temperature: 290, pressure: x.pressure, humidity: 0.6 },
      windSpeed: x.wind,
    }
  })

describe('heat to the bottom', () => {
  const film = filmAir(640, 101325)

  test('round the stagnation point it is the exact similarity solution, 0.665 (βd²/ν)^½ at Pr 0.7, within 4 %', () => {
    // A small pot far over a wide opening sees nothing but U = βr. No difference: no buoyancy.
    const flow = { massFlow: 0.004, openingDiameter: 0.1, gap: 50, potDiameter: 0.03 }
    const speed = flow.massFlow / (film.density * (Math.PI / 4) * 0.01)
    const exact = 0.665 * film.conductivity * Math.sqrt(speed / 0.1 / film.kinematicViscosity)
    const ours = bottomConductance(flow, film, 640, 0, 1) / ((Math.PI / 4) * 0.03 ** 2)
    expect(Math.abs(ours / exact - 1)).toBeLessThan(0.04)
  })

  test('meets Martin’s turbulent jet at his lowest Reynolds number from below, within a factor of two', () => {
    // Re 2000, H/D 2, r/D 2.5: his Nu 23.7 holds turbulence that a laminar layer lacks.
    const d = 0.05
    const massFlow = (2000 * Math.PI * d * film.viscosity) / 4
    const flow = { massFlow, openingDiameter: d, gap: 0.1, potDiameter: 0.25 }
    const laminar =
      (bottomConductance(flow, film, 640, 0, 1) / ((Math.PI / 4) * 0.25 ** 2)) * (d / film.conductivity)
    const martin = impingingJetNusselt(2000, film.prandtl, 2, 2.5)
    expect(laminar).toBeLessThan(martin)
    expect(laminar).toBeGreaterThan(martin / 2)
  })

  test('more gas, a narrower gap, a larger pot: more conductance', () => {
    fc.assert(
      fc.property(
        number(0.0005, 0.01),
        number(0.03, 0.12),
        number(0.005, 0.1),
        number(0.08, 0.3),
        (massFlow, openingDiameter, gap, potDiameter) => {
          const at = (change: object): number =>
            bottomConductance({ massFlow, openingDiameter, gap, potDiameter, ...change }, film, 640, 600, 1.5)
          const here = at({})
          expect(at({ massFlow: massFlow * 1.1 })).toBeGreaterThanOrEqual(here * (1 - 1e-12))
          // A thicker layer from the faster middle can cost the rim a per cent.
          expect(at({ gap: gap * 0.9 })).toBeGreaterThanOrEqual(here * 0.99)
          expect(at({ potDiameter: potDiameter * 1.05 })).toBeGreaterThan(here)
        },
      ),
    )
  })
})

describe('a flame’s light on the bottom', () => {
  test('half of it when it touches, nothing from far below, between for the rest', () => {
    expect(flameShareOnBottom(1e-9, 0.2, 0.08)).toBeCloseTo(0.5, 6)
    expect(flameShareOnBottom(100, 0.1, 0.08)).toBeLessThan(1e-6)
    expect(flameShareOnBottom(0.05, 0, 0.08)).toBe(0)
  })

  test('is the mean of the cone’s share over the flame, summed independently', () => {
    fc.assert(
      fc.property(number(0.01, 0.3), number(0.05, 0.2), (gap, radius) => {
        const height = 0.8 * gap
        let sum = 0
        const steps = 2000
        for (let i = 0; i < steps; i++) {
          const z = gap - ((i + 0.5) * height) / steps
          sum += (0.5 * (1 - z / Math.hypot(z, radius))) / steps
        }
        expect(flameShareOnBottom(gap, height, radius)).toBeCloseTo(sum, 5)
      }),
    )
  })

  test('falls with the distance and rises with the pot', () => {
    fc.assert(
      fc.property(number(0.005, 0.3), number(0.01, 0.4), number(0.05, 0.2), (gap, height, radius) => {
        const here = flameShareOnBottom(gap, height, radius)
        expect(flameShareOnBottom(gap * 1.1, height, radius)).toBeLessThanOrEqual(here + 1e-12)
        expect(flameShareOnBottom(gap, height, radius * 1.1)).toBeGreaterThanOrEqual(here - 1e-12)
        expect(here).toBeLessThanOrEqual(0.5 + 1e-12)
      }),
    )
  })
})

describe('heat to the side', () => {
  test('the closed solution is the equation it was solved from, integrated step by step', () => {
    const stream = { massFlow: 0.0018, temperature: 800, specificHeat: 1120 }
    const [perimeter, height, side, ambient, h, alpha] = [0.5, 0.09, 350, 293, 12, 0.08]
    const closed = openSideHeat(stream, perimeter, height, side, ambient, 101325, h, alpha).toPot
    // Small steps of m θ' = −eθ − (hP/c)(θ − θ_s); speed and densities as the function takes them.
    const speed = Math.sqrt(9.80665 * height * (800 / 293 - 1))
    const e = alpha * speed * (101325 / 287.05) * Math.sqrt(1 / (293 * 800)) * perimeter
    let heat = 0
    let excess = 800 - ambient
    const steps = 20000
    for (let i = 0; i < steps; i++) {
      const dz = height / steps
      const m = stream.massFlow + e * (i + 0.5) * dz
      heat += h * perimeter * (excess - (side - ambient)) * dz
      excess -= ((e * excess + ((h * perimeter) / 1120) * (excess - (side - ambient))) / m) * dz
    }
    expect(Math.abs(closed / heat - 1)).toBeLessThan(1e-3)
  })

  test('never more than the gas has over the pot, and less the more air it draws in', () => {
    fc.assert(
      fc.property(
        number(1e-4, 0.01),
        number(500, 1300),
        number(0.02, 0.2),
        (massFlow, temperature, height) => {
          const stream = { massFlow, temperature, specificHeat: 1120 }
          const at = (alpha: number): number =>
            openSideHeat(stream, 0.5, height, 350, 293, 101325, 12, alpha).toPot
          expect(at(0.08)).toBeLessThan(massFlow * 1120 * (temperature - 350))
          expect(at(0.12)).toBeLessThan(at(0.06))
        },
      ),
    )
  })

  test('under a skirt the gas’s heat is all accounted for: to the pot, lost outside, or carried on', () => {
    const stream = { massFlow: 0.002, temperature: 800, specificHeat: 1120 }
    fc.assert(
      fc.property(number(0.003, 0.03), number(0.02, 0.2), number(290, 372), (gap, height, side) => {
        const skirt = { gap, height, emissivity: 0.8 }
        const { toPot, lost } = skirtHeat(stream, 0.16, skirt, side, 290, 101325, 0.9)
        expect(toPot).toBeGreaterThan(0)
        expect(lost).toBeGreaterThan(0)
        expect(toPot + lost).toBeLessThan(0.002 * 1120 * (800 - 290))
        const narrower = skirtHeat(stream, 0.16, { ...skirt, gap: gap * 0.9 }, side, 290, 101325, 0.9)
        expect(narrower.toPot).toBeGreaterThan(toPot)
      }),
    )
  })
})

describe('a pot on a can stove', () => {
  test('takes a quarter or so of 2.5 kW bare, more than a third in a skirt of 8 mm', () => {
    // Natural-draught stoves of this kind are measured at 26–32 %; a plausibility band, not a fact about this
    // one.
    const bare = net(potHeat(usual, medianPotCoefficients)) / 2500
    const skirted =
      net(potHeat({ ...usual, skirt: { gap: 0.008, height: 0.1, emissivity: 0.8 } }, medianPotCoefficients)) /
      2500
    expect(bare).toBeGreaterThan(0.15)
    expect(bare).toBeLessThan(0.35)
    expect(skirted).toBeGreaterThan(bare + 0.05)
    expect(skirted).toBeLessThan(0.5)
  })

  test('every part is finite, and gas gives no more than it has', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        const heat = potHeat(input, medianPotCoefficients)
        for (const value of Object.values(heat))
          if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true)
        const { massFlow, specificHeat, temperature } = input.gas
        const most = massFlow * specificHeat * Math.max(0, temperature - 280)
        expect(heat.bottomConvection).toBeLessThanOrEqual(most + 1e-9)
        expect(Math.max(0, heat.bottomConvection) + Math.max(0, heat.side)).toBeLessThanOrEqual(most + 1e-6)
        expect(heat.loss).toBeGreaterThanOrEqual(heat.evaporation - 60)
      }),
      { numRuns: 500 },
    )
  })

  test('hotter gas, more flame light, hotter char: more heat; hotter water: less', () => {
    fc.assert(
      fc.property(anyInput, (input) => {
        // Fainter fires, whose gas leaves about as cold as the pot, turn round within a tenth of a watt.
        fc.pre(input.gas.massFlow > 5e-4 && input.gas.temperature > 600)
        const here = net(potHeat(input, medianPotCoefficients))
        const hotter = { ...input, gas: { ...input.gas, temperature: input.gas.temperature + 20 } }
        expect(net(potHeat(hotter, medianPotCoefficients))).toBeGreaterThan(here)
        const brighter = { ...input, flame: { ...input.flame, radiated: input.flame.radiated + 50 } }
        expect(net(potHeat(brighter, medianPotCoefficients))).toBeGreaterThanOrEqual(here)
        const warmer = { ...input, waterTemperature: input.waterTemperature + 2 }
        expect(net(potHeat(warmer, medianPotCoefficients))).toBeLessThan(here)
      }),
      { numRuns: 300 },
    )
  })

  test('no fire: the pot cools', () => {
    const cold = {
      ...usual,
      gas: { ...usual.gas, massFlow: 0 },
      flame: { radiated: 0, height: 0 },
      waterTemperature: 360,
    }
    const heat = potHeat(cold, medianPotCoefficients)
    expect(heat.bottomConvection).toBe(0)
    expect(heat.side).toBeLessThan(0)
    expect(net(heat)).toBeLessThan(-30)
  })

  test('says what it used outside its range', () => {
    const names = (input: PotHeatInput): string[] =>
      potHeat(input, medianPotCoefficients).outside.map((range) => range.of)
    expect(names(usual)).toEqual([])
    expect(names({ ...usual, gas: { ...usual.gas, massFlow: 0.02 } })).toContain('laminar flow under the pot')
    expect(names({ ...usual, waterTemperature: 372 })).toContain('evaporation from the open pot')
  })

  test('char seen through a bore counts by its view', () => {
    const view = discToDisc(0.03, 0.08, 0.12)
    const area = Math.PI * 0.03 ** 2
    const body = { temperature: 1100, area, emissivity: 0.85, viewOfPot: view }
    const with_ = potHeat({ ...usual, bodies: [body] }, medianPotCoefficients).bottomRadiation
    const without = potHeat(usual, medianPotCoefficients).bottomRadiation
    // σ T⁴ of 1100 K through 28 cm², some of it seen: 20–70 W.
    expect(with_ - without).toBeGreaterThan(20)
    expect(with_ - without).toBeLessThan(80)
  })

  test('every coefficient lies within its own band and moves the answer', () => {
    const skirted = { ...usual, skirt: { gap: 0.008, height: 0.1, emissivity: 0.8 } }
    const open = { ...usual, pot: { ...usual.pot, lid: false } }
    for (const [key, { median, low, high }] of Object.entries(potCoefficients)) {
      expect(low).toBeLessThan(median)
      expect(median).toBeLessThan(high)
      const spread = [usual, skirted, open].map((input) =>
        Math.abs(
          net(potHeat(input, { ...medianPotCoefficients, [key]: high })) -
            net(potHeat(input, { ...medianPotCoefficients, [key]: low })),
        ),
      )
      expect(Math.max(...spread), key).toBeGreaterThan(0.5)
    }
  })
})

describe('the pot itself', () => {
  const { pot } = usual

  test('a litre stands 5 cm deep in 158 mm', () => {
    expect(waterDepth(pot, 1, 293.15)).toBeCloseTo(0.001 / 0.998206 / ((Math.PI / 4) * 0.158 ** 2), 6)
    expect(bottomArea(pot)).toBeCloseTo(0.020106, 6)
    expect(potVolume(pot)).toBeCloseTo(0.001941, 5)
  })

  test('of 1 mm aluminium it is worth some 70 g of water', () => {
    expect(potHeatCapacity(pot) / 4184).toBeGreaterThan(0.04)
    expect(potHeatCapacity(pot) / 4184).toBeLessThan(0.07)
  })

  test('the dry rim helps as a fin: more than nothing, less than all; thick aluminium more than thin steel', () => {
    const thin = { ...pot, metal: 'stainless steel' as const, wall: 0.0004 }
    const depth = 0.05
    expect(workingSide(pot, depth, 12)).toBeGreaterThan(workingSide(thin, depth, 12))
    expect(workingSide(thin, depth, 12)).toBeGreaterThan(depth)
    expect(workingSide(pot, depth, 12)).toBeLessThan(pot.height)
    expect(workingSide(pot, 0.2, 12)).toBe(pot.height)
  })
})
