import * as z from 'zod'
import { quantity, word } from '../plain.ts'

/** Of a number whose unit stands beside it. */
export const OWN = 'unit of the metric'

export const phase = z.enum(['high power', 'simmer'])

export const unit = word('Unit of the protocol; 1 for a share or a ratio.')

export const provenance = z.array(z.string()).describe('What holds of every answer of this kind; sentences.')

export const interval = {
  low: quantity(OWN, 'Lower end of the interval'),
  high: quantity(OWN, 'Upper end of the interval'),
}

export const difference = z.strictObject({
  value: quantity(OWN, 'Estimate'),
  standardError: quantity(OWN, 'Its standard error'),
  df: quantity('1', 'Degrees of freedom'),
  t: quantity('1', 'Value over standard error'),
  p: quantity('1', 'Two-sided; over all pairs together where the method is'),
  ...interval,
  confidence: quantity('1', 'Of the interval'),
})

export const measurement = z
  .strictObject({
    readings: quantity(OWN, 'From the readings of each burn; the spread shows it'),
    shared: quantity(OWN, 'From what all burns share: scale, thermometer, heating values'),
  })
  .describe('Standard uncertainty of measurement, beside the spread between burns.')
