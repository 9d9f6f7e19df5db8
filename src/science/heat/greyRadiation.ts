import { STEFAN_BOLTZMANN_CONSTANT } from '#basis/constants.ts'

/** What a black surface gives off, σT⁴ [W/m²]. */
export const blackEmission = (temperature: number): number => STEFAN_BOLTZMANN_CONSTANT * temperature ** 4

/** Net radiation of a grey surface that sees only wide surroundings of one temperature [W/m²]. */
export const greyFlux = (emissivity: number, surface: number, surroundings: number): number =>
  emissivity * (blackEmission(surface) - blackEmission(surroundings))

/**
 * Effective area between two grey surfaces that see each other and nothing else, or one of which sees only
 * the other [m²]: heat = area·σ(T₁⁴ − T₂⁴). 1/[(1 − ε₁)/(ε₁A₁) + 1/(A₁F₁₂) + (1 − ε₂)/(ε₂A₂)], any text
 * (radiosity network); each surface diffuse, grey and of one temperature.
 */
export const exchangeArea = (
  area1: number,
  emissivity1: number,
  area2: number,
  emissivity2: number,
  viewFactor12: number,
): number => {
  if (viewFactor12 === 0) return 0
  return (
    1 /
    ((1 - emissivity1) / (emissivity1 * area1) +
      1 / (area1 * viewFactor12) +
      (1 - emissivity2) / (emissivity2 * area2))
  )
}

/**
 * Net radiation from the inner to the outer of two long concentric cylinders, on the inner's area [W/m²]; any
 * text.
 */
export const concentricFlux = (
  inner: number,
  outer: number,
  innerEmissivity: number,
  outerEmissivity: number,
  radiusRatio: number,
): number =>
  (blackEmission(inner) - blackEmission(outer)) /
  (1 / innerEmissivity + radiusRatio * (1 / outerEmissivity - 1))

/**
 * The same heat as a coefficient on T₁ − T₂, for an area that exchanges `factor`·σ(T₁⁴ − T₂⁴) a square metre
 * [W/(m² K)].
 */
export const radiationCoefficient = (factor: number, t1: number, t2: number): number =>
  factor * STEFAN_BOLTZMANN_CONSTANT * (t1 * t1 + t2 * t2) * (t1 + t2)
