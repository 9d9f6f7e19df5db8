import { type Degrees, degrees, fraction, fromMillimetres, type Metres } from '#basis/units.ts'
import type {
  BandPart,
  Can,
  CanEnd,
  CanPart,
  CanRole,
  DiscPart,
  Measured,
  Opening,
  Part,
  Placement,
  RowOpening,
  Stove,
  WallHole,
} from '#stove/model.ts'

/** Stoves of our own for the tests of craft, built without a file. Dimensions are invented, in millimetres. */

const mm = fromMillimetres
const measured = (value: number): Measured => ({ value: mm(value), tolerance: mm(0.5) })

const plain: CanEnd = { kind: 'plain', countersink: mm(3.2) }

export const can = (body: number, height: number, more: Partial<Can> = {}): Can => ({
  code: null,
  seamDiameter: measured(body + 2.7),
  bodyDiameter: measured(body),
  height: measured(height),
  bodyWall: mm(0.2),
  endWall: mm(0.22),
  bottom: plain,
  top: { kind: 'open' },
  seamHeight: mm(3),
  beads: [],
  sideSeam: null,
  ...more,
})

export const round = (diameter: number, bit: string | null = null): WallHole => ({
  shape: 'round',
  diameter: mm(diameter),
  bit,
})

export const row = (
  hole: WallHole,
  count: number,
  height: number,
  more: Partial<RowOpening> = {},
): RowOpening => ({
  kind: 'row',
  duty: 'intake',
  hole,
  count,
  leftOut: [],
  height: mm(height),
  bearing: degrees(0),
  ...more,
})

export const canPart = (role: CanRole, body: Can, openings: Readonly<Record<string, Opening>>): CanPart => ({
  form: 'can',
  role,
  can: body,
  openings: new Map(Object.entries(openings)),
})

const rings = (
  diameter: number,
  list: readonly (readonly [radius: number, count: number, from: number])[],
): Opening => ({
  kind: 'pattern',
  duty: 'primary',
  face: 'bottom',
  layout: 'rings',
  diameter: mm(diameter),
  bit: null,
  holes: list.flatMap(([radius, count, from]) =>
    Array.from({ length: count }, (_, index) => ({
      radius: mm(radius),
      bearing: degrees(from + (360 * index) / count),
    })),
  ),
})

const sunflower = (diameter: number, count: number, reach: number): Opening => ({
  kind: 'pattern',
  duty: 'primary',
  face: 'bottom',
  layout: 'sunflower',
  diameter: mm(diameter),
  bit: '5/32 in',
  holes: Array.from({ length: count }, (_, index) => ({
    radius: mm(reach * Math.sqrt((index + 0.5) / count)),
    bearing: degrees((index * 137.508) % 360),
  })),
})

export const place = (
  part: string,
  where: Placement['place'],
  host: string | null,
  raised = 0,
): Placement => ({
  part,
  place: where,
  host,
  raised: mm(raised),
  turned: degrees(0),
})

export const stove = (
  name: string,
  parts: Readonly<Record<string, Part>>,
  assembly: readonly Placement[],
): Stove => ({
  name,
  about: 'invented for a test',
  parts: new Map(Object.entries(parts)),
  assembly,
  fuel: { kind: 'wood pellets', moisture: fraction(0.08), level: mm(60) },
  potDiameter: null,
})

const vanes = (bearing: Degrees): Opening => ({
  kind: 'vanes',
  duty: 'passage',
  face: 'face',
  count: 8,
  innerRadius: mm(19),
  outerRadius: mm(33),
  width: mm(7.5),
  angle: degrees(40),
  bend: 'up',
  hand: 'clockwise',
  bearing,
})

const band = (height: number, openings: Readonly<Record<string, Opening>>): BandPart => ({
  form: 'band',
  role: 'damper',
  height: mm(height),
  thickness: mm(0.2) as Metres,
  openings: new Map(Object.entries(openings)),
})

const disc = (diameter: number, openings: Readonly<Record<string, Opening>>): DiscPart => ({
  form: 'disc',
  role: 'concentrator',
  diameter: measured(diameter),
  thickness: mm(0.25),
  openings: new Map(Object.entries(openings)),
})

