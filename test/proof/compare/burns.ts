import { orThrow } from '#basis/problem.ts'
import type { Trial } from '#proof/trial/model.ts'
import { readTrialValue } from '#proof/trial/read.ts'
import type { TrialFile } from '#proof/trial/schema.ts'
import type { JsonValue } from '#stove/document/json.ts'

/** One invented burn, told by what a comparison looks at. */
export interface BurnOf {
  readonly variant: string
  /** Minutes from pot on to the boil. */
  readonly boil: number
  readonly day?: string
  readonly place?: number
  readonly batch?: string
  readonly char?: number | null
  readonly change?: (file: TrialFile) => void
}

const fileOf = (
  { variant, boil, day = '2031-05-17', place, batch, char = 25, change }: BurnOf,
  n = 0,
): TrialFile => {
  const file: TrialFile = {
    format: 'tinwright/trial@1',
    name: `burn ${n + 1} of ${variant}`,
    about: 'Invented for a test.',
    day,
    ...(place === undefined ? {} : { place }),
    stove: { name: 'Test stove', variant },
    fuel: {
      kind: 'wood-chips',
      ...(batch === undefined ? {} : { batch }),
      moisture: { meter: '10 %' },
      heatingValue: { value: '18.5 MJ/kg', within: '0.5 MJ/kg' },
    },
    weather: { temperature: '15 °C', boilingPoint: '99 °C' },
    pot: { weight: '200 g', diameter: '140 mm', lid: false },
    start: 'cold',
    instruments: {
      scale: { resolution: '1 g', accuracy: '0.5 %' },
      thermometer: { resolution: '0.1 K', accuracy: '0.5 K' },
      clock: { resolution: '1 s' },
      moistureMeter: { accuracy: '2 %' },
    },
    phases: [
      {
        phase: 'high power',
        from: { at: '2 min', fuel: '120 g', pot: '700 g', water: '15 °C' },
        to: { at: '20 min', fuel: '0 g', pot: '650 g', water: '99 °C' },
        ...(char === null ? {} : { char: `${char} g` }),
        boil: `${2 + boil} min`,
      },
    ],
  }
  change?.(file)
  return file
}

const trialOf = (burn: BurnOf, n = 0): Trial =>
  orThrow(readTrialValue(JSON.parse(JSON.stringify(fileOf(burn, n))) as JsonValue)).trial

export const trialsOf = (burns: readonly BurnOf[]): readonly Trial[] => burns.map(trialOf)
