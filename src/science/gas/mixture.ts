import { AIR, type Blend, specificEnthalpy, specificHeat } from './blend.ts'

/**
 * Wood gas on its way to being burnt. `z` is the mass fraction that came from the front (0 air, 1 raw gas). Where there
 * is air enough, all gas is burnt; where there is not, all oxygen is used and the rest of the gas stays unburnt: the
 * mixed-is-burnt limit. It is hotter than equilibrium would be: with the gas of a pellet front by less than 10 K from an
 * air ratio of 1.2 up (2 K at 2), by 12–32 K with just enough air, where CO2 and H2O dissociate, and more with too
 * little, 16–18 K at 0.9 and 70 K at 0.6, where the methane and tar left over would take up steam
 * (test/science/gas/burntLimit.test.ts).
 */
export interface GasBasis {
  readonly unburnt: Blend
  /** Burnt with just enough air, per kilogram of burnt gas. */
  readonly burnt: Blend
  /** Air for a kilogram of gas [kg/kg]. */
  readonly stoichiometricAir: number
  /** Heat of combustion of the unburnt gas [J/kg]. */
  readonly gasHeat: number
}

export const zOfStoichiometric = (basis: GasBasis): number => 1 / (1 + basis.stoichiometricAir)

/** Heat still bound in the mixture [J/kg]. */
export const chemicalHeat = (basis: GasBasis, z: number): number => {
  const stoichiometric = zOfStoichiometric(basis)
  return z <= stoichiometric ? 0 : ((z - stoichiometric) / (1 - stoichiometric)) * basis.gasHeat
}

/*
 * A mixture is two gases: up to `zOfStoichiometric` burnt gas in air, above it unburnt gas in burnt gas. `richer` is the one
 * that grows with z, `part` its share by mass.
 */

const isLean = (basis: GasBasis, z: number): boolean => z <= zOfStoichiometric(basis)

const richerPart = (basis: GasBasis, z: number): number => {
  const stoichiometric = zOfStoichiometric(basis)
  return z <= stoichiometric ? z / stoichiometric : (z - stoichiometric) / (1 - stoichiometric)
}

/** Specific gas constant [J/(kg K)]. */
export const mixtureGasConstant = (basis: GasBasis, z: number): number => {
  const lean = isLean(basis, z)
  const richer = lean ? basis.burnt : basis.unburnt
  const poorer = lean ? AIR : basis.burnt
  const part = richerPart(basis, z)
  return part * richer.gasConstant + (1 - part) * poorer.gasConstant
}

/** [J/kg] */
export const mixtureEnthalpy = (basis: GasBasis, z: number, temperature: number): number => {
  const lean = isLean(basis, z)
  const richer = lean ? basis.burnt : basis.unburnt
  const poorer = lean ? AIR : basis.burnt
  const part = richerPart(basis, z)
  return part * specificEnthalpy(richer, temperature) + (1 - part) * specificEnthalpy(poorer, temperature)
}

/** [J/(kg K)] */
export const mixtureHeat = (basis: GasBasis, z: number, temperature: number): number => {
  const lean = isLean(basis, z)
  const richer = lean ? basis.burnt : basis.unburnt
  const poorer = lean ? AIR : basis.burnt
  const part = richerPart(basis, z)
  return part * specificHeat(richer, temperature) + (1 - part) * specificHeat(poorer, temperature)
}

/** Bounds of the polynomials that the model trusts [K]. */
export const COLDEST = 200
export const HOTTEST = 3000

/**
 * Temperature of a mixture of known enthalpy, by Newton's method from `guess` [K]. Enthalpy rises with temperature, so it
 * converges from anywhere; where the answer lies outside 200–3000 K the nearer bound comes back, which an iteration may
 * pass through and a finished state is refused for.
 */
export const mixtureTemperature = (basis: GasBasis, z: number, enthalpy: number, guess: number): number => {
  let temperature = Math.min(HOTTEST, Math.max(COLDEST, guess))
  for (let i = 0; i < 50; i++) {
    const step = (enthalpy - mixtureEnthalpy(basis, z, temperature)) / mixtureHeat(basis, z, temperature)
    const next = Math.min(HOTTEST, Math.max(COLDEST, temperature + step))
    const moved = Math.abs(next - temperature)
    temperature = next
    // The step after this one would be of the order of its square: 1e-12 of the temperature.
    if (moved < 1e-6 * temperature) break
  }
  return temperature
}
