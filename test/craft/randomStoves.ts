import fc from 'fast-check'
import { degrees, fromMillimetres } from '#basis/units.ts'
import type { Opening, Stove, WallHole } from '#stove/model.ts'
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
const rowsOf = (height: number): fc.Arbitrary<Readonly<Record<string, Opening>>> =>
  fc
    .array(
      fc.record({
        hole,
        count: fc.integer({ min: 1, max: 30 }),
        height: millimetres(4, height - 4),
        bearing,
        isFirstLeftOut: fc.boolean(),
      }),
      { minLength: 1, maxLength: 3 },
    )
    .map((rows) =>
      Object.fromEntries(
        rows.map(({ hole, count, height, bearing, isFirstLeftOut }, index) => [
          ['intake', 'secondary', 'upper windows'][index],
          row(hole, count, height, { bearing, leftOut: isFirstLeftOut && count > 1 ? [1] : [] }),
        ]),
      ),
    )

const floor = (body: number): fc.Arbitrary<Opening> =>
  fc.integer({ min: 1, max: 60 }).map((count) => ({
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
