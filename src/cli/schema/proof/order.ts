import * as z from 'zod'
import { cautions, perhaps, word } from '../plain.ts'

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
