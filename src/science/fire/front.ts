import { MOLAR_GAS_CONSTANT } from '#basis/constants.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { higherHeatingValue, type UltimateAnalysis } from '#science/fuel/composition.ts'
import type { Fuel } from '#science/fuel/table.ts'
import { AIR, AIR_MOLES, type Blend, blendOf, specificEnthalpy } from '#science/gas/blend.ts'
import { condensedRecords, gasRecords } from '#science/gas/speciesData.ts'
import {
  ATOMIC_MASS,
  graphiteSensibleEnthalpy,
  liquidWaterEnthalpy,
  molarEnthalpy,
  MOLAR_MASS,
  shiftConstant,
} from '#science/gas/thermo.ts'

/**
 * The front: a thin glowing layer that turns raw fuel and primary air into gas, tar and char. Its closure fixes the
 * yields of char, tar and methane by correlation; carbon, hydrogen and oxygen balances, the water-gas shift at the
 * front's own temperature and the enthalpy balance give the rest. Everything is per kilogram of dry fuel.
 */
export interface Front {
  /** Primary air per dry fuel [kg/kg]. */
  readonly airPerFuel: number
  /** Gas and vapours, water of the fuel included, tar included [kg/kg dry fuel]. */
  readonly gas: number
  /** Char with the fuel's ash in it [kg/kg dry fuel]. */
  readonly char: number
  readonly ash: number
  /** [K] */
  readonly temperature: number
  /** The gas, unburnt, per kilogram. */
  readonly unburnt: Blend
  /** The same gas burnt with just enough air, per kilogram of burnt gas. */
  readonly burnt: Blend
  /** Air that burns a kilogram of the gas [kg/kg]. */
  readonly stoichiometricAir: number
  /** Heat of combustion of the gas at 25 °C, water as vapour [J/kg gas]. */
  readonly gasHeat: number
  /** Lower heating value of the char, ash included [J/kg]. */
  readonly charHeat: number
  /** Heat lost from the front through the wall [J/kg dry fuel]. */
  readonly loss: number
  /** Enthalpy of the char as it leaves, formation included [J/kg dry fuel]. */
  readonly charEnthalpy: number
  /** Enthalpy of moist fuel as it comes, formation included [J/kg dry fuel]. */
  readonly fuelEnthalpy: number
  /** Moles per kilogram of dry fuel. */
  readonly moles: Readonly<Record<'CO' | 'CO2' | 'H2' | 'H2O' | 'CH4' | 'N2' | 'Ar' | 'tar', number>>
  /** Largest relative miss of any element's balance [1]. */
  readonly atomResidual: number
}

export type FrontOutcome =
  | { readonly ok: true; readonly front: Front }
  | { readonly ok: false; readonly reason: 'too wet or too little air to glow' | 'more air than the fuel can use' }

/** Char after the front, dry ash-free: from memory, wood charcoal made at about 650 °C. */
const CHAR_ANALYSIS: UltimateAnalysis = { C: 0.915, H: 0.025, O: 0.057, N: 0.003, S: 0, ash: 0 }

/** The tar lump CH1.2O0.2, from memory: between the oils of slow pyrolysis and the aromatics of hot tar. */
const TAR_ATOMS = { C: 1, H: 1.2, O: 0.2 } as const
const TAR_MOLAR_MASS = TAR_ATOMS.C * ATOMIC_MASS.C + TAR_ATOMS.H * ATOMIC_MASS.H + TAR_ATOMS.O * ATOMIC_MASS.O
const T_REFERENCE = 298.15

/** Enthalpy of formation of a CHO(N) substance from its higher heating value, products CO2, liquid water, N2 [J/kg]. */
const formationEnthalpy = (higher: number, carbon: number, hydrogen: number): number =>
  higher +
  (carbon / ATOMIC_MASS.C) * molarEnthalpy(gasRecords.CO2, T_REFERENCE) +
  (hydrogen / ATOMIC_MASS.H / 2) * molarEnthalpy(condensedRecords.liquidWater, T_REFERENCE)

const TAR_ANALYSIS: UltimateAnalysis = {
  C: (TAR_ATOMS.C * ATOMIC_MASS.C) / TAR_MOLAR_MASS,
  H: (TAR_ATOMS.H * ATOMIC_MASS.H) / TAR_MOLAR_MASS,
  O: (TAR_ATOMS.O * ATOMIC_MASS.O) / TAR_MOLAR_MASS,
  N: 0,
  S: 0,
  ash: 0,
}

/**
 * Tar vapour as a NASA polynomial. Heat capacity 0.40 + 2.9e-3 T − 0.9e-6 T² kJ/(kg K), close to phenol vapour at 300
 * and 1000 K (from memory). Its heat of formation follows from the heating value of its composition; the heat of
 * vaporisation is within that correlation's error.
 */
