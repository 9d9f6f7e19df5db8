import { AIR_MOLES, type Blend, blendOf } from '#science/gas/blend.ts'
import { MOLAR_MASS } from '#science/gas/thermo.ts'
import { TAR_ATOMS, TAR_MOLAR_MASS, TAR_OXYGEN, tarRecord } from './tar.ts'

/** Gas of the front, moles per kilogram of dry fuel; `tar` in units of CH1.2O0.2. */
export type FrontMoles = Readonly<Record<'CO' | 'CO2' | 'H2' | 'H2O' | 'CH4' | 'N2' | 'Ar' | 'tar', number>>

/** Atoms that char, tar and methane left for the shift, and the fixed species [mol/kg dry fuel]. */
export interface FrontAtoms {
  readonly carbon: number
  readonly hydrogen: number
  readonly oxygen: number
  /** As N2. */
  readonly nitrogen: number
  readonly methane: number
  readonly tar: number
}

/**
 * The front's gas for any air ratio and any split of the shift. The gas is linear in both, so three sums of
 * polynomials, made once a fuel, replace a sum over nine species at every step of every iteration.
 */
export interface BlendFamily {
  /** What one mole more of CO changes: CO + H2O − CO2 − H2. */
  readonly perCarbonMonoxide: Float64Array
  /** The gas of one air ratio; it belongs to the family and is overwritten by the next. */
  at(airPerFuel: number): FrontGas
}

/** CO and H2 need the same oxygen and burn to what CO2 and H2O are: only the unburnt gas depends on the shift. */
export interface FrontGas {
  /** Terms of the gas of a kilogram of dry fuel with no CO. */
  readonly base: Float64Array
  /** Specific gas constant of the gas [J/(kg K)]; the shift leaves the number of moles as it is. */
  readonly gasConstant: number
  /** The gas burnt with just enough air, per kilogram of burnt gas. */
  readonly burnt: Blend
  /** Gas of a kilogram of dry fuel [kg/kg], and the air that burns a kilogram of gas [kg/kg]. */
  readonly mass: number
  readonly stoichiometricAir: number
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] }

/** Lays out the gas of one fuel for every air ratio: two blends and how they mix. */
export const blendFamily = ({
  carbon,
  hydrogen,
  oxygen,
  nitrogen,
  methane,
  tar,
}: FrontAtoms): BlendFamily => {
  // H2O = a and H2 = b with a = oxygen − 2 carbon, b = hydrogen/2 − a; air adds 2 O2 to a and its own CO2 passes through.
  const a = oxygen - 2 * carbon
  const b = hydrogen / 2 - a
  const extra = { record: tarRecord, moles: tar }
  const fromFuel = blendOf({ CO2: carbon, H2O: a, H2: b, CH4: methane, N2: nitrogen }, extra)
  const fromAir = blendOf({
    CO2: AIR_MOLES.CO2,
    H2O: 2 * AIR_MOLES.O2,
    H2: -2 * AIR_MOLES.O2,
    N2: AIR_MOLES.N2,
    Ar: AIR_MOLES.Ar,
  })
  const shift = blendOf({ CO: 1, H2O: 1, CO2: -1, H2: -1 })
  // Oxygen that burns it.
  const needOfFuel = b / 2 + 2 * methane + TAR_OXYGEN * tar
  const needOfAir = -AIR_MOLES.O2
  const burntFuel = {
    CO2: carbon + methane + TAR_ATOMS.C * tar,
    H2O: hydrogen / 2 + 2 * methane + (TAR_ATOMS.H / 2) * tar,
    N2: nitrogen,
  }
  const burntFromFuel = blendOf(burntFuel)
  const airForIt = blendOf({ N2: AIR_MOLES.N2, Ar: AIR_MOLES.Ar, CO2: AIR_MOLES.CO2 })
  const massOfFuelGas =
    carbon * MOLAR_MASS.CO2 +
    a * MOLAR_MASS.H2O +
    b * MOLAR_MASS.H2 +
    methane * MOLAR_MASS.CH4 +
    nitrogen * MOLAR_MASS.N2 +
    tar * TAR_MOLAR_MASS

  const burnt: Mutable<Blend> = { gasConstant: 0, terms: new Float64Array(14) }
  const gas: Mutable<FrontGas> = {
    base: new Float64Array(14),
    gasConstant: 0,
    burnt,
    mass: 0,
    stoichiometricAir: 0,
  }
  const at = (airPerFuel: number): FrontGas => {
    const mass = massOfFuelGas + airPerFuel
    const stoichiometric = (needOfFuel + airPerFuel * needOfAir) / AIR_MOLES.O2
    const allAir = airPerFuel + stoichiometric
    const burntMass = mass + stoichiometric
    for (let i = 0; i < 14; i++) {
      gas.base[i] = (fromFuel.terms[i] as number) + airPerFuel * (fromAir.terms[i] as number)
      burnt.terms[i] =
        ((burntFromFuel.terms[i] as number) + allAir * (airForIt.terms[i] as number)) / burntMass
    }
    burnt.gasConstant = (burntFromFuel.gasConstant + allAir * airForIt.gasConstant) / burntMass
    gas.gasConstant = (fromFuel.gasConstant + airPerFuel * fromAir.gasConstant) / mass
    gas.mass = mass
    gas.stoichiometricAir = stoichiometric / mass
    return gas
  }
  return { perCarbonMonoxide: shift.terms, at }
}
