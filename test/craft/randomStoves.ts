import fc from 'fast-check'
import { degrees, fromMillimetres } from '#basis/units.ts'
import { measuredCan } from '#stove/can/fromCode.ts'
import type { CanEnd, Opening, Stove, WallHole } from '#stove/model.ts'
import { can, canPart, place, row, stove } from './stoves.ts'

const millimetres = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true })
const bearing = fc.integer({ min: 0, max: 359 }).map(degrees)

const hole: fc.Arbitrary<WallHole> = fc.oneof(
  millimetres(2, 25).map(
    (diameter): WallHole => ({ shape: 'round', diameter: fromMillimetres(diameter), bit: null }),
  ),
  fc.record({
    shape: fc.constant('window' as const),
    width: millimetres(4, 24).map(fromMillimetres),
    height: millimetres(14, 40).map(fromMillimetres),
    foot: fc.constantFrom('square' as const, 'round' as const),
    bit: fc.constant(null),
  }),
  fc.record({
    shape: fc.constant('slit' as const),
    length: millimetres(10, 40).map(fromMillimetres),
    width: millimetres(1, 3).map(fromMillimetres),
    along: fc.constantFrom('axis' as const, 'round' as const),
  }),
)

/** Rows that need not be wise: they may overlap each other and run over the edge. */
const rowsOf = (
  height: number,
  { rows: most, holes } = { rows: 3, holes: 30 },
): fc.Arbitrary<Readonly<Record<string, Opening>>> =>
  fc
    .array(
      fc.record({
        hole,
        count: fc.integer({ min: 1, max: holes }),
        height: millimetres(4, height - 4),
        bearing,
        isFirstLeftOut: fc.boolean(),
      }),
      { minLength: 1, maxLength: most },
    )
    .map((rows) =>
      Object.fromEntries(
        rows.map(({ hole, count, height, bearing, isFirstLeftOut }, index) => [
          ['intake', 'secondary', 'upper windows'][index],
          row(hole, count, height, { bearing, leftOut: isFirstLeftOut && count > 1 ? [1] : [] }),
        ]),
      ),
    )

const floor = (body: number, most = 60): fc.Arbitrary<Opening> =>
  fc.integer({ min: 1, max: most }).map((count) => ({
    kind: 'pattern',
    duty: 'primary',
    face: 'bottom',
    layout: 'sunflower',
    diameter: fromMillimetres(3),
    bit: null,
    holes: Array.from({ length: count }, (_, index) => ({
      radius: fromMillimetres((body / 2 - 8) * Math.sqrt((index + 0.5) / count)),
      bearing: degrees((index * 137.508) % 360),
    })),
  }))

/** A shell and a fuel can of any size, drilled anyhow: for what must hold of every drawing. */
export const anyStove: fc.Arbitrary<Stove> = fc
  .record({ body: millimetres(50, 250), height: millimetres(40, 260) })
  .chain(({ body, height }) =>
    fc.record({
      body: fc.constant(body),
      height: fc.constant(height),
      shell: rowsOf(height),
      inner: rowsOf(height),
      floor: floor(body * 0.8),
      sideSeam: fc.option(bearing, { nil: null }),
    }),
  )
  .map(({ body, height, shell, inner, floor, sideSeam }) =>
    stove(
      'Any stove',
      {
        shell: canPart('shell', can(body, height, { sideSeam }), shell),
        'fuel can': canPart('fuel can', can(body * 0.8, height), { ...inner, floor }),
      },
      [place('shell', 'on ground', null), place('fuel can', 'stands in', 'shell')],
    ),
  )

const measured = (value: number) => ({ value: fromMillimetres(value), tolerance: fromMillimetres(0.5) })

