import type { GasSpecies } from './thermo.ts'

/**
 * Viscosity and thermal conductivity of the single gases at low density, 273–2000 K. The coefficients were read in public
 * copies of the sources' tables, several that agree for each; the tests hold them against an independent program.
 */
export interface PureTransport {
  /** [Pa s] */
  readonly viscosity: (temperature: number) => number
  /** [W/(m K)] */
  readonly conductivity: (temperature: number) => number
}

/**
 * Nitrogen, oxygen, argon: the dilute-gas terms of Lemmon & Jacobsen [bib:lemmon2004], as for air in `transport.ts`.
 */
const lemmonJacobsen = (
  /** [g/mol] */
  molarMass: number,
  /** Collision diameter [nm]. */
  diameter: number,
  /** Energy parameter [K]. */
  energy: number,
  /** [K] */
  critical: number,
  /** N1; N2, t2; N3, t3. */
  [n1, n2, t2, n3, t3]: readonly [number, number, number, number, number],
): PureTransport => {
  const prefactor = (0.0266958e-6 * Math.sqrt(molarMass)) / (diameter * diameter)
  const viscosity = (temperature: number): number => {
    const x = Math.log(temperature / energy)
    const logOmega = 0.431 + x * (-0.4623 + x * (0.08406 + x * (0.005341 + x * -0.00331)))
    return prefactor * Math.sqrt(temperature) * Math.exp(-logOmega)
  }
  return {
    viscosity,
    conductivity: (temperature) => {
      const tau = critical / temperature
      return 1e-3 * (n1 * viscosity(temperature) * 1e6 + n2 * tau ** t2 + n3 * tau ** t3)
    },
  }
}

/** √T̄ over a polynomial in 1/T̄: the form of the dilute-gas terms of water and of carbon dioxide. */
const overPolynomial =
  (unit: number, critical: number, terms: readonly number[]) =>
  (temperature: number): number => {
    const inverse = critical / temperature
    return unit / (Math.sqrt(inverse) * terms.reduceRight((sum, term) => sum * inverse + term, 0))
  }

/** A, B, C and D of ln = A ln T + B/T + C/T² + D. */
type FourTerms = readonly [number, number, number, number]

/**
 * The transport library of NASA's equilibrium program [bib:svehla1995]: two ranges that meet at 1000 K, in micropoise and
 * microwatt/(cm K).
 */
const library =
  (unit: number, low: FourTerms, high: FourTerms) =>
  (temperature: number): number => {
    const [a, b, c, d] = temperature <= 1000 ? low : high
    return unit * Math.exp(a * Math.log(temperature) + (b + c / temperature) / temperature + d)
  }
const MICROPOISE = 1e-7
const MICROWATT_PER_CENTIMETRE = 1e-4

export const pureTransport = {
  N2: lemmonJacobsen(28.01348, 0.3656, 98.94, 126.192, [1.511, 2.117, -1, -3.332, -0.7]),
  O2: lemmonJacobsen(31.9988, 0.3428, 118.5, 154.581, [1.036, 6.283, -0.9, -4.262, -0.6]),
  Ar: lemmonJacobsen(39.948, 0.335, 143.2, 150.687, [0.8158, -0.432, -0.77, 0, -1]),
  CO2: {
    viscosity: library(
      MICROPOISE,
      [0.51137258, -229.51321, 13710.678, 2.7075538],
      [0.63978285, -42.637076, -15522.605, 1.6628843],
    ),
    // [bib:huber2016, eq. 3 and table 3], made for 220–1100 K; the library is 4 % below it at 1000 K.
    conductivity: overPolynomial(1e-3, 304.1282, [1.51874307e-2, 2.8067404e-2, 2.2856419e-2, -7.4162421e-3]),
  },
  // The library gives carbon monoxide the terms of nitrogen, whose mass and cross-section it shares.
  CO: {
    viscosity: library(
      MICROPOISE,
      [0.62526577, -31.779652, -1640.7983, 1.7454992],
      [0.87395209, 561.52222, -173948.09, -0.39335958],
    ),
    conductivity: library(
      MICROWATT_PER_CENTIMETRE,
      [0.85439436, 105.73224, -12347.848, 0.47793128],
      [0.88407146, 133.57293, -11429.64, 0.24417019],
    ),
  },
  H2O: {
    // [bib:huber2009, eq. 11 and table 2], the viscosity of IAPWS; made to 1173 K, sound beyond.
    viscosity: overPolynomial(1e-4, 647.096, [1.67752, 2.20462, 0.6366564, -0.241605]),
    // The conductivity of IAPWS, release R15-11, eq. 16 and table 1 [bib:huber2012].
    conductivity: overPolynomial(
      1e-3,
      647.096,
      [2.443221e-3, 1.323095e-2, 6.770357e-3, -3.454586e-3, 4.096266e-4],
    ),
  },
  H2: {
    viscosity: library(
      MICROPOISE,
      [0.74553182, 43.555109, -3257.934, 0.13556243],
      [0.96730605, 679.31897, -210251.79, -1.8251697],
    ),
    conductivity: library(
      MICROWATT_PER_CENTIMETRE,
      [1.0059461, 279.51262, -29792.018, 1.1996252],
      [1.058245, 248.75372, 11736.907, 0.82758695],
    ),
  },
  CH4: {
    viscosity: library(
      MICROPOISE,
      [0.57643622, -93.704079, 869.92395, 1.7333347],
      [0.66400044, 10.860843, -7630.7841, 1.0323984],
    ),
    conductivity: library(
      MICROWATT_PER_CENTIMETRE,
      [1.0238177, -310.92375, 32944.309, 0.67787437],
      [0.77485028, -400.89627, -46551.082, 2.5671481],
    ),
  },
} as const satisfies Record<GasSpecies, PureTransport>