/** Two walls, vanes, pot stand and damper; a hole left out; a known side seam. */
export const pocketStove = (): Stove =>
  stove(
    'Lock-keeper’s pocket stove',
    {
      shell: canPart('shell', can(83.2, 108, { sideSeam: degrees(165) }), {
        intake: row(round(12.7, '1/2 in'), 12, 19, { leftOut: [4], bearing: degrees(0) }),
      }),
      'fuel can': canPart('fuel can', can(72.8, 96, { top: { kind: 'pull-off', opening: measured(63) } }), {
        secondary: row(round(5), 18, 82, { duty: 'secondary', bearing: degrees(10) }),
        primary: rings(4.5, [
          [0, 1, 0],
          [10, 6, 0],
          [20, 12, 15],
          [28, 16, 0],
        ]),
      }),
      damper: band(34, { windows: row(round(12.7, '1/2 in'), 12, 17) }),
      concentrator: disc(82, {
        bore: { kind: 'bore', duty: 'passage', face: 'face', diameter: mm(26) },
        vanes: vanes(degrees(0)),
        screws: {
          ...(rings(3.2, [[37, 4, 22.5]]) as Extract<Opening, { kind: 'pattern' }>),
          duty: 'fixing',
          face: 'face',
        },
      }),
      'pot stand': canPart('pot stand', can(83.2, 55, { bottom: { kind: 'cut' }, top: { kind: 'open' } }), {
        flue: row({ shape: 'window', width: mm(16), height: mm(24), foot: 'round', bit: '16 mm' }, 9, 26, {
          duty: 'outlet',
          bearing: degrees(20),
        }),
      }),
    },
    [
      place('shell', 'on ground', null),
      place('fuel can', 'hangs in', 'shell'),
      place('damper', 'slips over', 'shell', 4),
      place('concentrator', 'sits on', 'shell'),
      place('pot stand', 'sits on', 'shell'),
    ],
  )

/** One wall, tall, with a riser; slits; a row of many holes that overlaps another all round. */
export const riserStove = (): Stove =>
  stove(
    'Ferry-landing riser',
    {
      body: canPart(
        'fuel can',
        can(98.6, 176, {
          beads: [
            { from: mm(70), to: mm(74) },
            { from: mm(90), to: mm(94) },
          ],
        }),
        {
          lower: row(round(8, '8 mm'), 20, 14, { duty: 'primary' }),
          upper: row(round(8, '8 mm'), 20, 24, { duty: 'primary', bearing: degrees(9) }),
          secondary: row(round(6), 24, 150, { duty: 'secondary', bearing: degrees(7.5) }),
          floor: sunflower(4, 60, 40),
        },
      ),
      riser: canPart('riser', can(98.6, 140, { bottom: { kind: 'cut' }, top: { kind: 'cut' } }), {
        slits: row({ shape: 'slit', length: mm(22), width: mm(2), along: 'axis' }, 12, 20, {
          duty: 'tertiary',
        }),
        crown: row({ shape: 'window', width: mm(18), height: mm(20), foot: 'square', bit: null }, 8, 128, {
          duty: 'outlet',
          leftOut: [2, 6],
        }),
      }),
    },
    [place('body', 'on ground', null), place('riser', 'sits on', 'body')],
  )

/** Large two-wall stove: three sheets for the shell. */
export const largeStove = (): Stove =>
  stove(
    'Regatta club boiler',
    {
      shell: canPart('shell', can(165.1, 196, { bottom: { kind: 'drawn' } }), {
        intake: row(round(22.2, '7/8 in'), 14, 30, { bearing: degrees(12) }),
        'preheat row': row(round(9.5, '3/8 in'), 24, 62, { bearing: degrees(7.5), leftOut: [1, 2, 24] }),
      }),
      'fuel can': canPart('fuel can', can(154.4, 178), {
        secondary: row(round(8), 32, 158, { duty: 'secondary' }),
        floor: rings(6, [
          [18, 6, 0],
          [34, 12, 0],
          [50, 18, 10],
          [64, 24, 0],
        ]),
      }),
    },
    [place('shell', 'on ground', null), place('fuel can', 'hangs in', 'shell')],
  )

export const testStoves = [pocketStove, riserStove, largeStove] as const

/** A shell alone, for what wants no more. */
export const bareShell = (
  body: number,
  openings: Readonly<Record<string, Opening>>,
  more: Partial<Can> = {},
): Stove =>
  stove('Bare shell', { shell: canPart('shell', can(body, 120, more), openings) }, [
    place('shell', 'on ground', null),
  ])
