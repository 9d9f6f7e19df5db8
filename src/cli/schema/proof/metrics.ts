import * as z from 'zod'
import { cautions, quantity, word, yes } from '../plain.ts'
import { OWN, phase, unit } from './words.ts'

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