const tarRecord = (() => {
  const scale = TAR_MOLAR_MASS / MOLAR_GAS_CONSTANT
  const a = [400 * scale, 2.9 * scale, -0.9e-3 * scale, 0, 0]
  const [a1, a2, a3] = a as [number, number, number]
  const sensible =
    a1 * T_REFERENCE + (a2 * T_REFERENCE ** 2) / 2 + (a3 * T_REFERENCE ** 3) / 3
  const formation =
    (formationEnthalpy(higherHeatingValue(TAR_ANALYSIS), TAR_ANALYSIS.C, TAR_ANALYSIS.H) * TAR_MOLAR_MASS) /
    MOLAR_GAS_CONSTANT
  const terms = [...a, formation - sensible, 0]
  return { low: terms, high: terms }
})()

/** Oxygen to burn a mole of tar [mol]. */
const TAR_OXYGEN = TAR_ATOMS.C + TAR_ATOMS.H / 4 - TAR_ATOMS.O / 2

/** Heat capacity of dry wood near room temperature, and of ash [J/(kg K)]; from memory. */
const DRY_WOOD_HEAT = 1300
const ASH_HEAT = 900

/** The front of one fuel at one moisture: what does not change with the air flow is worked out once. */
export interface FrontModel {
  /** Closes the front for an air ratio and air temperature. Valid for 0.8–3 kg of air a kilogram of dry fuel. */
  close(airPerFuel: number, airTemperature: number): FrontOutcome
}

