import type { ValidRange } from '#science/heat/range.ts'

/** What J the mixing tests were made with, from memory of Holdeman's summary [bib:holdeman1993]. */
export const JET_RANGE: ValidRange = { of: 'mixing of jets in a can', quantity: 'J', from: 5, to: 100 }

/**
 * Above about this the jets are turbulent, as those of the tests were; a can's are often 100–500. From
 * memory.
 */
export const JET_REYNOLDS_RANGE: ValidRange = {
  of: 'turbulent jets',
  quantity: 'Re_j',
  from: 2000,
  to: Number.POSITIVE_INFINITY,
}

/**
 * Momentum flux of the jets over that of the gas they enter, ρ_j u_j²/(ρ_m u_m²) [1]. Infinite in gas that
 * stands still.
 */
export const momentumRatio = (
  jetDensity: number,
  jetSpeed: number,
  gasDensity: number,
  gasSpeed: number,
): number => (jetDensity * jetSpeed ** 2) / (gasDensity * gasSpeed ** 2)

/**
 * How far jets reach into a crossing stream in a can [m]. y = 1.25 d √J ṁ_m/(ṁ_m + ṁ_j): Lefebvre's form for
 * multiple jets, from memory; `constant` is `jetPenetration` of the coefficient table. `JET_RANGE`.
 */
export const jetPenetration = (
  diameter: number,
  ratio: number,
  gasFlow: number,
  jetFlow: number,
  constant: number,
): number => (constant * diameter * Math.sqrt(ratio) * gasFlow) / (gasFlow + jetFlow)

/**
 * Number of holes in one row round a can that mixes best [1], a real number. n = π √(2J)/C, C = 2.5:
 * Holdeman, Prog. Energy Combust. Sci. 19 (1993) 31 [bib:holdeman1993], form from memory; his summary says
 * that the best spacing goes as 1/√J whatever the hole. Fewer holes over-reach, more stay at the wall.
 * `constant` is `jetSpacing` of the coefficient table.
 */
export const bestJetCount = (ratio: number, constant: number): number =>
  (Math.PI * Math.sqrt(2 * ratio)) / constant

/** One row of secondary holes. */
export interface JetRow {
  readonly count: number
  /** Of a round hole, or of a circle of the same area [m]. */
  readonly diameter: number
  /** Vena contracta over hole [1]; the speed of the jet is that of the contracted stream. */
  readonly contraction: number
  /** Of the whole row, inward [kg/s]. */
  readonly flow: number
  /** Of its air [kg/m³], [Pa s]. */
  readonly density: number
  readonly viscosity: number
}

/** The gas that the jets enter. */
export interface CrossStream {
  /** [kg/s] */
  readonly flow: number
  /** [kg/m³] */
  readonly density: number
  /** Of the can, inside [m]. */
  readonly diameter: number
}

export interface JetMixing {
  /** [m/s] */
  readonly jetSpeed: number
  readonly gasSpeed: number
  readonly momentumRatio: number
  /** [m] */
  readonly penetration: number
  /** Penetration over the can's radius: at 1 the jets meet in the middle [1]. */
  readonly reach: number
  readonly meet: boolean
  readonly bestCount: number
  readonly jetReynolds: number
  /** What lies outside the tests that the forms come from. */
  readonly outside: readonly ValidRange[]
}

export interface JetCoefficients {
  readonly jetPenetration: number
  readonly jetSpacing: number
}

/**
 * How a row of secondary holes mixes into the wood gas. Null where no gas moves, or the row blows outward or
 * not at all.
 */
export const jetMixing = (
  row: JetRow,
  stream: CrossStream,
  coefficients: JetCoefficients,
): JetMixing | null => {
  if (!(row.flow > 0) || !(stream.flow > 0)) return null
  const holeArea = (Math.PI / 4) * row.diameter ** 2
  const jetSpeed = row.flow / (row.density * row.count * holeArea * row.contraction)
  const gasSpeed = stream.flow / (stream.density * (Math.PI / 4) * stream.diameter ** 2)
  const ratio = momentumRatio(row.density, jetSpeed, stream.density, gasSpeed)
  const penetration = jetPenetration(row.diameter, ratio, stream.flow, row.flow, coefficients.jetPenetration)
  const reach = penetration / (stream.diameter / 2)
  const jetDiameter = row.diameter * Math.sqrt(row.contraction)
  const jetReynolds = (row.density * jetSpeed * jetDiameter) / row.viscosity
  return {
    jetSpeed,
    gasSpeed,
    momentumRatio: ratio,
    penetration,
    reach,
    meet: reach >= 1,
    bestCount: bestJetCount(ratio, coefficients.jetSpacing),
    jetReynolds,
    outside: [
      ...(ratio >= JET_RANGE.from && ratio <= JET_RANGE.to ? [] : [JET_RANGE]),
      ...(jetReynolds >= JET_REYNOLDS_RANGE.from ? [] : [JET_REYNOLDS_RANGE]),
    ],
  }
}
