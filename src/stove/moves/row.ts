import { quantity } from '#basis/quantities.ts'
import { nextStep, type Writing, writingOf } from '#basis/text/writing.ts'
import type { Metres } from '#basis/units.ts'
import { partHeight } from '#stove/assembly/place.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { RowOpening, Stove } from '#stove/model.ts'
import { wallHoleSize, wrapBearing } from '#stove/opening/row.ts'
import {
  degreesText,
  type Move,
  type OpeningRef,
  openingIn,
  type RowFile,
  within,
  withOpening,
} from './move.ts'

/** A row of a stove as it was read, or null. */
export const rowOf = (stove: Stove, { part, opening }: OpeningRef): RowOpening | null => {
  const row = stove.parts.get(part)?.openings.get(opening)
  return row?.kind === 'row' ? row : null
}

/** How low and how high the middle of a row can lie on its part, for the whole opening to lie in the wall [m]. */
export const rowRange = (
  stove: Stove,
  ref: OpeningRef,
): { readonly least: Metres; readonly most: Metres } | null => {
  const row = rowOf(stove, ref)
  const part = stove.parts.get(ref.part)
  if (row === null || part === undefined) return null
  const half = wallHoleSize(row.hole).axial / 2
  return { least: half as Metres, most: (partHeight(part) - half) as Metres }
}

const fileRow = (file: StoveFile, ref: OpeningRef): RowFile | null => {
  const row = openingIn(file, ref)
  return row?.kind === 'row' ? row : null
}

/** The maker's hand of a row's height, measured from the edge the maker measures from. */
const heightHand = (
  file: StoveFile,
  ref: OpeningRef,
): { readonly writing: Writing; readonly fromTop: boolean } => {
  const row = fileRow(file, ref)
  return { writing: writingOf(row?.height, 'holeHeight'), fromTop: row?.from === 'top' }
}

/**
 * Moves a row up or down its wall, as far as its openings lie in it. `height` is that of the middle above the part's bottom
 * edge; it is written from the edge the maker measures from, in the maker's unit, to a whole millimetre or sixty-fourth [m].
 */
export const moveRow = (stove: Stove, file: StoveFile, ref: OpeningRef, height: number): Move | null => {
  const range = rowRange(stove, ref)
  const part = stove.parts.get(ref.part)
  if (range === null || part === undefined) return null
  const wall = partHeight(part)
  const { writing, fromTop } = heightHand(file, ref)
  const wanted = within(range.least, range.most, height)
  const measured = fromTop ? wall - wanted : wanted
  const snapped = writing.snap(measured as Metres)
  // On the edge a whole millimetre may lie outside: then as near as it goes.
  const text = writing.write(within(range.least, range.most, snapped) as Metres)
  return {
    label: `move ${ref.opening} to ${text}`,
    change: (to) => withOpening(to, ref, 'row', (row) => ({ ...row, height: text })),
  }
}

/** Moves a row by one step of its maker's rule, or a large one. */
export const stepRow = (
  stove: Stove,
  file: StoveFile,
  ref: OpeningRef,
  by: 1 | -1,
  large = false,
): Move | null => {
  const part = stove.parts.get(ref.part)
  const row = rowOf(stove, ref)
  if (part === undefined || row === null) return null
  const { writing, fromTop } = heightHand(file, ref)
  const wall = partHeight(part)
  const measured = (fromTop ? wall - row.height : row.height) as Metres
  const next = nextStep(writing, measured, fromTop ? (by === 1 ? -1 : 1) : by, large)
  return moveRow(stove, file, ref, fromTop ? wall - next : next)
}

const MOST_HOLES = quantity('holeCount').max

/** Another number of places round the can; left-out places that are no more are forgotten, and one hole is always left. */
export const countRow = (file: StoveFile, ref: OpeningRef, count: number): Move | null => {
  const row = fileRow(file, ref)
  if (row === null) return null
  const places = Math.round(within(1, MOST_HOLES, count))
  const kept = (row.leftOut ?? []).filter((place) => place <= places).slice(0, places - 1)
  return {
    label: `give ${ref.opening} ${places} ${places === 1 ? 'place' : 'places'}`,
    change: (to) =>
      withOpening(to, ref, 'row', ({ leftOut: _, ...rest }) => ({
        ...rest,
        count: places,
        ...(kept.length > 0 ? { leftOut: kept } : {}),
      })),
  }
}

/** Leaves a place of a row out, or takes it in again. Null where it is the last hole of the row. */
export const toggleLeftOut = (file: StoveFile, ref: OpeningRef, place: number): Move | null => {
  const row = fileRow(file, ref)
  if (row === null || place < 1 || place > row.count) return null
  const before = row.leftOut ?? []
  const out = before.includes(place)
  const after = out ? before.filter((one) => one !== place) : [...before, place].sort((a, b) => a - b)
  if (after.length >= row.count) return null
  return {
    label: out
      ? `take hole ${place} of ${ref.opening} in again`
      : `leave hole ${place} of ${ref.opening} out`,
    change: (to) =>
      withOpening(to, ref, 'row', ({ leftOut: _, ...rest }) => ({
        ...rest,
        ...(after.length > 0 ? { leftOut: after } : {}),
      })),
  }
}

/** Turns a row round its can. `bearing` is that of place 1, half-pitch stagger in it [deg]. */
export const turnRow = (file: StoveFile, ref: OpeningRef, bearing: number): Move | null => {
  const row = fileRow(file, ref)
  if (row === null) return null
  const written = wrapBearing(Math.round(bearing - (row.stagger === true ? 180 / row.count : 0)))
  return {
    label: `turn ${ref.opening} to ${Math.round(written)}°`,
    change: (to) =>
      withOpening(to, ref, 'row', ({ bearing: _, ...rest }) => ({
        ...rest,
        ...(written === 0 ? {} : { bearing: degreesText(written) }),
      })),
  }
}
