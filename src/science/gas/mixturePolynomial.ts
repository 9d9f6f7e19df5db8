import { AIR } from './blend.ts'
import { type GasBasis, zOfStoichiometric } from './mixture.ts'

/**
 * Enthalpy [J/kg] and heat capacity [J/(kg K)] of the first `count` of many mixtures of one wood gas, each of its own `z` and
 * temperature [K], the same as `mixtureEnthalpy` and `mixtureHeat`. Polynomials of a mixture are the mix of its two gases'
 * polynomials: they are mixed once and serve for both.
 */
export const mixtureProperties = (
  basis: GasBasis,
  z: Float64Array,
  temperature: Float64Array,
  count: number,
  enthalpy: Float64Array,
  heat: Float64Array,
): void => {
  const stoichiometric = zOfStoichiometric(basis)
  const air = AIR.terms
  const burnt = basis.burnt.terms
  const unburnt = basis.unburnt.terms
  for (let i = 0; i < count; i++) {
    const zi = z[i] as number
    const T = temperature[i] as number
    const lean = zi <= stoichiometric
    const part = lean ? zi / stoichiometric : (zi - stoichiometric) / (1 - stoichiometric)
    const rest = 1 - part
    const richer = lean ? burnt : unburnt
    const poorer = lean ? air : burnt
    const o = T <= 1000 ? 0 : 7
    const t0 = rest * (poorer[o] as number) + part * (richer[o] as number)
    const t1 = rest * (poorer[o + 1] as number) + part * (richer[o + 1] as number)
    const t2 = rest * (poorer[o + 2] as number) + part * (richer[o + 2] as number)
    const t3 = rest * (poorer[o + 3] as number) + part * (richer[o + 3] as number)
    const t4 = rest * (poorer[o + 4] as number) + part * (richer[o + 4] as number)
    const t5 = rest * (poorer[o + 5] as number) + part * (richer[o + 5] as number)
    enthalpy[i] = T * (t0 + T * (t1 + T * (t2 + T * (t3 + T * t4)))) + t5
    heat[i] = t0 + T * (2 * t1 + T * (3 * t2 + T * (4 * t3 + T * 5 * t4)))
  }
}
