import { fromInches, fromMillimetres } from '#basis/units.ts'
import type { Bit } from '#stove/model.ts'
import { inchName, metricName } from './name.ts'

const SIXTY_FOURTHS = 64

const inchBit = (sixtyFourths: number, suffix = ''): Bit => {
  const inches = sixtyFourths / SIXTY_FOURTHS
  return { name: `${inchName(inches)}${suffix}`, diameter: fromInches(inches) }
}

const metricBit = (hundredths: number, suffix = ''): Bit => ({
  name: `${metricName(hundredths / 100)}${suffix}`,
  diameter: fromMillimetres(hundredths / 100),
})

/** From first to last by step, both ends in. */
const run = (first: number, last: number, step: number): readonly number[] =>
  Array.from({ length: Math.floor((last - first) / step) + 1 }, (_, index) => first + index * step)

/** Fractional bits, 1/64 in to 1 in by 1/64 [m]. [bib:asmeb9411] */
export const FRACTIONAL_BITS: readonly Bit[] = run(1, SIXTY_FOURTHS, 1).map((size) => inchBit(size))

/** Metric bits a dealer stocks: 0.2 to 3 mm by 0.05, to 14 mm by 0.1, to 32 mm by 0.25; from memory [m]. */
export const METRIC_BITS: readonly Bit[] = [
  ...run(20, 300, 5),
  ...run(310, 1400, 10),
  ...run(1425, 3200, 25),
].map((size) => metricBit(size))

/** The hand sets most shops sell: 1 to 10 mm and 1 to 13 mm by 0.5; from memory [m]. */
export const METRIC_HAND_SETS: readonly (readonly Bit[])[] = [1000, 1300].map((last) =>
  run(100, last, 50).map((size) => metricBit(size)),
)

/** A conical bit with steps: each is a size it drills in thin tin. */
export interface StepDrill {
  readonly name: string
  readonly steps: readonly Bit[]
}

const STEP = ' step'

const inchStepDrill = (first: number, last: number, step: number): StepDrill => ({
  name: `step drill ${inchName(first / SIXTY_FOURTHS)} to ${inchName(last / SIXTY_FOURTHS)}`,
  steps: run(first, last, step).map((size) => inchBit(size, STEP)),
})

const metricStepDrill = (first: number, last: number, step: number): StepDrill => ({
  name: `step drill ${first} to ${last} mm by ${step}`,
  steps: run(first, last, step).map((size) => metricBit(size * 100, STEP)),
})

/** Step drills as commonly sold, inch ones first; from memory. */
export const STEP_DRILLS: readonly StepDrill[] = [
  inchStepDrill(8, 32, 2),
  inchStepDrill(12, 32, 4),
  inchStepDrill(16, 48, 4),
  inchStepDrill(16, 88, 8),
  inchStepDrill(12, 56, 4),
  metricStepDrill(4, 12, 1),
  metricStepDrill(4, 12, 2),
  metricStepDrill(4, 20, 2),
  metricStepDrill(4, 32, 2),
  metricStepDrill(6, 30, 2),
]