/** A can of any size, some of them tapering to either side, some cut down or with an end cut out. */
const anyCan = (body: number, height: number) =>
  fc
    .record({
      taper: fc.option(millimetres(-0.15, 0.15), { nil: null, freq: 1 }),
      bottom: fc.constantFrom<CanEnd>(
        { kind: 'plain', countersink: fromMillimetres(3.2) },
        { kind: 'drawn' },
        { kind: 'open' },
        { kind: 'cut' },
      ),
      top: fc.constantFrom<CanEnd>(
        { kind: 'open' },
        { kind: 'cut' },
        { kind: 'pull-off', opening: measured(body * 0.7) },
      ),
      sideSeam: fc.option(bearing, { nil: null }),
    })
    .map(({ taper, bottom, top, sideSeam }) =>
      measuredCan({
        bodyDiameter: measured(body),
        ...(taper === null || Math.abs(taper) < 0.01
          ? {}
          : { topBodyDiameter: measured(body * (1 + taper)) }),
        height: measured(height),
        bottom,
        top,
        sideSeam,
      }),
    )

const disc = (diameter: number): fc.Arbitrary<Opening> =>
  fc.record({
    kind: fc.constant('vanes' as const),
    duty: fc.constant('passage' as const),
    face: fc.constant('face' as const),
    count: fc.integer({ min: 3, max: 12 }),
    innerRadius: fc.constant(fromMillimetres(diameter * 0.2)),
    outerRadius: fc.constant(fromMillimetres(diameter * 0.4)),
    width: millimetres(3, 12).map(fromMillimetres),
    angle: fc.integer({ min: 0, max: 80 }).map(degrees),
    bend: fc.constantFrom('up' as const, 'down' as const),
    hand: fc.constantFrom('clockwise' as const, 'anticlockwise' as const),
    bearing,
  })

/** Few enough that hundreds of stoves are read back in seconds. */
const FEW = { rows: 2, holes: 16 }

/** A stove with every form of part, of cans that taper and cans that do not, drilled anyhow. */
export const everyFormStove: fc.Arbitrary<Stove> = fc
  .record({ body: millimetres(60, 200), height: millimetres(80, 240), bandHeight: millimetres(20, 40) })
  .chain(({ body, height, bandHeight }) =>
    fc.record({
      shell: anyCan(body, height),
      inner: anyCan(body * 0.8, height),
      bandHeight: fc.constant(bandHeight),
      shellRows: rowsOf(height, FEW),
      innerRows: rowsOf(height, FEW),
      windows: rowsOf(bandHeight, { rows: 1, holes: 14 }),
      floor: floor(body * 0.6, 20),
      vanes: disc(body * 0.7),
      diameter: fc.constant(body * 0.7),
      bore: millimetres(10, body * 0.25),
      raised: millimetres(0, 30),
    }),
  )
  .map(
    ({ shell, inner, bandHeight, shellRows, innerRows, windows, floor, vanes, diameter, bore, raised }) => {
      const isWhole = inner.bottom.kind === 'plain' || inner.bottom.kind === 'drawn'
      return stove(
        'Every form',
        {
          shell: canPart('shell', shell, shellRows),
          'fuel can': canPart('fuel can', inner, isWhole ? { ...innerRows, floor } : innerRows),
          concentrator: {
            form: 'disc',
            role: 'concentrator',
            diameter: measured(diameter),
            thickness: fromMillimetres(0.25),
            openings: new Map<string, Opening>([
              ['bore', { kind: 'bore', duty: 'passage', face: 'face', diameter: fromMillimetres(bore) }],
              ['vanes', vanes],
            ]),
          },
          damper: {
            form: 'band',
            role: 'damper',
            height: fromMillimetres(bandHeight),
            thickness: fromMillimetres(0.2),
            openings: new Map(Object.entries(windows)),
          },
        },
        [
          place('shell', 'on ground', null),
          place('damper', 'slips over', 'shell', raised),
          place('fuel can', 'stands in', 'shell'),
          place('concentrator', 'sits on', 'shell'),
        ],
      )
    },
  )
