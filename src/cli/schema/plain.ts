import * as z from 'zod'

/** A number with what it means; its unit closes the description. */
export const quantity = (unit: string, description: string) => z.number().describe(`${description} [${unit}]`)

/** The same where there may be none. */
export const perhaps = (unit: string, description: string) =>
  z.number().nullable().describe(`${description} [${unit}]`)

export const word = (description: string) => z.string().describe(description)
export const yes = (description: string) => z.boolean().describe(description)

export const findings = z
  .array(
    z.strictObject({
      severity: z.literal('stop'),
      code: word('A stable word for programs.'),
      part: word('The part it is about.'),
      opening: z.string().nullable().describe('The opening it is about; null for the whole part.'),
      sentence: word('What is wrong.'),
      fix: word('What to do instead.'),
    }),
  )
  .describe('What keeps this stove from being made, or makes it dangerous; the answer is of the drawing.')

export const cautions = z.array(z.string()).describe('Cautions that go with everything built or burnt.')

export const noBurn = z
  .strictObject({
    code: word('A stable word for programs.'),
    sentence: word('Why it does not burn.'),
  })
  .describe('Why there is no burn to speak of.')

export const site = z
  .strictObject({
    temperature: quantity('K', 'Air temperature'),
    pressure: quantity('Pa', 'Air pressure where the stove stands'),
    wind: z.strictObject({
      speed: quantity('m/s', 'Wind at the stove’s own height'),
      from: quantity('deg', 'Where it comes from, clockwise from the stove’s front mark'),
      screened: z
        .boolean()
        .optional()
        .describe('A screen stands close by on that side; the speed is that before it.'),
    }),
  })
  .describe('Where it burns.')

export const fuel = z
  .strictObject({
    key: word('Kind of fuel, as in the table of fuels.'),
    label: word('The fuel in words.'),
    moisture: quantity('1', 'Water as a share of the weight as fired'),
    charge: quantity('kg', 'Fuel in the can, as fired'),
    lowerHeatingValue: quantity('J/kg', 'Lower heating value, as fired'),
    bedArea: quantity('m²', 'Cross-section of the bed'),
    bedDepth: quantity('m', 'Depth of the bed'),
  })
  .describe('What is burnt.')

export const regime = z.enum(['smoulder', 'clean', 'rich and smoky', 'quenched lean'])
