import * as z from 'zod'
import { cautions, perhaps, quantity, word } from '../plain.ts'
import { difference, OWN, provenance, unit } from './words.ts'

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
