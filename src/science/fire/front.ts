import { REFERENCE_TEMPERATURE } from '#basis/constants.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { higherHeatingValue, lowerHeatingValue, type UltimateAnalysis } from '#science/fuel/composition.ts'
import type { Fuel } from '#science/fuel/table.ts'
import { AIR, AIR_MOLES, specificEnthalpy, termsEnthalpy, termsHeat } from '#science/gas/blend.ts'
import type { GasBasis } from '#science/gas/mixture.ts'
import {
  ATOMIC_MASS,
  graphiteHeat,
  graphiteSensibleEnthalpy,
  liquidWaterEnthalpy,
  logShiftConstant,
  logShiftSlope,
  MOLAR_MASS,
} from '#science/gas/thermo.ts'
import { blendFamily, type FrontMoles } from './frontGas.ts'
import { formationEnthalpy, TAR_ATOMS, TAR_MOLAR_MASS } from './tar.ts'

/**
 * The front: a thin glowing layer that turns raw fuel and primary air into gas, tar and char. Its closure fixes the
 * yields of char, tar and methane by correlation; carbon, hydrogen and oxygen balances, the water-gas shift at the
 * front's own temperature and the enthalpy balance give the rest. Everything is per kilogram of dry fuel.
 */
export interface Front extends GasBasis {
  /** Primary air per dry fuel [kg/kg]. */
  readonly airPerFuel: number
  /** Gas and vapours, water of the fuel and tar included [kg/kg dry fuel]. */
  readonly gas: number
  /** Char with the fuel's ash in it [kg/kg dry fuel]. */
  readonly char: number
  /** [K] */
  readonly temperature: number
  /** Lower heating value of the char, ash included [J/kg]. */
  readonly charHeat: number
  /** Heat lost from the front through the wall [J/kg dry fuel]. */
  readonly loss: number
  /** Heat that glows away upwards from bare char [J/kg dry fuel]. */
  readonly glow: number
  /** Enthalpy of the char as it is left, formation included [J/kg dry fuel]. */
  readonly charEnthalpy: number
  /** Enthalpy of the moist fuel as it comes, formation included [J/kg dry fuel]. */
  readonly fuelEnthalpy: number
  /** Moles per kilogram of dry fuel. */
  readonly moles: FrontMoles
}

export type FrontOutcome =
  | { readonly ok: true; readonly front: Front }
  | {
      readonly ok: false
      readonly reason: 'too wet or too little air to glow' | 'more air than the fuel can use'
    }

/** Char after the front, dry ash-free: from memory, wood charcoal made at about 650 °C. */
export const CHAR_ANALYSIS: UltimateAnalysis = { C: 0.915, H: 0.025, O: 0.057, N: 0.003, S: 0, ash: 0 }

/** Heat capacity of dry wood near room temperature, and of ash [J/(kg K)]; from memory. */
const DRY_WOOD_HEAT = 1300
const ASH_HEAT = 900

/** Air that differs by less than this makes the same front, to 1e-9 of its heat [K]. */
const SAME_WARMTH = 1e-4

/** Temperatures between which a front is looked for [K]. */
const COLDEST_FRONT = 500
const HOTTEST_FRONT = 2200

/** Where the first search starts: a usual air ratio [kg/kg], a usual front [K]. */
const USUAL_AIR = 1.5
const USUAL_FRONT = 1150
/** Relative step of the temperature after which the next would be below what the numbers resolve [1]. */
const CLOSED = 1e-6

/** The front of one fuel at one moisture: what does not change with the air flow is worked out once. */
export interface FrontModel {
  /** Closes the front for an air ratio and air temperature [K]. Meant for 0.8–3 kg of air a kilogram of dry fuel. */
  close(airPerFuel: number, airTemperature: number): FrontOutcome
  /** The same for inner loops: the front belongs to the model, which starts from it and overwrites it the next time. */
  closeAgain(airPerFuel: number, airTemperature: number): FrontOutcome
}

/** What the char yield's median is given for: pieces and bed [m], moisture wet basis [1]. */
const USUAL_SIZE = 0.01
const USUAL_WIDTH = 0.1
const USUAL_MOISTURE = 0.1

/** Char the front leaves, ash included, per dry fuel [kg/kg]; see the coefficients for sources. Kept within 5–40 %. */
export const charYield = (
  pieceDiameter: number,
  moisture: number,
  bedDiameter: number,
  coefficients: Coefficients,
): number => {
  const yielded =
    coefficients.charYield *
    (pieceDiameter / USUAL_SIZE) ** coefficients.charYieldSizeExponent *
    (bedDiameter / USUAL_WIDTH) ** coefficients.charYieldWidthExponent *
    (1 + coefficients.charYieldMoistureSlope * (moisture - USUAL_MOISTURE))
  return Math.min(0.4, Math.max(0.05, yielded))
}

