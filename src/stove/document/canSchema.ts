import * as z from 'zod'
import { bad, good, type Outcome } from '#basis/problem.ts'
import { type QuantityKey, quantities } from '#basis/quantities.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { allowedRange, withinRange } from '#basis/text/range.ts'
import type { Metres } from '#basis/units.ts'
import { readSizeCode } from '#stove/can/sizeCode.ts'
import { addProblem, angle, length, measured, readText, strict } from './fields.ts'

const codeInRange = (code: string, value: Metres, key: QuantityKey): Outcome<string> =>
  withinRange(value, quantities[key])
    ? good(code)
    : bad({
        code: 'size-code.range',
        field: '',
        value: `${code}, which is ${formatQuantity(value, key)}`,
        allowed: allowedRange(quantities[key]),
        fix: 'Look at the code again: two groups of three digits, diameter first.',
      })

const readCode = (value: unknown): Outcome<string> => {
  const size = readSizeCode(value, '')
  if (!size.ok) return size
  const { code, diameter, height } = size.value
  const wide = codeInRange(code, diameter, 'canSeamDiameter')
  return wide.ok ? codeInRange(code, height, 'canHeight') : wide
}

const bead = strict({ from: length('beadHeight'), to: length('beadHeight') }).meta({
  description:
    'A stretch of rolled beads, heights above the bottom edge of the can as it stands, trimmed or not.',
})

/** What may be said of a can. What is not given comes from the table of defaults in `stove/can`. */
export const canShape = {
  code: readText(
    readCode,
    'Size code of a round can: inches and sixteenths over the seam, then the height: "603x700" is 6 3/16 in by 7 in.',
  ).optional(),
  seamDiameter: measured('canSeamDiameter').optional(),
  bodyDiameter: measured('canBodyDiameter').optional(),
  topBodyDiameter: measured('canBodyDiameter').optional().meta({
    description:
      'For a can that tapers: outside of the body at its top edge as it stands, trimmed or not; "bodyDiameter" is then that at its bottom edge.',
  }),
  height: measured('canHeight').optional(),
  bodyWall: length('bodyWall').optional(),
  endWall: length('endWall').optional(),
  seamHeight: length('seamHeight').optional(),
  beads: z
    .array(bead)
    .max(20)
    .optional()
    .meta({ description: 'Rolled beads: no hole should lie on one. None where they are left out.' }),
  sideSeam: angle('bearing').optional().meta({
    description:
      'Bearing of the welded side seam, such as "180 deg"; leave it out for a drawn can or where unknown.',
  }),
}

interface Size {
  readonly code?: unknown
  readonly seamDiameter?: unknown
  readonly bodyDiameter?: unknown
  readonly height?: unknown
}

/** An object with the shape of a can that says how large the can is, one way or the other. */
export const needsSize = <Shape extends typeof canShape>(shape: Shape) =>
  strict(shape).check(({ value: can, issues }) => {
    const value = can as Size
    const wide = value.seamDiameter !== undefined || value.bodyDiameter !== undefined
    if (value.code !== undefined || (wide && value.height !== undefined)) return
    addProblem(issues, value, [], {
      code: 'can.no-size',
      value: Object.keys(value).join(', '),
      allowed: '"code", or "height" with "seamDiameter" or "bodyDiameter"',
      fix: 'Give the size code ("code": "404x700"), or measure the can across and in height.',
    })
  })

/** For the JSON Schema: the same rule in its words. */
export const SIZE_REQUIRED = [
  { required: ['code'] },
  { required: ['height', 'seamDiameter'] },
  { required: ['height', 'bodyDiameter'] },
]

/** A can: by size code, by measure, or by code with what was measured put over it. */
export const canSchema = needsSize(canShape).meta({
  id: 'can',
  description: 'A round can: by size code, by measure, or by code with what was measured.',
  anyOf: SIZE_REQUIRED,
})

export type CanRead = z.output<typeof canSchema>

const end = <const Kind extends string>(kind: Kind, description: string) =>
  strict({ end: z.literal(kind) }).meta({ description })

export const endSchema = z
  .discriminatedUnion(
    'end',
    [
      strict({ end: z.literal('plain'), countersink: length('countersink').optional() }).meta({
        description: 'Seamed on and whole.',
      }),
      end('drawn', 'The whole bottom of a two-piece can, without a seam.'),
      strict({ end: z.literal('pull-off'), opening: measured('endOpening') }).meta({
        description: 'The panel was torn out by its ring; a ledge is left round the opening.',
      }),
      strict({ end: z.literal('friction'), opening: measured('endOpening') }).meta({
        description: 'The ring of a lever lid, lid off.',
      }),
      end('open', 'Cut out along the wall: the seam is still there, no ledge.'),
      end('cut', 'The wall was trimmed by snips; give the height that is left as "trim".'),
    ],
    { error: () => 'plain, drawn, pull-off, friction, open, cut' },
  )
  .meta({ id: 'end', description: 'One end of a can, as it is left in the stove.' })

export type EndRead = z.output<typeof endSchema>
