import type { Coefficient } from './coefficient.ts'
import { flameCoefficients } from './flame/coefficients.ts'
import { potCoefficients } from './pot/coefficients.ts'
import { windCoefficients } from './weather/coefficients.ts'

/**
 * Every number of the model that is not a law of nature or a measured property of a part, in one table. The prediction
 * takes a set of these values as an argument; bands come from sampling them. `from memory` marks a default that no
 * retrieved source supports: it never fails a test as a fact.
 */
export const coefficientTable = {
  ...windCoefficients,
  ...flameCoefficients,
  ...potCoefficients,
  airPerFuelSlow: {
    median: 1.5,
    low: 1.4,
    high: 1.6,
    unit: 'kg/kg',
    meaning: 'primary air that turns one kilogram of dry fuel to gas and char, at low velocity',
    source: 'IISc group, Combust. Sci. Technol. 185 (2013): 1.5 ± 0.1 on the straight part; from memory',
  },
  airPerFuelBest: {
    median: 1.8,
    low: 1.6,
    high: 2.0,
    unit: 'kg/kg',
    meaning: 'the same at 0.09 m/s, where the gas is best',
    source: 'Mehta & Richards, Energies 10 (2017) [bib:mehta2017]',
  },
  airPerFuelMoisture: {
    median: 2.5,
    low: 1,
    high: 3.5,
    unit: 'kg/kg',
    meaning: 'more primary air a kilogram of dry fuel wants for each unit of wet-basis moisture above 10 %',
    source: 'from memory; the enthalpy balance gives 2.9 for a front that keeps its temperature',
  },
  charYield: {
    median: 0.22,
    low: 0.16,
    high: 0.25,
    unit: 'kg/kg dry',
    meaning: 'char left by the front at 10 % moisture in natural draught',
    source: 'Reed & Larson 1996: 20–25 % in natural draught [bib:reed1996]',
  },
  charYieldSizeExponent: {
    median: 0.3,
    low: 0.1,
    high: 0.45,
    unit: '1',
    meaning: 'char yield goes with the size of the pieces to this power, about 10 mm',
    source:
      'James, Yuan & Boyette, Energies 9 (2016) 283: 12.2 % at 7 mm, 21.8 % at 30 mm, which is 0.40 [bib:james2016]; less in natural draught, from memory',
  },
  charYieldWidthExponent: {
    median: -0.1,
    low: -0.25,
    high: 0,
    unit: '1',
    meaning: 'char yield goes with the width of the bed to this power, about 100 mm',
    source:
      'falls as the can gets wider, Mehta & Richards, Energies 10 (2017) [bib:mehta2017]; the number from memory',
  },
  charYieldMoistureSlope: {
    median: -1.46,
    low: -2.2,
    high: -0.7,
    unit: '1',
    meaning: 'relative change of the char yield per unit of wet-basis moisture above 10 %',
    source:
      'James, Yuan & Boyette, Energies 9 (2016) 283: 12 % at 10 % moisture, 9.9 % at 22 % [bib:james2016]',
  },
  tarYield: {
    median: 0.04,
    low: 0.01,
    high: 0.1,
    unit: 'kg/kg dry',
    meaning: 'tar in the gas',
    source: 'from memory',
  },
  methaneYield: {
    median: 0.03,
    low: 0.02,
    high: 0.045,
    unit: 'kg/kg dry',
    meaning: 'methane in the gas: 2–4 % of the dry gas by volume',
    source: 'from memory',
  },
  frontLoss: {
    median: 0.05,
    low: 0.02,
    high: 0.1,
    unit: '1',
    meaning: 'share of the heat of the dry fuel that the front and the char above it lose through the wall',
    source: 'from memory',
  },
  flameWallNusselt: {
    median: 7,
    low: 4,
    high: 12,
    unit: '1',
    meaning: 'Nusselt number from flame gas to the wall round it, on the diameter of the space',
    source: 'from memory: 3.7–4.4 for developed laminar tube flow, more near the entry of a short space',
  },
  charShrink: {
    median: 0.85,
    low: 0.75,
    high: 0.9,
    unit: '1',
    meaning: 'size of a piece of char over the size of the raw piece',
    source: 'from memory',
  },
  charVoid: {
    median: 0.55,
    low: 0.5,
    high: 0.6,
    unit: '1',
    meaning: 'void fraction of the char layer',
    source: 'from memory',
  },
  charSettle: {
    median: 0.75,
    low: 0.6,
    high: 0.95,
    unit: '1',
    meaning: 'depth of the char layer over the depth of the raw fuel it came from',
    source: 'from memory',
  },
  ignitionTime: {
    median: 90,
    low: 45,
    high: 240,
    unit: 's',
    meaning: 'time for the fire to spread over the top of the fuel after lighting',
    source: 'from memory: one to four minutes with kindling',
  },
  charGasShare: {
    median: 0.5,
    low: 0.25,
    high: 0.75,
    unit: '1',
    meaning: 'share of the carbon that glowing char gives off as carbon monoxide, before any flame over it',
    source: 'from memory: between complete burning and full reduction in a shallow bed',
  },
  charGlow: {
    median: 0.5,
    low: 0.3,
    high: 0.8,
    unit: '1',
    meaning: 'emissivity of a bed of glowing char towards what it sees, walls that shine back counted in',
    source: 'from memory: 0.9 for char, about half of it shone back in a can',
  },
  charGlowToWall: {
    median: 0.3,
    low: 0.15,
    high: 0.5,
    unit: '1',
    meaning: 'share of the char’s glow that falls on the wall beside it; the rest goes up',
    source: 'from memory',
  },
  charBurnt: {
    median: 0.85,
    low: 0.6,
    high: 0.97,
    unit: '1',
    meaning: 'share of the char that glows away before the last of it goes cold',
    source: 'from memory',
  },
  creepingHoleLoss: {
    median: 30,
    low: 27,
    high: 37.7,
    unit: '1',
    meaning: 'creeping-flow loss of a hole, ζ·Re',
    source: 'Idelchik diagram 8-5 [bib:idelchik1986]; 12π for one hole alone is exact',
  },
} as const satisfies Record<string, Coefficient>

export type CoefficientKey = keyof typeof coefficientTable
export type Coefficients = Readonly<Record<CoefficientKey, number>>

/** The medians. */
export const medianCoefficients: Coefficients = Object.fromEntries(
  Object.entries(coefficientTable).map(([key, row]) => [key, row.median]),
) as Record<CoefficientKey, number>