type Mutable<T> = { -readonly [K in keyof T]: T[K] }

/** A copy that nothing overwrites. */
const keptFront = (front: Front): Front => ({
  ...front,
  unburnt: { ...front.unburnt, terms: front.unburnt.terms.slice() },
  burnt: { ...front.burnt, terms: front.burnt.terms.slice() },
  moles: { ...front.moles },
})

const TOO_LITTLE: FrontOutcome = { ok: false, reason: 'too wet or too little air to glow' }
const TOO_MUCH: FrontOutcome = { ok: false, reason: 'more air than the fuel can use' }

/**
 * The front of one fuel at one moisture (wet basis [1]) from an ambient temperature [K], in a bed of `bedDiameter` [m]: what it
 * makes of air. What no coefficient set lets glow comes back as a reason, never as a number.
 */
export const frontModel = (
  fuel: Fuel,
  moisture: number,
  ambient: number,
  coefficients: Coefficients,
  bedDiameter = USUAL_WIDTH,
): FrontModel => {
  const { analysis } = fuel
  const water = moisture / (1 - moisture)
  const charOrganic = Math.max(
    0.02,
    charYield(fuel.pieceDiameter, moisture, bedDiameter, coefficients) - analysis.ash,
  )
  const char = charOrganic + analysis.ash
  const charFormation = formationEnthalpy(higherHeatingValue(CHAR_ANALYSIS), CHAR_ANALYSIS.C, CHAR_ANALYSIS.H)
  const charLower = lowerHeatingValue(higherHeatingValue(CHAR_ANALYSIS), CHAR_ANALYSIS.H)
  const charHeat = (charOrganic * charLower) / char
  const fuelEnthalpy =
    formationEnthalpy(fuel.higherHeatingValue, analysis.C, analysis.H) +
    DRY_WOOD_HEAT * (ambient - REFERENCE_TEMPERATURE) +
    water * liquidWaterEnthalpy(ambient)
  const loss = coefficients.frontLoss * fuel.higherHeatingValue

  // A published analysis need not add up to 1; oxygen is by difference, as laboratories report it. Sulphur goes with
  // nitrogen: it is below 0.1 % in wood.
  const oxygenShare = 1 - analysis.C - analysis.H - analysis.N - analysis.S - analysis.ash
  const tarMoles = coefficients.tarYield / TAR_MOLAR_MASS
  const methaneMoles = coefficients.methaneYield / MOLAR_MASS.CH4
  const carbon =
    (analysis.C - charOrganic * CHAR_ANALYSIS.C) / ATOMIC_MASS.C - tarMoles * TAR_ATOMS.C - methaneMoles
  const hydrogen =
    (analysis.H - charOrganic * CHAR_ANALYSIS.H) / ATOMIC_MASS.H +
    (2 * water) / MOLAR_MASS.H2O -
    tarMoles * TAR_ATOMS.H -
    4 * methaneMoles
  const oxygen =
    (oxygenShare - charOrganic * CHAR_ANALYSIS.O) / ATOMIC_MASS.O +
    water / MOLAR_MASS.H2O -
    tarMoles * TAR_ATOMS.O
  const nitrogen = (analysis.N + analysis.S - charOrganic * CHAR_ANALYSIS.N) / ATOMIC_MASS.N / 2
  const family = blendFamily({ carbon, hydrogen, oxygen, nitrogen, methane: methaneMoles, tar: tarMoles })

  const charEnthalpyAt = (temperature: number): number =>
    charOrganic * (charFormation + graphiteSensibleEnthalpy(temperature)) +
    analysis.ash * ASH_HEAT * (temperature - REFERENCE_TEMPERATURE)
  const charHeatCapacityAt = (temperature: number): number =>
    charOrganic * graphiteHeat(temperature) + analysis.ash * ASH_HEAT

  const unburnt = { gasConstant: 0, terms: new Float64Array(14) }
  const moles: Mutable<FrontMoles> = {
    CO: 0,
    CO2: 0,
    H2: 0,
    H2O: 0,
    CH4: methaneMoles,
    N2: 0,
    Ar: 0,
    tar: tarMoles,
  }
  let gas = family.at(USUAL_AIR)
  const front: Mutable<Front> = {
    airPerFuel: Number.NaN,
    gas: 0,
    char,
    temperature: USUAL_FRONT,
    unburnt,
    burnt: gas.burnt,
    stoichiometricAir: 0,
    gasHeat: 0,
    charHeat,
    loss,
    glow: 0,
    charEnthalpy: 0,
    fuelEnthalpy,
    moles,
  }
  const glows: FrontOutcome = { ok: true, front }
  let outcome: FrontOutcome = TOO_LITTLE
  let lastAir = Number.NaN
  let lastWarmth = Number.NaN

  const closeAgain = (airPerFuel: number, airTemperature: number): FrontOutcome => {
    // On the straight part of the front's law the ratio stays put; then only the air's warmth matters.
    if (lastAir === airPerFuel && Math.abs(lastWarmth - airTemperature) < SAME_WARMTH) return outcome
    if (lastAir !== airPerFuel) gas = family.at(airPerFuel)
    lastAir = airPerFuel
    lastWarmth = airTemperature
    outcome = closeFor(airPerFuel, airTemperature)
    return outcome
  }

  const closeFor = (airPerFuel: number, airTemperature: number): FrontOutcome => {
    // With x mol of CO: CO2 = c − x, H2O = a + x, H2 = b − x by the balances of C, O and H.
    const c = carbon + airPerFuel * AIR_MOLES.CO2
    const a = oxygen + 2 * airPerFuel * (AIR_MOLES.O2 + AIR_MOLES.CO2) - 2 * c
    const b = hydrogen / 2 - a
    const least = Math.max(0, -a)
    const most = Math.min(c, b)
    if (b <= 0) return TOO_MUCH
    if (most <= least) return TOO_LITTLE

    const supplied = fuelEnthalpy + airPerFuel * specificEnthalpy(AIR, airTemperature) - loss
    let low = COLDEST_FRONT
    let high = HOTTEST_FRONT
    let temperature = front.temperature
    let x = least
    for (let i = 0; i < 80; i++) {
      const K = Math.exp(logShiftConstant(temperature))
      // (c − x)(b − x) = K x (a + x): of the two roots the one between `least` and `most`.
      const linear = c + b + K * a
      const root = (2 * c * b) / (linear + Math.sqrt(Math.max(0, linear * linear - 4 * (1 - K) * c * b)))
      x = Math.min(most, Math.max(least, root))
      const shiftEnthalpy = termsEnthalpy(family.perCarbonMonoxide, temperature)
      // Enthalpy left over if the front were at this temperature; falls as the temperature rises.
      const left =
        supplied - termsEnthalpy(gas.base, temperature) - x * shiftEnthalpy - charEnthalpyAt(temperature)
      if (left > 0) low = temperature
      else high = temperature
      // Slope: heat capacity, and the shift that moves with the temperature.
      const shiftSlope = (-x * (a + x) * K * logShiftSlope(temperature)) / (c - x + (b - x) + K * (a + 2 * x))
      const slope =
        termsHeat(gas.base, temperature) +
        x * termsHeat(family.perCarbonMonoxide, temperature) +
        shiftSlope * shiftEnthalpy +
        charHeatCapacityAt(temperature)
      let next = temperature + left / slope
      const within = next >= low && next <= high
      if (!within) next = (low + high) / 2
      const step = Math.abs(next - temperature)
      // The split of the shift goes with the temperature, to first order.
      x = Math.min(most, Math.max(least, x + shiftSlope * (next - temperature)))
      temperature = next
      // What a step of Newton's leaves is far below its square.
      if (step <= (within ? CLOSED : CLOSED * CLOSED) * temperature) break
    }
    if (temperature - COLDEST_FRONT < 1e-6) return TOO_LITTLE
    if (HOTTEST_FRONT - temperature < 1e-6) return TOO_MUCH

    const { mass, stoichiometricAir } = gas
    for (let i = 0; i < unburnt.terms.length; i++)
      unburnt.terms[i] = ((gas.base[i] as number) + x * (family.perCarbonMonoxide[i] as number)) / mass
    unburnt.gasConstant = gas.gasConstant
    front.airPerFuel = airPerFuel
    front.gas = mass
    front.temperature = temperature
    front.stoichiometricAir = stoichiometricAir
    front.gasHeat =
      specificEnthalpy(unburnt, REFERENCE_TEMPERATURE) +
      stoichiometricAir * specificEnthalpy(AIR, REFERENCE_TEMPERATURE) -
      (1 + stoichiometricAir) * specificEnthalpy(gas.burnt, REFERENCE_TEMPERATURE)
    front.charEnthalpy = charEnthalpyAt(temperature)
    moles.CO = x
    moles.CO2 = c - x
    moles.H2 = b - x
    moles.H2O = a + x
    moles.N2 = nitrogen + airPerFuel * AIR_MOLES.N2
    moles.Ar = airPerFuel * AIR_MOLES.Ar
    return glows
  }

  return {
    closeAgain,
    close: (airPerFuel, airTemperature) => {
      const closed = closeAgain(airPerFuel, airTemperature)
      return closed.ok ? { ok: true, front: keptFront(closed.front) } : closed
    },
  }
}
