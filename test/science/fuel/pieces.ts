import fc from 'fast-check'
import { fromMillimetres } from '#basis/units.ts'
import type { FuelPieces } from '#stove/model.ts'

/** Sizes in millimetres. */
export const rod = (diameter: number, length: number): FuelPieces => ({
  shape: 'rod',
  diameter: fromMillimetres(diameter),
  length: fromMillimetres(length),
})

export const block = (length: number, width: number, thickness: number): FuelPieces => ({
  shape: 'block',
  length: fromMillimetres(length),
  width: fromMillimetres(width),
  thickness: fromMillimetres(thickness),
})

const size = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Rods and blocks from crumbs to fingers. */
export const anyPieces: fc.Arbitrary<FuelPieces> = fc.oneof(
  fc.tuple(size(3, 15), size(1, 5)).map(([diameter, slender]) => rod(diameter, slender * diameter)),
  fc.tuple(size(8, 30), size(5, 15), size(2, 10)).map(([l, w, t]) => block(l, w, t)),
)
