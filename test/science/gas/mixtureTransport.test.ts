import { describe, expect, test } from 'vitest'
import measured from '#reference/mixtureViscosity.json' with { type: 'json' }
import reference from '#reference/pureTransport.json' with { type: 'json' }
import { DRY_AIR_MOLE_FRACTIONS } from '#science/gas/blend.ts'
import {
  mixtureConductivity,
  mixturePrandtl,
  mixtureViscosity,
  wilkeViscosity,
} from '#science/gas/mixtureTransport.ts'
import { pureTransport } from '#science/gas/pureTransport.ts'
import { GAS_SPECIES, MOLAR_MASS } from '#science/gas/thermo.ts'
import { airConductivity, airViscosity } from '#science/gas/transport.ts'
import { expectWithin, knownMissesOf, relativeMiss } from '../outsideCheck.ts'

/** Largest share that viscosity and conductivity may be off; the same formulas on both sides where it is tiny. */
const tolerances: Readonly<Record<string, readonly [number, number]>> = {
  N2: [1e-6, 1e-6],
  O2: [1e-6, 1e-6],
  Ar: [1e-6, 1e-6],
  H2O: [1e-6, 1e-6],
  CO2: [0.01, 1e-6],
  H2: [0.01, 0.04],
  CH4: [0.01, 0.03],
}

type Row = readonly [string, number, number, number]
const rows = reference.rows as unknown as readonly Row[]

describe(reference.source, () => {
  test.each(rows.filter(([gas]) => gas !== 'air'))('%s at %d K', (gas, T, viscosity, conductivity) => {
    const ours = pureTransport[gas as keyof typeof pureTransport]
    const [ofViscosity, ofConductivity] = tolerances[gas] as readonly [number, number]
    expectWithin(`viscosity of ${gas} at ${T} K`, relativeMiss(ours.viscosity(T), viscosity), ofViscosity)
    expectWithin(
      `conductivity of ${gas} at ${T} K`,
      relativeMiss(ours.conductivity(T), conductivity),
      ofConductivity,
    )
  })

  test('every gas but carbon monoxide, for which the program has no model, was compared', () => {
    const compared = new Set(rows.map(([gas]) => gas))
    expect(GAS_SPECIES.filter((gas) => !compared.has(gas))).toEqual(['CO'])
  })
})

describe('air mixed of its gases against Lemmon & Jacobsen (2004), 250–1500 K: 1.5 % and 2 %', () => {
  test.each([250, 300, 400, 500, 700, 900, 1100, 1300, 1500])('at %d K', (T) => {
    expectWithin(
      `viscosity of mixed air at ${T} K`,
      relativeMiss(mixtureViscosity(DRY_AIR_MOLE_FRACTIONS, T), airViscosity(T)),
      0.015,
    )
    expectWithin(
      `conductivity of mixed air at ${T} K`,
      relativeMiss(mixtureConductivity(DRY_AIR_MOLE_FRACTIONS, T), airConductivity(T)),
      0.02,
    )
  })
})

describe(measured.source, () => {
  const pure = [measured.rows.at(-1)?.[1] as number, measured.rows[0]?.[1] as number]
  const met = new Set<string>()
  test.each(measured.rows as unknown as readonly (readonly [number, number])[])(
    'hydrogen in nitrogen, mole fraction %d',
    (x, viscosity) => {
      const check = `hydrogen in nitrogen, mole fraction ${x}`
      met.add(check)
      const ours = mixtureViscosity({ H2: x, N2: 1 - x }, measured.temperature)
      expectWithin(check, relativeMiss(ours, viscosity), 0.025)
      // With the measured pure gases put in the rule alone is to blame.
      const rule = wilkeViscosity([x, 1 - x], [MOLAR_MASS.H2, MOLAR_MASS.N2], pure)
      expect(rule).toBeGreaterThanOrEqual(viscosity * 0.999)
    },
  )
  test('every known miss was met', () => {
    expect(knownMissesOf('hydrogen in nitrogen').filter((check) => !met.has(check))).toEqual([])
  })
})

const woodGas = { CO: 12, H2: 7.5, CH4: 2.5, CO2: 12.5, H2O: 18, N2: 46, Ar: 0.5 }

describe('a mixture', () => {
  test('of one gas is that gas', () => {
    for (const gas of GAS_SPECIES) {
      expect(mixtureViscosity({ [gas]: 3 }, 800)).toBeCloseTo(pureTransport[gas].viscosity(800), 15)
      expect(mixtureConductivity({ [gas]: 3 }, 800)).toBeCloseTo(pureTransport[gas].conductivity(800), 12)
    }
  })

  test('does not depend on the amount, nor on a gas that is named and not there', () => {
    const doubled = Object.fromEntries(Object.entries(woodGas).map(([gas, n]) => [gas, 2 * n]))
    expect(mixtureViscosity(doubled, 900) / mixtureViscosity({ ...woodGas, O2: 0 }, 900)).toBeCloseTo(1, 12)
  })

  test('of a gas with itself is itself: two shares of the same, by Wilke’s rule', () => {
    expect(wilkeViscosity([0.3, 0.7], [0.028, 0.028], [2e-5, 2e-5])).toBeCloseTo(2e-5, 18)
  })

  test('has a Prandtl number of 0.65 to 0.8 where it is wood gas or flue gas, from memory of every handbook', () => {
    for (const T of [300, 600, 1000, 1500]) {
      expect(mixturePrandtl(woodGas, T)).toBeGreaterThan(0.62)
      expect(mixturePrandtl(woodGas, T)).toBeLessThan(0.85)
      expect(mixturePrandtl({ CO2: 13, H2O: 11, N2: 76 }, T)).toBeGreaterThan(0.65)
      expect(mixturePrandtl({ CO2: 13, H2O: 11, N2: 76 }, T)).toBeLessThan(0.85)
    }
  })
})