export const frontModel = (
  fuel: Fuel,
  moisture: number,
  ambient: number,
  coefficients: Coefficients,
): FrontModel => {
  const { analysis } = fuel
  const water = moisture / (1 - moisture)
  const charOrganic = Math.max(
    0.02,
    coefficients.charYield * (1 + coefficients.charYieldMoistureSlope * (moisture - 0.1)) - analysis.ash,
  )
  const tar = coefficients.tarYield
  const methane = coefficients.methaneYield
  const fuelFormation = formationEnthalpy(fuel.higherHeatingValue, analysis.C, analysis.H)
  const charFormation = formationEnthalpy(higherHeatingValue(CHAR_ANALYSIS), CHAR_ANALYSIS.C, CHAR_ANALYSIS.H)
  const fuelEnthalpy =
    fuelFormation + DRY_WOOD_HEAT * (ambient - T_REFERENCE) + water * liquidWaterEnthalpy(ambient)

  // The published analysis need not close to exactly 1; oxygen is by difference, as laboratories report it.
  const oxygenShare = 1 - analysis.C - analysis.H - analysis.N - analysis.S - analysis.ash
  const tarMoles = tar / TAR_MOLAR_MASS
  const methaneMoles = methane / MOLAR_MASS.CH4
  const carbon =
    (analysis.C - charOrganic * CHAR_ANALYSIS.C) / ATOMIC_MASS.C - tarMoles * TAR_ATOMS.C - methaneMoles
  const hydrogen =
    (analysis.H - charOrganic * CHAR_ANALYSIS.H) / ATOMIC_MASS.H +
    (2 * water) / MOLAR_MASS.H2O -
    tarMoles * TAR_ATOMS.H -
    4 * methaneMoles
  const oxygenOfFuel =
    (oxygenShare - charOrganic * CHAR_ANALYSIS.O) / ATOMIC_MASS.O +
    water / MOLAR_MASS.H2O -
    tarMoles * TAR_ATOMS.O
  const nitrogenOfFuel = (analysis.N + analysis.S - charOrganic * CHAR_ANALYSIS.N) / ATOMIC_MASS.N / 2
  const loss = coefficients.frontLoss * fuel.higherHeatingValue

  const charEnthalpyAt = (temperature: number): number =>
    charOrganic * (charFormation + graphiteSensibleEnthalpy(temperature)) +
    analysis.ash * ASH_HEAT * (temperature - T_REFERENCE)

  const charLower = higherHeatingValue(CHAR_ANALYSIS) - 2.442e6 * 8.936 * CHAR_ANALYSIS.H
  const charHeat = (charOrganic * charLower) / (charOrganic + analysis.ash)

  const close = (airPerFuel: number, airTemperature: number): FrontOutcome => {
    const oxygen = oxygenOfFuel + airPerFuel * (2 * AIR_MOLES.O2 + 2 * AIR_MOLES.CO2)
    const c = carbon + airPerFuel * AIR_MOLES.CO2
    // H2O = a + CO, H2 = b − CO by the oxygen and hydrogen balances.
    const a = oxygen - 2 * c
    const b = hydrogen / 2 - a
    const least = Math.max(0, -a)
    const most = Math.min(c, b)
    if (least >= c || b <= 0) return { ok: false, reason: 'more air than the fuel can use' }
    if (most <= least) return { ok: false, reason: 'too wet or too little air to glow' }

    const carbonMonoxide = (temperature: number): number => {
      // (c − x)(b − x) = K x (a + x): the root between `least` and `most` is the smaller one in magnitude.
      const K = shiftConstant(temperature)
      const qa = 1 - K
      const qb = -(c + b + K * a)
      const qc = c * b
      const root = Math.sqrt(Math.max(0, qb * qb - 4 * qa * qc))
      const x = (2 * qc) / (-qb + root)
      return Math.min(most, Math.max(least, x))
    }

    const molesAt = (temperature: number) => {
      const x = carbonMonoxide(temperature)
      return {
        CO: x,
        CO2: c - x,
        H2O: a + x,
        H2: b - x,
        CH4: methaneMoles,
        N2: nitrogenOfFuel + airPerFuel * AIR_MOLES.N2,
        Ar: airPerFuel * AIR_MOLES.Ar,
      }
    }
    const blendAt = (temperature: number): Blend =>
      blendOf(molesAt(temperature), { record: tarRecord, moles: tarMoles })

    const supplied = fuelEnthalpy + airPerFuel * specificEnthalpy(AIR, airTemperature) - loss
    /** Enthalpy left over if the front were at this temperature; falls as the temperature rises. */
    const surplus = (temperature: number): number =>
      supplied - specificEnthalpy(blendAt(temperature), temperature) - charEnthalpyAt(temperature)

    let low = 500
    let high = 2200
    let atLow = surplus(low)
    let atHigh = surplus(high)
    if (!(atLow > 0)) return { ok: false, reason: 'too wet or too little air to glow' }
    if (!(atHigh < 0)) return { ok: false, reason: 'more air than the fuel can use' }
    // Illinois regula falsi: bracketed, superlinear, a handful of evaluations.
    let temperature = low
    for (let i = 0; i < 60 && high - low > 1e-9 * high; i++) {
      temperature = (low * atHigh - high * atLow) / (atHigh - atLow)
      const here = surplus(temperature)
      if (Math.abs(here) < 1e-9 * Math.abs(supplied)) break
      if (here > 0) {
        low = temperature
        atLow = here
        atHigh /= 2
      } else {
        high = temperature
        atHigh = here
        atLow /= 2
      }
    }

    const moles = molesAt(temperature)
    const total = blendAt(temperature)
    const gas =
      moles.CO * MOLAR_MASS.CO +
      moles.CO2 * MOLAR_MASS.CO2 +
      moles.H2O * MOLAR_MASS.H2O +
      moles.H2 * MOLAR_MASS.H2 +
      moles.CH4 * MOLAR_MASS.CH4 +
      moles.N2 * MOLAR_MASS.N2 +
      moles.Ar * MOLAR_MASS.Ar +
      tar
    const oxygenNeed = moles.CO / 2 + moles.H2 / 2 + 2 * moles.CH4 + TAR_OXYGEN * tarMoles
    const airNeed = oxygenNeed / AIR_MOLES.O2
    const burntTotal = blendOf({
      CO2: moles.CO2 + moles.CO + moles.CH4 + TAR_ATOMS.C * tarMoles + airNeed * AIR_MOLES.CO2,
      H2O: moles.H2O + moles.H2 + 2 * moles.CH4 + (TAR_ATOMS.H / 2) * tarMoles,
      N2: moles.N2 + airNeed * AIR_MOLES.N2,
      Ar: moles.Ar + airNeed * AIR_MOLES.Ar,
    })
    const unburnt = perKilogram(total, gas)
    const burnt = perKilogram(burntTotal, gas + airNeed)
    const stoichiometricAir = airNeed / gas
    const gasHeat =
      specificEnthalpy(unburnt, T_REFERENCE) +
      stoichiometricAir * specificEnthalpy(AIR, T_REFERENCE) -
      (1 + stoichiometricAir) * specificEnthalpy(burnt, T_REFERENCE)

    return {
      ok: true,
      front: {
        airPerFuel,
        gas,
        char: charOrganic + analysis.ash,
        ash: analysis.ash,
        temperature,
        unburnt,
        burnt,
        stoichiometricAir,
        gasHeat,
        charHeat,
        loss,
        charEnthalpy: charEnthalpyAt(temperature),
        fuelEnthalpy,
        moles: { ...moles, tar: tarMoles },
        // Mass in against mass out catches any element that went missing.
        atomResidual: Math.abs(1 + water + airPerFuel - gas - charOrganic - analysis.ash) / (1 + water + airPerFuel),
      },
    }
  }
  return { close }
}

const perKilogram = (blend: Blend, mass: number): Blend => ({
  gasConstant: blend.gasConstant / mass,
  terms: blend.terms.map((term) => term / mass),
})
