import * as z from 'zod'
import { formatQuantity } from '#basis/text/format.ts'
import { addProblem, angle, bit, count, length, strict } from './fields.ts'

const choice = <const Words extends readonly [string, ...string[]]>(words: Words, description: string) =>
  z.enum(words).meta({ description })

const duty = choice(
  ['intake', 'primary', 'secondary', 'tertiary', 'outlet', 'passage', 'fixing'],
  'What the opening is for. "passage" lets gas through (bore, vanes); "fixing" holds a screw or wire.',
)

const roundHole = [
  strict({ bit: bit() }).meta({ description: 'A round hole, by the bit that drills it.' }),
  strict({ diameter: length('holeDiameter') }).meta({
    description: 'A round hole made without a bit: punched, or cut with snips.',
  }),
] as const

/** Largest difference between a window and the bit of its foot that a file takes out [m]. */
const FOOT_SLACK = 0.0005

const windowHole = strict({
  window: strict({
    width: length('windowWidth'),
    height: length('windowHeight'),
    foot: choice(
      ['square', 'round'],
      'Lower end: square, or a half circle of the width. Square if left out.',
    ).optional(),
    bit: bit().optional().meta({ description: 'The bit that drills the round foot: as wide as the window.' }),
  }).check(({ value, issues }) => {
    if (value.foot === 'round' && value.height < value.width / 2)
      addProblem(issues, value, ['height'], {
        code: 'window.foot',
        value: formatQuantity(value.height, 'windowHeight'),
        allowed: `at least half the width, ${formatQuantity(value.width / 2, 'windowHeight')}, where the foot is round`,
        fix: 'Make the window taller or narrower, or its foot square.',
      })
    if (value.bit === undefined) return
    if (value.foot !== 'round')
      addProblem(issues, value, ['bit'], {
        code: 'window.bit',
        value: value.bit.name,
        allowed: 'a bit only where "foot" is "round"',
        fix: 'Say "foot": "round", or leave the bit out: a square window is cut with snips.',
      })
    else if (Math.abs(value.bit.diameter - value.width) > FOOT_SLACK)
      addProblem(issues, value, ['bit'], {
        code: 'window.bit',
        value: `${value.bit.name} for a window ${formatQuantity(value.width, 'windowWidth')} wide`,
        allowed: 'a bit within 0.5 mm of the width',
        fix: 'The foot is a half circle of the window’s width: make the two the same.',
      })
  }),
}).meta({ description: 'A square-topped window.' })

const slitHole = strict({
  slit: strict({
    length: length('slitLength'),
    width: length('slitWidth'),
    along: choice(['axis', 'round'], 'Which way the long side lies: up the can, or round it.'),
  }).check(({ value, issues }) => {
    if (value.length >= value.width) return
    addProblem(issues, value, ['length'], {
      code: 'slit.swapped',
      value: formatQuantity(value.length, 'slitLength'),
      allowed: `at least the width, ${formatQuantity(value.width, 'slitWidth')}`,
      fix: 'Length is the long way of a slit: swap the two, and look at "along".',
    })
  }),
}).meta({ description: 'A narrow slit.' })

const row = strict({
  kind: z.literal('row'),
  duty,
  hole: z
    .union([...roundHole, windowHole, slitHole], {
      error: () => 'one of "bit", "diameter", "window", "slit"',
    })
    .meta({ description: 'One opening of the row.' }),
  count: count('holeCount'),
  leftOut: z
    .array(count('position'))
    .max(400)
    .optional()
    .meta({ description: 'Positions that are not cut, counted clockwise from 1; on the wind side, say.' }),
  height: length('holeHeight'),
  from: choice(['bottom', 'top'], 'Edge the height is measured from. Bottom if left out.').optional(),
  bearing: angle('bearing').optional().meta({
    description: 'Bearing of position 1 from the front mark, clockwise seen from above. 0 deg if left out.',
  }),
  stagger: z.boolean().optional().meta({
    description: 'Turns the row by half its pitch, so that it stands between the holes of another.',
  }),
}).meta({ id: 'row', description: 'A ring of equal openings in a wall.' })

