import * as z from 'zod'
import { fromMillimetres } from '#basis/units.ts'
import { canSchema, endSchema } from './canSchema.ts'
import { angle, length, measured, strict, words } from './fields.ts'
import { fuelSchema } from './fuelSchema.ts'
import { named, STOVE_NAME_MOST } from './names.ts'
import { bandOpening, canOpening, discOpening } from './openingSchema.ts'

export const STOVE_FORMAT = 'tinwright/stove@1'

/** More than any stove has, and few enough that no file can swamp a machine. */
const MOST_PARTS = 16
const MOST_OPENINGS = 24

/** What snips leave of a trimmed edge, either way: common practice, no source [m]. */
const TRIM_TOLERANCE = fromMillimetres(1)

const openings = <T extends z.ZodType>(opening: T) =>
  named(opening, MOST_OPENINGS, 'Openings by your own names for them.').optional()

const canPart = strict({
  form: z.literal('can'),
  role: z.enum(['shell', 'fuel can', 'riser', 'pot stand']).meta({ description: 'What the can is for.' }),
  can: canSchema,
  bottom: endSchema,
  top: endSchema,
  trim: strict({ height: measured('canHeight', TRIM_TOLERANCE) })
    .optional()
    .meta({
      description: 'Height that is left of a can whose wall was cut down. The end that went must be "cut".',
    }),
  openings: openings(canOpening),
}).meta({ id: 'can-part', description: 'A can as a wall of the stove, standing as it stands in the stove.' })

const discPart = strict({
  form: z.literal('disc'),
  role: z.enum(['concentrator', 'lid ring', 'grate']).meta({ description: 'What the disc is for.' }),
  diameter: measured('discDiameter'),
  thickness: length('sheetThickness'),
  openings: openings(discOpening),
}).meta({ id: 'disc-part', description: 'A flat disc.' })

const bandPart = strict({
  form: z.literal('band'),
  role: z.enum(['damper']).meta({ description: 'What the band is for.' }),
  height: length('bandHeight'),
  thickness: length('sheetThickness'),
  openings: openings(bandOpening),
}).meta({ id: 'band-part', description: 'A strip of tin that turns round a can.' })

const partSchema = z.discriminatedUnion('form', [canPart, discPart, bandPart], {
  error: () => 'can, disc, band',
})

const partName = words(40, 'A name from "parts".')
const host = words(40, 'The part that carries or holds this one: a name from "parts".')
const turned = angle('bearing').optional().meta({
  description:
    'Turn of the part’s front mark from the stove’s front, clockwise from above. 0 deg if left out.',
})
const raised = length('raised').optional()

const placementSchema = z.discriminatedUnion(
  'place',
  [
    strict({ part: partName, place: z.literal('on ground'), raised, turned }).meta({
      description: 'Stands on the ground, or raised above it on feet.',
    }),
    strict({ part: partName, place: z.enum(['hangs in', 'sits on']), host, turned }).meta({
      description:
        'Hangs by its top rim from the host’s top; or sits with its bottom edge on the host’s top rim.',
    }),
    strict({
      part: partName,
      place: z.enum(['stands in', 'slips over', 'slips into']),
      host,
      raised,
      turned,
    }).meta({
      description:
        'Stands on the host’s floor; or slips over or into it, bottom edge raised above the host’s bottom edge.',
    }),
  ],
  { error: () => 'on ground, stands in, hangs in, sits on, slips over, slips into' },
)

/**
 * The stove file. Its input type is the document as the maker writes it; its output has every measure
 * read. What goes together and what does not is judged afterwards, in `read.ts`.
 */
export const stoveSchema = strict({
  $schema: words(200, 'Where an editor finds the JSON Schema of this file.').optional(),
  format: z.literal(STOVE_FORMAT).meta({ description: 'Kind and version of this file.' }),
  name: words(STOVE_NAME_MOST, 'What you call the stove.'),
  about: words(4000, 'Remarks: where the cans come from, what was tried.').optional(),
  fuel: fuelSchema,
  pot: strict({ diameter: length('potDiameter'), gap: length('potGap').optional() })
    .optional()
    .meta({ description: 'The pot the stove is built for.' }),
  parts: named(partSchema, MOST_PARTS, 'Parts by your own names for them.'),
  assembly: z
    .array(placementSchema)
    .min(1)
    .max(MOST_PARTS)
    .meta({ description: 'What sits in what: each part once, hosts before the parts they carry.' }),
}).meta({ title: 'Tinwright stove', description: 'A natural-draught wood-gas stove made of cans.' })

/** A stove file as its maker writes it: every measure still text. */
export type StoveFile = z.input<typeof stoveSchema>
/** A stove file with every measure read, nothing yet put together [SI]. */
export type StoveRead = z.output<typeof stoveSchema>
export type PartRead = z.output<typeof partSchema>
export type PlacementRead = z.output<typeof placementSchema>
