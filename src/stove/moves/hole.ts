import { type QuantityKey, quantity } from '#basis/quantities.ts'
import { nextStep, writingOf } from '#basis/text/writing.ts'
import type { Metres } from '#basis/units.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import type { Bit } from '#stove/model.ts'
import { type Move, type OpeningRef, openingIn, type RowFile, within, withOpening } from './move.ts'

/** A size of an opening that a hand can change. */
export type HoleSize = 'diameter' | 'window width' | 'window height' | 'slit length' | 'slit width'

type HoleFile = RowFile['hole']

/** Of the sizes that a hole has, as the file writes them. */
const sizeText = (hole: HoleFile, size: HoleSize): string | undefined => {
  if ('bit' in hole) return size === 'diameter' ? hole.bit : undefined
  if ('diameter' in hole) return size === 'diameter' ? hole.diameter : undefined
  if ('window' in hole)
    return size === 'window width'
      ? hole.window.width
      : size === 'window height'
        ? hole.window.height
        : undefined
  return size === 'slit length' ? hole.slit.length : size === 'slit width' ? hole.slit.width : undefined
}

const KEYS: Readonly<Record<HoleSize, QuantityKey>> = {
  diameter: 'holeDiameter',
  'window width': 'windowWidth',
  'window height': 'windowHeight',
  'slit length': 'slitLength',
  'slit width': 'slitWidth',
}

/** The hole of a row or pattern as the file has it, or null. */
const holeIn = (file: StoveFile, ref: OpeningRef): HoleFile | null => {
  const opening = openingIn(file, ref)
  return opening?.kind === 'row' || opening?.kind === 'pattern' ? opening.hole : null
}

/** Sizes of an opening's holes that can be changed by hand, in the order a maker names them. */
export const sizesOf = (file: StoveFile, ref: OpeningRef): readonly HoleSize[] => {
  const hole = holeIn(file, ref)
  if (hole === null) return []
  if ('window' in hole) return ['window width', 'window height']
  if ('slit' in hole) return ['slit length', 'slit width']
  return ['diameter']
}

const withHole = (file: StoveFile, ref: OpeningRef, hole: HoleFile): StoveFile => {
  const opening = openingIn(file, ref)
  return opening?.kind === 'pattern'
    ? 'bit' in hole || 'diameter' in hole
      ? withOpening(file, ref, 'pattern', (pattern) => ({ ...pattern, hole }))
      : file
    : withOpening(file, ref, 'row', (row) => ({ ...row, hole }))
}

/** Drills round holes with another bit. */
export const drillWith = (ref: OpeningRef, bit: Bit): Move => ({
  label: `drill ${ref.opening} with ${bit.name}`,
  change: (file) => {
    const hole = holeIn(file, ref)
    return hole !== null && ('bit' in hole || 'diameter' in hole)
      ? withHole(file, ref, { bit: bit.name })
      : file
  },
})

/** A size of a hole that no bit decides, in the maker's unit [m]. Null where the opening has no such size. */
export const sizeHole = (file: StoveFile, ref: OpeningRef, size: HoleSize, value: number): Move | null => {
  const hole = holeIn(file, ref)
  if (hole === null || sizeText(hole, size) === undefined || 'bit' in hole) return null
  const { min, max } = quantity(KEYS[size])
  const writing = writingOf(sizeText(hole, size), KEYS[size])
  const text = writing.write(within(min, max, value) as Metres)
  const changed = (): HoleFile => {
    if ('diameter' in hole) return { diameter: text }
    if ('window' in hole) {
      // A round foot is as wide as its bit: another width wants another bit.
      const { bit: _, ...window } = hole.window
      return {
        window: size === 'window width' ? { ...window, width: text } : { ...hole.window, height: text },
      }
    }
    if ('slit' in hole) return { slit: { ...hole.slit, [size === 'slit length' ? 'length' : 'width']: text } }
    return hole
  }
  return {
    label: `make ${size === 'diameter' ? ref.opening : `the ${size} of ${ref.opening}`} ${text}`,
    change: (to) => withHole(to, ref, changed()),
  }
}

/** One step of a size up or down, by the maker's rule. */
export const stepHole = (
  file: StoveFile,
  ref: OpeningRef,
  size: HoleSize,
  by: 1 | -1,
  large = false,
): Move | null => {
  const hole = holeIn(file, ref)
  const text = hole === null ? undefined : sizeText(hole, size)
  if (text === undefined) return null
  const writing = writingOf(text, KEYS[size])
  return sizeHole(file, ref, size, nextStep(writing, writing.value, by, large))
}

/** Two names of one size differ by far less than a bit is true [m]. */
const SAME = 1e-9

/** The next larger or smaller of some bits than a diameter; null where there is none [m]. */
export const nextBit = (diameter: number, bits: readonly Bit[], by: 1 | -1): Bit | null => {
  let best: Bit | null = null
  for (const bit of bits) {
    if ((bit.diameter - diameter) * by <= SAME) continue
    if (best === null || (bit.diameter - best.diameter) * by < 0) best = bit
  }
  return best
}
