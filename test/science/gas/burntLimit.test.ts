import { describe, expect, test } from 'vitest'
import { TAR_ATOMS, TAR_MOLAR_MASS, TAR_OXYGEN, tarRecord } from '#science/fire/tar.ts'
import { AIR, AIR_MOLES, blendOf, specificEnthalpy } from '#science/gas/blend.ts'
import { equilibriumAtEnthalpy } from '#science/gas/equilibrium.ts'
import { type GasBasis, mixtureTemperature } from '#science/gas/mixture.ts'
import { MOLAR_MASS } from '#science/gas/thermo.ts'

/**
 * Gas of a front of pellets in natural draught, mole fractions, invented in the range of published ones: dry, 15 % CO,
 * 9 % H2, 3 % CH4, 15 % CO2, with tar as CH1.2O0.2. It comes at 1100 K, the air at 293.15 K.
 */
const x = { CO: 0.12, H2: 0.075, CH4: 0.025, CO2: 0.125, H2O: 0.18, N2: 0.45, Ar: 0.005 }
const xTar = 0.02
const FRONT = 1100
const OUTSIDE = 293.15

const mass =
  (Object.entries(x) as [keyof typeof x, number][]).reduce((sum, [gas, n]) => sum + n * MOLAR_MASS[gas], 0) +
  xTar * TAR_MOLAR_MASS
const perKilogram = (n: number): number => n / mass
const moles = Object.fromEntries(Object.entries(x).map(([gas, n]) => [gas, perKilogram(n)])) as typeof x
const tar = perKilogram(xTar)

const oxygen = moles.CO / 2 + moles.H2 / 2 + 2 * moles.CH4 + TAR_OXYGEN * tar
const stoichiometricAir = oxygen / AIR_MOLES.O2
const unburnt = blendOf(moles, { record: tarRecord, moles: tar })
const whole = 1 + stoichiometricAir
const burnt = blendOf({
  CO2: (moles.CO + moles.CO2 + moles.CH4 + TAR_ATOMS.C * tar + stoichiometricAir * AIR_MOLES.CO2) / whole,
  H2O: (moles.H2 + moles.H2O + 2 * moles.CH4 + (TAR_ATOMS.H / 2) * tar) / whole,
  N2: (moles.N2 + stoichiometricAir * AIR_MOLES.N2) / whole,
  Ar: (moles.Ar + stoichiometricAir * AIR_MOLES.Ar) / whole,
})
const heat =
  specificEnthalpy(unburnt, 298.15) +
  stoichiometricAir * specificEnthalpy(AIR, 298.15) -
  whole * specificEnthalpy(burnt, 298.15)
const basis: GasBasis = { unburnt, burnt, stoichiometricAir, gasHeat: heat }

/** Temperatures of the mixture by the limit and at equilibrium, the same heat radiated from both. */
const flames = (airRatio: number, radiated: number) => {
  const air = airRatio * stoichiometricAir
  const z = 1 / (1 + air)
  const enthalpy =
    z * specificEnthalpy(unburnt, FRONT) +
    (1 - z) * specificEnthalpy(AIR, OUTSIDE) -
    radiated * z * heat * Math.min(1, airRatio)
  const limit = mixtureTemperature(basis, z, enthalpy, 1500)
  const atoms = {
    C: z * (moles.CO + moles.CO2 + moles.CH4 + TAR_ATOMS.C * tar + air * AIR_MOLES.CO2),
    H: z * (2 * moles.H2 + 2 * moles.H2O + 4 * moles.CH4 + TAR_ATOMS.H * tar),
    O:
      z *
      (moles.CO +
        2 * moles.CO2 +
        moles.H2O +
        TAR_ATOMS.O * tar +
        air * (2 * AIR_MOLES.O2 + 2 * AIR_MOLES.CO2)),
    N: z * 2 * (moles.N2 + air * AIR_MOLES.N2),
    Ar: z * (moles.Ar + air * AIR_MOLES.Ar),
  }
  const equilibrium = equilibriumAtEnthalpy(enthalpy, 101325, atoms)
  if (!equilibrium.ok) throw new Error(equilibrium.sentence)
  expect(equilibrium.carbonForms).toBe(false)
  return { limit, equilibrium: equilibrium.temperature, excess: limit - equilibrium.temperature }
}

const AIR_RATIOS = [0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.3, 1.5, 1.75, 2, 2.5, 3]

describe('mixed is burnt, against equilibrium: what mixture.ts says of its error', () => {
  test.each([0, 0.15])('with a share of %d of the heat radiated', (radiated) => {
    const table = AIR_RATIOS.map((airRatio) => ({ airRatio, ...flames(airRatio, radiated) }))
    console.log(
      [`air ratio: limit, equilibrium, excess [K], ${100 * radiated} % radiated`]
        .concat(
          table.map(
            ({ airRatio, limit, equilibrium, excess }) =>
              `${airRatio.toFixed(2)}: ${limit.toFixed(0)}, ${equilibrium.toFixed(0)}, ${excess.toFixed(1)}`,
          ),
        )
        .join('\n'),
    )
    for (const { airRatio, excess } of table) {
      expect(excess).toBeGreaterThan(0)
      if (airRatio >= 2) expect(excess).toBeLessThan(3)
      else if (airRatio >= 1.2) expect(excess).toBeLessThan(10)
      else if (airRatio >= 1) expect(excess).toBeLessThan(35)
      else expect(excess).toBeLessThan(80)
    }
    const at = (airRatio: number): number => table.find((row) => row.airRatio === airRatio)?.excess as number
    // Rich: what is left unburnt would take up steam and cool the gas.
    expect(at(0.6)).toBeGreaterThan(50)
    expect(at(0.9)).toBeGreaterThan(10)
    // Worst on the lean side with just enough air.
    expect(at(1)).toBeGreaterThan(at(1.1))
    expect(at(1)).toBeGreaterThan(10)
  })
})
