import fc from 'fast-check'
import { fromMillimetres as mm } from '#basis/units.ts'
import { topOpening } from '#stove/can/ends.ts'
import { type CanMeasurements, measuredCan } from '#stove/can/fromCode.ts'
import type { Can, CanEnd, CanPart, Measured } from '#stove/model.ts'

/** Millimetres, as measured to so many. */
export const measured = (value: number, tolerance = 0): Measured => ({
  value: mm(value),
  tolerance: mm(tolerance),
})

/** A cup without seams: outside diameter, height, wall and floor in millimetres; mouth up. */
export const cup = (across: number, height: number, wall = 0.2, more: Partial<CanMeasurements> = {}): Can =>
  measuredCan({
    bodyDiameter: measured(across),
    height: measured(height),
    bodyWall: mm(wall),
    endWall: mm(wall),
    bottom: { kind: 'drawn' },
    top: { kind: 'cut' },
    ...more,
  })

export const canPart = (can: Can): CanPart => ({ form: 'can', role: 'shell', can, openings: new Map() })

const millimetres = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const end = (inside: number): fc.Arbitrary<CanEnd> =>
  fc.oneof(
    fc.constant<CanEnd>({ kind: 'open' }),
    fc.constant<CanEnd>({ kind: 'cut' }),
    fc.constant<CanEnd>({ kind: 'drawn' }),
    fc.constant<CanEnd>({ kind: 'plain', countersink: mm(3) }),
    millimetres(0.7, 0.99).map(
      (share): CanEnd => ({ kind: 'pull-off', opening: measured(inside * share, 0.3) }),
    ),
    millimetres(0.7, 0.99).map(
      (share): CanEnd => ({ kind: 'friction', opening: measured(inside * share, 0.3) }),
    ),
  )

/** Any round can from a tomato-paste tin to a paint gallon, ends left any way, measured any well. */
export const anyCan: fc.Arbitrary<Can> = fc
  .record({
    body: millimetres(50, 170),
    overhang: millimetres(0.8, 1.6),
    height: millimetres(40, 200),
    tolerance: millimetres(0, 1),
  })
  .chain(({ body, overhang, height, tolerance }) =>
    fc.record({ bottom: end(body - 0.4), top: end(body - 0.4) }).map((ends) =>
      measuredCan({
        seamDiameter: measured(body + 2 * overhang, tolerance),
        bodyDiameter: measured(body, tolerance),
        height: measured(height, tolerance),
        bodyWall: mm(0.2),
        endWall: mm(0.2),
        ...ends,
      }),
    ),
  )

/** Two cans of which one is about as wide as the other is inside, where verdicts are close. */
export const closePair: fc.Arbitrary<readonly [Can, Can]> = fc
  .tuple(anyCan, anyCan, millimetres(-3, 3))
  .map(([one, other, more]) => {
    const shift = one.seamDiameter.value + more / 1000 - (topOpening(other) ?? other.bodyDiameter).value
    const by = ({ value, tolerance }: Measured): Measured => ({
      value: (value + shift) as Measured['value'],
      tolerance,
    })
    const shifted = (old: CanEnd): CanEnd => ('opening' in old ? { ...old, opening: by(old.opening) } : old)
    return [
      one,
      {
        ...other,
        seamDiameter: by(other.seamDiameter),
        bodyDiameter: by(other.bodyDiameter),
        top: shifted(other.top),
        bottom: shifted(other.bottom),
      },
    ] as const
  })

/** The same can with every diameter changed. */
export const withDiameters = (can: Can, change: (measured: Measured) => Measured): Can => {
  const ended = (old: CanEnd): CanEnd => ('opening' in old ? { ...old, opening: change(old.opening) } : old)
  return {
    ...can,
    seamDiameter: change(can.seamDiameter),
    bodyDiameter: change(can.bodyDiameter),
    top: ended(can.top),
    bottom: ended(can.bottom),
  }
}
