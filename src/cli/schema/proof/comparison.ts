import * as z from 'zod'
import { cautions, perhaps, quantity, word, yes } from '../plain.ts'
import { difference, interval, measurement, OWN, phase, provenance, unit } from './words.ts'

const verdict = z.enum(['better', 'worse', 'differs', 'alike', 'open', 'unknown'])

const point = z.strictObject({
  index: z.int().describe('Place in the list of trials, from 0.'),
  trial: word('Its name.'),
  variant: word('Its variant.'),
  day: word('Day of the burn.'),
  block: word('What it shares with other burns.'),
  batch: z.string().nullable().describe('Fuel batch; null where none was noted.'),
  placeInDay: z.int().nullable().describe('Which burn of its day, from 1; null where that is not known.'),
  value: quantity(OWN, 'As measured'),
  u: quantity(OWN, 'Standard uncertainty of measurement'),
  mishap: yes('Something went wrong.'),
})

const metric = z.strictObject({
  id: word('Phase and key.'),
  key: word('A stable word for programs.'),
  phase: phase.nullable().describe('Null for what belongs to both.'),
  name: word('In words.'),
  symbol: word('As the protocol writes it.'),
  unit,
  wanted: z.enum(['less', 'more', 'neither']).describe('What a maker wants of it.'),
})

const left = z.strictObject({
  index: z.int().describe('Place in the list of trials, from 0.'),
  trial: word('Its name.'),
  reason: word('Why.'),
})

const contrast = z.strictObject({
  variant: word('This one.'),
  against: word('Less this one.'),
  difference: difference.nullable().describe('Null where one has too few burns.'),
  relative: perhaps('1', 'Share of the mean of `against`'),
  verdict,
  sentence: word('What a maker should take from it.'),
  moreSentence: z
    .string()
    .nullable()
    .describe('How many more burns would settle it; null where it is settled.'),
  more: z
    .strictObject({
      forThisDifference: z
        .int()
        .nullable()
        .describe('Burns of each until a true difference of this size shows.'),
      forMargin: z.int().nullable().describe('Burns of each until it is known to within the margin.'),
      now: z.int().describe('Burns of the one that has fewer.'),
    })
    .nullable()
    .describe('Null where nothing can be planned on.'),
  measurement,
})

/** What `tinwright compare --json` prints. */
export const comparisonSchema = z
  .strictObject({
    format: z.literal('tinwright/comparison@1'),
    reference: word('Variant that the others are held against.'),
    variants: z.array(z.strictObject({ variant: word('Name.'), burns: z.int().describe('How many.') })),
    question: z.string().nullable().describe('Id of the metric it is about.'),
    confidence: quantity('1', 'Of the intervals'),
    metrics: z.array(
      z.strictObject({
        metric,
        variants: z.array(
          z.strictObject({
            variant: word('Name.'),
            points: z.array(point).describe('Every burn.'),
            count: z.int().describe('How many.'),
            mean: quantity(OWN, 'Of the burns'),
            sd: perhaps(OWN, 'Standard deviation between burns'),
            variation: perhaps('1', 'Standard deviation over mean'),
            interval: z
              .strictObject(interval)
              .nullable()
              .describe('Of the mean, each variant by itself; null for one burn.'),
            measurement,
          }),
        ),
        method: z.strictObject({
          kind: z.enum(['welch', 'tukey', 'games-howell', 'dunnett-t3', 'blocked', 'none']),
          name: word('In a heading.'),
          reason: word('Why this one.'),
          blockedBy: z.array(z.enum(['block', 'batch'])).describe('What was taken out.'),
          unlikeSpreads: perhaps('1', 'Bartlett’s p; it decides nothing'),
        }),
        margin: quantity(OWN, 'Smallest difference that matters'),
        contrasts: z.array(contrast).describe('Every two variants.'),
        drift: z
          .strictObject({
            over: z.enum(['day', 'series']),
            slope: difference.describe('A burn.'),
            found: yes('It shows.'),
            sentence: z.string().nullable().describe('What it does; null where none shows.'),
          })
          .nullable()
          .describe('With the order of burns; null where that cannot be told.'),
        missing: z.array(left).describe('Burns without it.'),
        notes: z.array(z.string()).describe('What a reader should know; sentences.'),
      }),
    ),
    verdicts: z.array(
      z.strictObject({
        variant: word('Name.'),
        burns: z.int().describe('How many.'),
        verdict,
        better: z.array(z.string()).describe('Other metrics in which it shows as better.'),
        worse: z.array(z.string()).describe('Other metrics in which it shows as worse.'),
        sentence: word('What a maker should take from it.'),
      }),
    ),
    warnings: z.array(
      z.strictObject({
        code: word('A stable word for programs.'),
        sentence: word('What may mislead.'),
        fix: word('What to do about it.'),
      }),
    ),
    leftOut: z.array(left),
    provenance,
    cautions,
  })
  .describe('What `tinwright compare --json` prints: variants compared by their burns, metric by metric.')