const ring = strict({
  radius: length('ringRadius'),
  count: count('patternCount'),
  bearing: angle('bearing').optional(),
}).meta({ description: 'Equal holes on one circle about the middle of the disc.' })

/** By pitch or by count: the other follows from the disc. */
const filling = (description: string) =>
  strict({
    pitch: length('patternPitch').optional(),
    count: count('patternCount').optional(),
    margin: length('patternMargin'),
  })
    .check(({ value, issues }) => {
      if ((value.pitch === undefined) !== (value.count === undefined)) return
      addProblem(issues, value, [], {
        code: 'pattern.pitch-or-count',
        value: value.pitch === undefined ? 'neither' : 'both',
        allowed: 'either "pitch" or "count"',
        fix: 'Give one of the two: the other follows from the size of the disc.',
      })
    })
    .meta({ description, oneOf: [{ required: ['pitch'] }, { required: ['count'] }] })

const layout = z
  .union(
    [
      strict({
        rings: z.array(ring).min(1).max(60),
        centre: z.boolean().optional().meta({ description: 'One hole in the middle as well.' }),
      }),
      strict({ hexagonal: filling('A honeycomb about one hole in the middle.') }),
      strict({ sunflower: filling('A spiral that gives every hole the same share of the disc.') }),
    ],
    { error: () => 'one of "rings", "hexagonal", "sunflower"' },
  )
  .meta({ description: 'Where the holes lie.' })

const vaneShape = {
  count: count('vaneCount'),
  innerRadius: length('vaneInnerRadius'),
  outerRadius: length('vaneOuterRadius'),
  width: length('vaneWidth'),
  angle: angle('vaneAngle'),
  bend: choice(['up', 'down'], 'Which way the tongues are bent. Up if left out.').optional(),
  hand: choice(['clockwise', 'anticlockwise'], 'The way the gas is turned, seen from above.'),
  bearing: angle('bearing')
    .optional()
    .meta({ description: 'Bearing of the first hinge line. 0 deg if left out.' }),
}

/** Openings of a flat face: of a can's end, which must be named, or of a disc, which has only one. */
const flat = <Face extends z.ZodType>(face: Face, where: string) =>
  [
    strict({
      kind: z.literal('pattern'),
      duty,
      face,
      hole: z.union(roundHole, { error: () => 'one of "bit", "diameter"' }),
      layout,
    }).meta({ id: `pattern-in-${where}`, description: 'Equal round holes that fill a disc.' }),
    strict({ kind: z.literal('bore'), duty, face, diameter: length('boreDiameter') }).meta({
      id: `bore-in-${where}`,
      description: 'One round hole in the middle.',
    }),
    strict({ kind: z.literal('vanes'), duty, face, ...vaneShape }).meta({
      id: `vanes-in-${where}`,
      description: 'Radial slits whose tin is bent up or down along one radial edge, to make the gas whirl.',
    }),
  ] as const

const endFace = choice(['bottom', 'top'], 'Which end of the can.')
const discFace = z.literal('face').optional().meta({ description: 'A disc has one face; may be left out.' })

export const canOpening = z.discriminatedUnion('kind', [row, ...flat(endFace, 'end')], {
  error: () => 'row, pattern, bore, vanes',
})
export const discOpening = z.discriminatedUnion('kind', [...flat(discFace, 'disc')], {
  error: () => 'pattern, bore, vanes',
})
export const bandOpening = z.discriminatedUnion('kind', [row], { error: () => 'row' })

export type OpeningRead = z.output<typeof canOpening> | z.output<typeof discOpening>
export type RowRead = z.output<typeof row>
export type PatternRead = Extract<OpeningRead, { kind: 'pattern' }>
export type VanesRead = Extract<OpeningRead, { kind: 'vanes' }>
