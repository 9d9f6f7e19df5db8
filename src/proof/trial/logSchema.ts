import * as z from 'zod'
import { bad, good } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import { addProblem, amount, angle, readText, strict, words } from '#stove/document/fields.ts'
import { readInstant } from './instant.ts'
import { whole } from './whole.ts'

/** What may be noted at the stove. */
export const EVENT_KINDS = [
  'lit',
  'flame on',
  'smoke',
  'smoke gone',
  'boil',
  'damper to',
  'pot on',
  'pot off',
  'refuel',
  'flame out',
  'char out',
  'note',
] as const
export type EventKind = (typeof EVENT_KINDS)[number]

/** What may be put on the scale during a burn. */
export const WEIGHED = ['stove', 'fuel', 'pot', 'char'] as const

const ID = /^[A-Za-z0-9_-]{4,64}$/

const entryId = readText(
  (value) =>
    typeof value === 'string' && ID.test(value)
      ? good(value)
      : bad({
          code: 'id.form',
          field: '',
          value: shown(value),
          allowed: '4 to 64 letters, digits, - and _',
          fix: 'Let the phone that notes the event make it, and never use it again.',
        }),
  'Made by the phone that noted it; the same entry keeps it wherever it goes.',
)

export const instant = readText(
  readInstant,
  'When, by the clock of the phone, with its time zone: "2031-05-17T09:12:04Z".',
)

/** What entries of the log have in common. */
const entry = {
  id: entryId,
  at: instant,
  edit: whole(
    0,
    1_000_000,
    'How often the entry has been changed; the highest holds. 0 if left out.',
  ).optional(),
  withdrawn: z.boolean().optional().meta({
    description: 'True for an entry that was taken back; it stays, so that no other phone brings it again.',
  }),
}

const text = words(1000, 'Anything worth knowing of it.').optional()

export const eventSchema = strict({
  ...entry,
  event: z.enum(EVENT_KINDS).meta({ description: 'What happened.' }),
  turned: angle('bearing').optional().meta({ description: 'For "damper to": bearing of the front mark.' }),
  weight: amount('fuelWeight', 'Text such as "30 g"')
    .optional()
    .meta({ description: 'For "refuel": what was put in.' }),
  text,
}).check(({ value, issues }) => {
  const out = (key: 'turned' | 'weight', belongs: EventKind): void => {
    if (value[key] !== undefined && value.event !== belongs)
      addProblem(issues, value, [key], {
        code: `event.${key}`,
        value: `"${key}" beside "${value.event}"`,
        allowed: `"${key}" only beside "event": "${belongs}"`,
        fix: 'Take it out, or name the event that it belongs to.',
      })
    if (value[key] === undefined && value.event === belongs && value.withdrawn !== true)
      addProblem(issues, value, [key], {
        code: `event.no-${key}`,
        value: '',
        allowed: key === 'turned' ? 'a bearing such as "12 deg"' : 'a weight such as "30 g"',
        fix: key === 'turned' ? 'Say where the front mark stands now.' : 'Say how much went in.',
      })
  }
  out('turned', 'damper to')
  out('weight', 'refuel')
})

export const weighingSchema = strict({
  ...entry,
  of: z.enum(WEIGHED).meta({ description: 'What stood on the scale.' }),
  mass: amount('mass', 'Text such as "812 g"'),
  text,
})

export type EventRead = z.output<typeof eventSchema>
export type WeighingRead = z.output<typeof weighingSchema>
export type EventFile = z.input<typeof eventSchema>
export type WeighingFile = z.input<typeof weighingSchema>
