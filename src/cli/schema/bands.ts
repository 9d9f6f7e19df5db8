import * as z from 'zod'
import { quantity, word } from './plain.ts'

const pull = z.strictObject({
  coefficient: word('Key in the table of coefficients.'),
  correlation: quantity(
    '1',
    'Rank correlation with the figure once those named before it are taken out; squares add up to at most 1',
  ),
})

const courses = [
  'clean',
  'rich and smoky',
  'smoulder',
  'quenched lean',
  'goes out before the floor',
  'does not burn',
] as const

/** How the stove burns most of the time it has wood gas. */
export const course = z.enum(courses)

/** The bands of some figures: what each is, and its unit. */
export const bandFields = <K extends string>(
  figures: Readonly<Record<K, readonly [unit: string, what: string]>>,
) => {
  const keys = Object.keys(figures) as K[]
  const each = <T extends z.ZodType>(of: (unit: string, what: string) => T): Record<K, T> =>
    Object.fromEntries(keys.map((key) => [key, of(figures[key][0], figures[key][1])])) as Record<K, T>
  return {
    samples: z.int().describe('How many sets of coefficients were tried.'),
    seed: z.int().describe('Seed of the sampling: the same seed gives the same bands.'),
    figures: z
      .strictObject(
        each((unit, what) =>
          z
            .strictObject({
              low: quantity(unit, '5th percentile'),
              median: quantity(unit, 'Median'),
              high: quantity(unit, '95th percentile'),
              share: quantity('1', 'Share of the sets that have such a figure'),
            })
            .nullable()
            .describe(`${what} [${unit}]; null where no set has it.`),
        ),
      )
      .describe('Percentiles over the sets.'),
    matters: z
      .strictObject(each((_, what) => z.array(pull).describe(what)))
      .describe(
        'Coefficients that move each figure most, strongest first; none where chance would explain it.',
      ),
    outcomes: z
      .partialRecord(course, z.number())
      .describe('Share of the sets that burn so [1]; those that none does are left out.'),
  }
}

/** A band over time. */
export const overTime = (unit: string, what: string) =>
  z
    .strictObject({
      time: z.array(quantity('s', 'After lighting')),
      low: z.array(quantity(unit, '5th percentile at that time')),
      high: z.array(quantity(unit, '95th percentile at that time')),
    })
    .describe(`${what}, each moment by itself.`)
