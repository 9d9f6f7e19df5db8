import { REFERENCE_TEMPERATURE, STEFAN_BOLTZMANN_CONSTANT } from '#basis/constants.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { higherHeatingValue, lowerHeatingValue } from '#science/fuel/composition.ts'
import { AIR, AIR_MOLES, type Blend, blendOf, specificEnthalpy, specificHeat } from '#science/gas/blend.ts'
import { ATOMIC_MASS, graphiteSensibleEnthalpy } from '#science/gas/thermo.ts'
import { CHAR_ANALYSIS, type Front, type FrontOutcome } from './front.ts'
import type { FrontSource } from './source.ts'
import { formationEnthalpy } from './tar.ts'

/**
 * Glowing char, when no raw fuel is left. All oxygen that comes up is used; a share of the carbon leaves as carbon
 * monoxide and burns over the bed if it finds air. "Fuel" is the char's own organic matter, per kilogram of it; the ash
 * stays. The bed's top glows: the less air, the more of the heat leaves as radiation and the cooler it runs.
 */
export const charSource = (ambient: number, airDensity: number, coefficients: Coefficients): FrontSource => {
  const { C, H, O, N } = CHAR_ANALYSIS
  const carbon = C / ATOMIC_MASS.C
  const hydrogen = H / ATOMIC_MASS.H
  const monoxide = coefficients.charGasShare * carbon
  const dioxide = carbon - monoxide
  // Oxygen atoms it takes from the air; hydrogen burns to water.
  const oxygen = monoxide + 2 * dioxide + hydrogen / 2 - O / ATOMIC_MASS.O
  const airPerFuel = oxygen / 2 / AIR_MOLES.O2
  const moles = {
    CO: monoxide,
    CO2: dioxide + airPerFuel * AIR_MOLES.CO2,
    H2: 0,
    H2O: hydrogen / 2,
    CH4: 0,
    N2: N / ATOMIC_MASS.N / 2 + airPerFuel * AIR_MOLES.N2,
    Ar: airPerFuel * AIR_MOLES.Ar,
    tar: 0,
  }
  const mass = 1 + airPerFuel
  const perKilogram = (blend: Blend, amount: number): Blend => ({
    gasConstant: blend.gasConstant / amount,
    terms: blend.terms.map((term) => term / amount),
  })
  const unburnt = perKilogram(blendOf(moles), mass)
  const airNeed = monoxide / 2 / AIR_MOLES.O2
  const burnt = perKilogram(
    blendOf({
      CO2: moles.CO2 + moles.CO + airNeed * AIR_MOLES.CO2,
      H2O: moles.H2O,
      N2: moles.N2 + airNeed * AIR_MOLES.N2,
      Ar: moles.Ar + airNeed * AIR_MOLES.Ar,
    }),
    mass + airNeed,
  )
  const stoichiometricAir = airNeed / mass
  const higher = higherHeatingValue(CHAR_ANALYSIS)
  const gasHeat =
    specificEnthalpy(unburnt, REFERENCE_TEMPERATURE) +
    stoichiometricAir * specificEnthalpy(AIR, REFERENCE_TEMPERATURE) -
    (1 + stoichiometricAir) * specificEnthalpy(burnt, REFERENCE_TEMPERATURE)
  const lower = lowerHeatingValue(higher, H)
  const fuelEnthalpy = formationEnthalpy(higher, C, H) + graphiteSensibleEnthalpy(ambient)

  const radiates = coefficients.charGlow * STEFAN_BOLTZMANN_CONSTANT
  const ambientFourth = ambient ** 4
  const glowAt = (temperature: number): number => {
    const square = temperature * temperature
    return radiates * (square * square - ambientFourth)
  }

  /** Where what the air and the char bring is what gas and glow take away, at a rate of burning [K]. */
  const temperatureFor = (supplied: number, rate: number, guess: number): number => {
    let low = COLDEST_SEARCHED
    let high = HOTTEST_SEARCHED
    let temperature = guess
    for (let i = 0; i < 60; i++) {
      const left = supplied - mass * specificEnthalpy(unburnt, temperature) - glowAt(temperature) / rate
      if (left > 0) low = temperature
      else high = temperature
      const slope =
        mass * specificHeat(unburnt, temperature) +
        (4 * radiates * temperature * temperature * temperature) / rate
      let next = temperature + left / slope
      if (!(next >= low && next <= high)) next = (low + high) / 2
      const step = Math.abs(next - temperature)
      temperature = next
      if (step < 1e-12 * temperature) break
    }
    return temperature
  }
  let last = USUAL_GLOW

  const close = (velocity: number, airTemperature: number): FrontOutcome => {
    const supplied = fuelEnthalpy + airPerFuel * specificEnthalpy(AIR, airTemperature)
    /** Char burnt on a square metre of bed [kg/(m² s)]. */
    const rate = Math.max((velocity * airDensity) / airPerFuel, SLOWEST)
    const temperature = temperatureFor(supplied, rate, last)
    last = temperature
    if (temperature < COLDEST_GLOW) return { ok: false, reason: 'too wet or too little air to glow' }
    const radiated = glowAt(temperature) / rate
    const loss = coefficients.charGlowToWall * radiated
    const front: Front = {
      airPerFuel,
      gas: mass,
      char: 0,
      temperature,
      unburnt,
      burnt,
      stoichiometricAir,
      gasHeat,
      charHeat: lower,
      loss,
      glow: radiated - loss,
      charEnthalpy: 0,
      fuelEnthalpy,
      moles,
    }
    return { ok: true, front }
  }
  return { close }
}

/** Slowest burning that is worked out: below it the char is as good as out [kg/(m² s)]. */
const SLOWEST = 1e-5
/** Where the temperature is looked for, and from where first [K]. */
const COLDEST_SEARCHED = 300
const HOTTEST_SEARCHED = 2800
const USUAL_GLOW = 1000
/** Char below this does not keep alight; from memory [K]. */
const COLDEST_GLOW = 650
