import * as z from 'zod'
import { amount, length, readText, share, strict, words } from '#stove/document/fields.ts'
import { readFuelKind } from '#stove/document/fuelKind.ts'
import { readDay } from './instant.ts'
import { eventSchema, instant, weighingSchema } from './logSchema.ts'
import { whole } from './whole.ts'

export const TRIAL_FORMAT = 'tinwright/trial@1'

/** Few enough that no file can swamp a machine. */
const MOST_ENTRIES = 2000

const MASS = 'Text such as "812 g" or "1 lb"'
const TEMPERATURE = 'Text such as "18 °C" or "64 °F"'
const TIME = 'Text such as "8 min 20 s" or "1 h 20 min"'
const time = () => amount('timeAfterLighting', TIME)

const stoveRef = strict({
  name: words(80, 'What the stove is called.'),
  variant: words(
    80,
    'What tells this stove from its sisters: "A, as planned", "B, more secondary air".',
  ).optional(),
  file: words(200, 'Its stove file.').optional(),
  revision: words(100, 'Hash of the revision that was burnt.').optional(),
  asBuilt: words(2000, 'Where the tin differs from the drawing.').optional(),
}).meta({ description: 'Which stove, as it stood there.' })

const heating = (what: string) =>
  strict({
    value: amount('heatingValue', 'Text such as "18.5 MJ/kg"'),
    within: amount('heatingValue', 'Text such as "0.3 MJ/kg"').optional(),
  })
    .optional()
    .meta({ description: `Lower heating value of ${what}, and how far it may be off either way.` })

const moisture = z
  .union(
    [
      strict({ before: amount('fuelWeight', MASS), after: amount('fuelWeight', MASS) }).meta({
        description: 'A sample weighed before and after an oven of 105 °C takes no more weight off it.',
      }),
      strict({ meter: share('fuelMoisture') }).meta({ description: 'Read from a meter, wet basis.' }),
    ],
    { error: () => '"before" and "after" of an oven-dried sample, or "meter"' },
  )
  .meta({ description: 'Water in the fuel.' })

const fuel = strict({
  kind: readText(readFuelKind, 'Key of the fuel table, such as "wood-chips".'),
  batch: words(80, 'Which sack or bundle it came from.').optional(),
  moisture,
  weighed: z.enum(['before lighting', 'at the start']).optional().meta({
    description:
      'When the fuel at the start of the first phase was weighed: before it was lit, so that what burnt until the phase began is in it, or as that phase began.',
  }),
  heatingValue: heating('the dry fuel; that of the fuel table if left out'),
  charHeatingValue: heating('the char; 29.5 MJ/kg if left out'),
}).meta({ description: 'What was burnt.' })

const kindling = strict({
  what: words(200, 'What it was lit with.'),
  weight: amount('fuelWeight', MASS).optional(),
  weighed: z
    .enum(['apart', 'with the fuel'])
    .optional()
    .meta({ description: 'Whether it is in the weight of the fuel at the start; apart if left out.' }),
})
  .optional()
  .meta({ description: 'Tinder and kindling.' })

const weather = strict({
  temperature: amount('ambientTemperature', TEMPERATURE),
  pressure: amount('airPressure', 'Text such as "985 hPa"').optional(),
  altitude: length('altitude').optional(),
  boilingPoint: amount('waterTemperature', TEMPERATURE)
    .optional()
    .meta({ description: 'What the thermometer shows in water that boils there; best of the three.' }),
  wind: amount('windSpeed', 'Text such as "1.5 m/s"').optional(),
}).meta({
  description:
    'Air about the stove: the boiling point or the pressure as read there, or the height above the sea.',
})

const pot = strict({
  weight: amount('mass', MASS),
  diameter: length('potDiameter').optional(),
  lid: z.boolean().meta({ description: 'Whether a lid was on.' }),
}).meta({
  description:
    'The pot, dry and empty, weighed with what stays in it; its lid on the scale or not throughout.',
})

/** What is read at the beginning of a phase and again at its end. */
const reading = (when: string) =>
  strict({
    at: time(),
    fuel: amount('mass', MASS),
    pot: amount('mass', MASS),
    water: amount('waterTemperature', TEMPERATURE),
  }).meta({
    description: `At the ${when}: time after lighting, fuel not yet burnt, pot with water, water temperature.`,
  })

const phase = strict({
  phase: z.enum(['high power', 'simmer']).meta({ description: 'Full power, or kept just below the boil.' }),
  from: reading('start'),
  to: reading('end'),
  char: amount('mass', MASS).optional().meta({
    description: 'Char made in this phase and weighed, ash knocked off. Left out: not weighed.',
  }),
  boil: time().optional().meta({
    description: 'When the water boiled, after lighting; the first "boil" of the events if left out.',
  }),
}).meta({ id: 'trial-phase', description: 'One stretch of the burn between two weighings.' })

const accuracyShare = share('efficiency').optional()

const instrumentsSchema = strict({
  scale: strict({
    resolution: amount('mass', 'Text such as "1 g"'),
    accuracy: accuracyShare.meta({
      description: 'How far it may be off either way, as a share of what it shows.',
    }),
  }),
  thermometer: strict({
    resolution: amount('temperatureRise', 'Text such as "0.1 K"'),
    accuracy: amount('temperatureRise', 'Text such as "1 K"')
      .optional()
      .meta({ description: 'How far it may be off either way.' }),
  }),
  clock: strict({ resolution: time() }),
  moistureMeter: strict({ accuracy: share('fuelMoisture') }).optional(),
}).meta({
  description:
    'What was read with what: the smallest step each shows. Uncertainty of the results follows from it.',
})

/** A trial file. What goes together and what does not is judged afterwards, in `read.ts`. */
export const trialSchema = strict({
  $schema: words(200, 'Where an editor finds the JSON Schema of this file.').optional(),
  format: z.literal(TRIAL_FORMAT).meta({ description: 'Kind and version of this file.' }),
  name: words(80, 'What you call this burn.'),
  about: words(4000, 'Remarks.').optional(),
  day: readText(readDay, 'Day of the burn: "2031-05-17".'),
  place: whole(1, 1000, 'Which burn of its series this was, from 1.').optional(),
  block: words(80, 'What burns have in common besides the stove; the day if left out.').optional(),
  stove: stoveRef,
  fuel,
  kindling,
  weather,
  pot,
  start: z.enum(['cold', 'hot']).meta({ description: 'Whether the stove was cold when it was lit.' }),
  instruments: instrumentsSchema,
  phases: z.array(phase).min(1).max(4).meta({ description: 'Stretches of the burn, in order.' }),
  lit: instant.optional(),
  events: z
    .array(eventSchema)
    .max(MOST_ENTRIES)
    .optional()
    .meta({ description: 'What happened, by the phones.' }),
  masses: z.array(weighingSchema).max(MOST_ENTRIES).optional().meta({ description: 'Weighings on the way.' }),
  photos: z
    .array(words(200, 'Name of a file.'))
    .max(200)
    .optional()
    .meta({ description: 'Photos, by name.' }),
  wentWrong: z
    .array(words(500, 'One mishap.'))
    .max(50)
    .optional()
    .meta({ description: 'What went wrong; a burn with a mishap may be left out of a comparison.' }),
}).meta({ title: 'Tinwright trial', description: 'One real burn that was measured.' })

/** A trial file as it is written: every measure still text. */
export type TrialFile = z.input<typeof trialSchema>
/** A trial file with every measure read [SI]. */
export type TrialRead = z.output<typeof trialSchema>
export type PhaseRead = z.output<typeof phase>
export type PhaseKind = PhaseRead['phase']
