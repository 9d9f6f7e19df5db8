import * as z from 'zod'
import { cautions, perhaps, quantity, word, yes } from './plain.ts'

/** Of a number whose unit stands beside it. */
const OWN = 'unit of the metric'

const phase = z.enum(['high power', 'simmer'])
const unit = word('Unit of the protocol; 1 for a share or a ratio.')
const provenance = z.array(z.string()).describe('What holds of every answer of this kind; sentences.')

const interval = {
  low: quantity(OWN, 'Lower end of the interval'),
  high: quantity(OWN, 'Upper end of the interval'),
}

const difference = z.strictObject({
  value: quantity(OWN, 'Estimate'),
  standardError: quantity(OWN, 'Its standard error'),
  df: quantity('1', 'Degrees of freedom'),
  t: quantity('1', 'Value over standard error'),
  p: quantity('1', 'Two-sided; over all pairs together where the method is'),
  ...interval,
  confidence: quantity('1', 'Of the interval'),
})

const measurement = z
  .strictObject({
    readings: quantity(OWN, 'From the readings of each burn; the spread shows it'),
    shared: quantity(OWN, 'From what all burns share: scale, thermometer, heating values'),
  })
  .describe('Standard uncertainty of measurement, beside the spread between burns.')

const worked = z.strictObject({
  key: word('A stable word for programs.'),
  symbol: word('As the protocol writes it.'),
  name: word('In words.'),
  unit,
  metric: yes('What a comparison looks at; the others lead there.'),
  value: quantity(OWN, 'Result'),
  u: quantity(OWN, 'Standard uncertainty'),
  formula: word('In symbols.'),
  numbers: word('The same with numbers in it.'),
  contributions: z
    .array(z.strictObject({ name: word('Reading.'), share: quantity('1', 'Of the variance of the result') }))
    .describe('Where its uncertainty comes from, the largest first.'),
  note: z.string().nullable().describe('What goes with it.'),
})

/** What `tinwright trial --json` prints. */
export const metricsSchema = z
  .strictObject({
    format: z.literal('tinwright/metrics@1'),
    trials: z.array(
      z.strictObject({
        file: word('Where it stood.'),
        name: word('Of the trial.'),
        stove: word('Name of the stove.'),
        variant: word('What tells it from its sisters.'),
        day: word('Day of the burn.'),
        phases: z.array(
          z.strictObject({
            phase,
            terms: z
              .array(
                z.strictObject({
                  key: word('A stable word for programs.'),
                  symbol: word('As the protocol writes it.'),
                  name: word('In words.'),
                  unit,
                  value: quantity(OWN, 'As read or looked up'),
                  u: quantity(OWN, 'Standard uncertainty'),
                }),
              )
              .describe('What was read or looked up.'),
            rows: z.array(worked).describe('What was worked out.'),
            missing: z
              .array(
                z.strictObject({
                  key: word('Of the metric.'),
                  name: word('In words.'),
                  reason: word('Why it cannot be had.'),
                }),
              )
              .describe('What cannot be had.'),
          }),
        ),
        turndown: worked.nullable().describe('Highest over lowest firepower; null without both phases.'),
        remarks: z.array(z.string()).describe('What to bear in mind of this burn; sentences.'),
      }),
    ),
    files: z.array(z.string()).describe('Files that were written.'),
    provenance: word('Where the formulas come from.'),
    cautions,
  })
  .describe(
    'What `tinwright trial --json` prints: metrics after the water-boiling protocol and ISO 19867-1, from memory, in their own units. No conformity is claimed, no performance tier follows.',
  )

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

/** What `tinwright burns --json` prints. */
export const orderSchema = z
  .strictObject({
    format: z.literal('tinwright/order@1'),
    seed: z.int().describe('The same seed gives the same order.'),
    variants: z.array(z.string()),
    rounds: z.int().describe('How often each is burnt.'),
    burns: z.array(
      z.strictObject({
        place: z.int().describe('From 1.'),
        round: z.int().describe('From 1; each holds every variant once.'),
        variant: word('What to burn.'),
      }),
    ),
    reach: perhaps('1', 'Difference that so many burns show, in spreads between burns of one stove'),
    advice: z.array(z.string()),
    cautions,
  })
  .describe('What `tinwright burns --json` prints: an order to burn in, drawn by lot.')

const claim = z.strictObject({
  key: word('A stable word for programs.'),
  unit,
  name: word('In words.'),
  lessWord: word('Where less was measured than predicted.'),
  moreWord: word('Where more was.'),
})
const side = z.enum(['within', 'above', 'below']).nullable()

/** What `tinwright predicted --json` prints. */
export const predictedSchema = z
  .strictObject({
    format: z.literal('tinwright/predicted@1'),
    trials: z.array(
      z.strictObject({
        trial: word('Its name.'),
        variant: word('Its variant.'),
        stove: word('Name of the stove that was predicted.'),
        noBurn: z.string().nullable().describe('Why it does not burn in the model; null where it does.'),
        endsAt: z.enum(['boil', 'flame out', 'as long']).describe('How the phase ends in the prediction.'),
        burns: perhaps('1', 'Share of the sets that burn at all'),
        figures: z.array(
          z.strictObject({
            claim,
            predicted: perhaps(OWN, 'With the median coefficients'),
            band: z
              .strictObject({
                low: quantity(OWN, '5th percentile'),
                median: quantity(OWN, 'Median'),
                high: quantity(OWN, '95th percentile'),
                share: quantity('1', 'Share of the sets that have such a figure'),
              })
              .nullable(),
            measured: perhaps(OWN, 'In the trial'),
            u: perhaps(OWN, 'Standard uncertainty of measurement'),
            residual: perhaps(OWN, 'Measured less predicted'),
            side: side.describe('Where it lies against the band, uncertainty of measurement counted in.'),
          }),
        ),
        cautions: z.array(z.string()).describe('What was assumed; sentences.'),
      }),
    ),
    claims: z.array(
      z.strictObject({
        claim,
        residuals: z.array(
          z.strictObject({
            index: z.int().describe('Place in the list of trials, from 0.'),
            trial: word('Its name.'),
            variant: word('Its variant.'),
            measured: quantity(OWN, 'In the trial'),
            predicted: quantity(OWN, 'With the median coefficients'),
            residual: quantity(OWN, 'Measured less predicted'),
            ratio: quantity('1', 'Measured over predicted'),
            side,
          }),
        ),
        outside: z.int().describe('Burns outside their band.'),
        above: z.int().describe('Of them above.'),
        below: z.int().describe('Of them below.'),
        banded: z.int().describe('Burns that have a band.'),
        chance: perhaps('1', 'Of so many outside or more, were every band right'),
        bias: difference
          .nullable()
          .describe('Mean of the natural logarithm of measured over predicted; its unit is 1.'),
        over: z.enum(['stoves', 'burns']).describe('What the bias is a mean over.'),
        verdict: z.enum(['wrong', 'too sure', 'leans', 'holds', 'few']),
        sentence: word('What a maker should take from it.'),
      }),
    ),
    withoutHighPower: z.array(z.string()).describe('Trials without a phase at full power.'),
    provenance,
    cautions,
  })
  .describe('What `tinwright predicted --json` prints: trials beside their predicted burns.')
