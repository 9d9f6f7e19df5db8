import type { StoveFile } from '#stove/document/schema.ts'

/** What is true of a variant in the story: factors on the stove as planned. Invented; nothing was burnt. */
export interface InventedTruth {
  /** Heat into the water. */
  readonly power: number
  /** How long the flame lasts. */
  readonly lasts: number
}

export interface SeriesVariant {
  readonly letter: string
  /** As the trials call it. */
  readonly variant: string
  /** What was changed, for the stove file. */
  readonly changed: string
  /** What its makers hope for, in the story. */
  readonly why: string
  readonly change: (stove: Changeable) => void
  readonly truth: InventedTruth
}

type Changeable = StoveFile & {
  readonly parts: Readonly<Record<string, { openings?: Record<string, never> }>>
}

/** Something deep in a stove file, to be changed. */
const at = (stove: Changeable, ...path: readonly string[]): Record<string, unknown> =>
  path.reduce<unknown>((inside, key) => {
    const next = (inside as Record<string, unknown>)[key]
    if (next === undefined) throw new Error(`No ${path.join('.')} in the stove of the series`)
    return next
  }, stove.parts) as Record<string, unknown>

/** Six variants of Heron. One helps, one harms, four change nothing: that is the story, and the trials do not say so. */
export const SERIES_VARIANTS: readonly SeriesVariant[] = [
  {
    letter: 'A',
    variant: 'A, as planned',
    changed: 'Nothing: the stove of examples/heron.stove.json.',
    why: 'Built as drawn, to hold the others against.',
    change: () => undefined,
    truth: { power: 1, lasts: 1 },
  },
  {
    letter: 'B',
    variant: 'B, wider bore',
    changed: 'Bore of the concentrator 54 mm (2 1/8 in) instead of 46 mm (1 13/16 in).',
    why: 'A wider way for the gas: more fire under the pot, if it still mixes.',
    change: (stove) => {
      at(stove, 'concentrator', 'openings', 'bore').diameter = '54 mm'
    },
    truth: { power: 1.24, lasts: 0.93 },
  },
  {
    letter: 'C',
    variant: 'C, taller riser',
    changed: 'Riser cut to 142 mm (5 19/32 in) instead of 135 mm (5 5/16 in).',
    why: 'A taller riser draws harder.',
    change: (stove) => {
      at(stove, 'riser', 'trim').height = '142 mm ± 1 mm'
    },
    truth: { power: 1, lasts: 1 },
  },
  {
    letter: 'D',
    variant: 'D, narrow windows',
    changed: 'Windows of the riser 14 mm (9/16 in) wide instead of 20 mm (25/32 in).',
    why: 'Narrow windows keep the wind out and the heat in, or so we hope.',
    change: (stove) => {
      at(stove, 'riser', 'openings', 'windows', 'hole', 'window').width = '14 mm'
    },
    truth: { power: 0.8, lasts: 1.07 },
  },
  {
    letter: 'E',
    variant: 'E, 24 air holes',
    changed: 'Ring of 24 secondary holes instead of 20.',
    why: 'More air for the flame, where it was yellow.',
    change: (stove) => {
      at(stove, 'fuel can', 'openings', 'ring').count = 24
    },
    truth: { power: 1, lasts: 1 },
  },
  {
    letter: 'F',
    variant: 'F, 12 intake holes',
    changed: 'Intake row of 12 holes, one left out, instead of 10.',
    why: 'More air from below makes gas faster.',
    change: (stove) => {
      at(stove, 'fuel can', 'openings', 'intake').count = 12
    },
    truth: { power: 1, lasts: 1 },
  },
]

export const variantFile = ({ letter }: SeriesVariant): string => `heron-${letter.toLowerCase()}.stove.json`

/** The stove file of a variant, made from the plan. */
export const variantStove = (
  plan: StoveFile,
  { letter, variant, changed, change }: SeriesVariant,
): StoveFile => {
  const stove = structuredClone(plan) as Changeable
  change(stove)
  return {
    ...stove,
    $schema: '../../schema/stove.schema.json',
    name: `Heron ${variant}`,
    about: `Variant ${letter} of the series. ${changed} Invented demo data.`,
  }
}
