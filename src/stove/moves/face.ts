import { quantity } from '#basis/quantities.ts'
import { nextStep, writingOf } from '#basis/text/writing.ts'
import type { Metres } from '#basis/units.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import {
  degreesText,
  type Move,
  type OpeningRef,
  openingIn,
  type PatternFile,
  within,
  withOpening,
} from './move.ts'

/** Another diameter of a bore, in the maker's unit [m]. */
export const setBore = (file: StoveFile, ref: OpeningRef, diameter: number): Move | null => {
  const bore = openingIn(file, ref)
  if (bore?.kind !== 'bore') return null
  const { min, max } = quantity('boreDiameter')
  const writing = writingOf(bore.diameter, 'boreDiameter')
  const text = writing.write(writing.snap(within(min, max, diameter) as Metres))
  return {
    label: `make ${ref.opening} ${text}`,
    change: (to) => withOpening(to, ref, 'bore', (one) => ({ ...one, diameter: text })),
  }
}

/** A bore wider or narrower by one step of the maker's rule. */
export const stepBore = (file: StoveFile, ref: OpeningRef, by: 1 | -1, large = false): Move | null => {
  const bore = openingIn(file, ref)
  if (bore?.kind !== 'bore') return null
  const writing = writingOf(bore.diameter, 'boreDiameter')
  return setBore(file, ref, nextStep(writing, writing.value, by, large))
}

/** Another bend of the vanes [deg]. */
export const bendVanes = (file: StoveFile, ref: OpeningRef, angle: number): Move | null => {
  if (openingIn(file, ref)?.kind !== 'vanes') return null
  const { min, max } = quantity('vaneAngle')
  const bent = Math.round(within(min, max, angle))
  return {
    label: `bend ${ref.opening} to ${bent}°`,
    change: (to) => withOpening(to, ref, 'vanes', (vanes) => ({ ...vanes, angle: degreesText(bent) })),
  }
}

/** Another number of vanes. */
export const countVanes = (file: StoveFile, ref: OpeningRef, count: number): Move | null => {
  if (openingIn(file, ref)?.kind !== 'vanes') return null
  const { min, max } = quantity('vaneCount')
  const vanes = Math.round(within(min, max, count))
  return {
    label: `give ${ref.opening} ${vanes} vanes`,
    change: (to) => withOpening(to, ref, 'vanes', (one) => ({ ...one, count: vanes })),
  }
}

type Layout = PatternFile['layout']

/** One of the numbers that make up a floor pattern. */
export interface PatternCount {
  /** Of a pattern in rings, which ring; else null. */
  readonly ring: number | null
  readonly count: number
  /** `ring of 22 mm`, or `holes`. */
  readonly name: string
}

/** The numbers of holes that can be changed one by one; of a pattern by pitch there are none. */
export const patternCounts = (pattern: PatternFile): readonly PatternCount[] => {
  const { layout } = pattern
  if ('rings' in layout)
    return layout.rings.map(({ radius, count }, ring) => ({ ring, count, name: `ring at ${radius}` }))
  const { count } = 'hexagonal' in layout ? layout.hexagonal : layout.sunflower
  return count === undefined ? [] : [{ ring: null, count, name: 'holes' }]
}

const counted = (layout: Layout, ring: number | null, count: number): Layout => {
  if ('rings' in layout)
    return {
      ...layout,
      rings: layout.rings.map((one, i) => (i === ring ? { ...one, count } : one)),
    }
  return 'hexagonal' in layout
    ? { hexagonal: { ...layout.hexagonal, count } }
    : { sunflower: { ...layout.sunflower, count } }
}

/** Another number of holes in one ring of a pattern, or in the whole of one that goes by count. */
export const countPattern = (
  file: StoveFile,
  ref: OpeningRef,
  ring: number | null,
  count: number,
): Move | null => {
  const pattern = openingIn(file, ref)
  if (pattern?.kind !== 'pattern') return null
  const { min, max } = quantity('patternCount')
  const holes = Math.round(within(min, max, count))
  return {
    label: `give ${ref.opening} ${holes} holes${ring === null ? '' : ` in ring ${ring + 1}`}`,
    change: (to) =>
      withOpening(to, ref, 'pattern', (one) => ({ ...one, layout: counted(one.layout, ring, holes) })),
  }
}

/** A wider or closer pattern, of one that goes by pitch, by one step of the maker's rule. */
export const stepPitch = (file: StoveFile, ref: OpeningRef, by: 1 | -1): Move | null => {
  const pattern = openingIn(file, ref)
  if (pattern?.kind !== 'pattern' || 'rings' in pattern.layout) return null
  const filling = 'hexagonal' in pattern.layout ? pattern.layout.hexagonal : pattern.layout.sunflower
  if (filling.pitch === undefined) return null
  const { min, max } = quantity('patternPitch')
  const writing = writingOf(filling.pitch, 'patternPitch')
  const pitch = writing.write(within(min, max, nextStep(writing, writing.value, by)) as Metres)
  const layout: Layout =
    'hexagonal' in pattern.layout
      ? { hexagonal: { ...filling, pitch } }
      : { sunflower: { ...filling, pitch } }
  return {
    label: `space ${ref.opening} ${pitch}`,
    change: (to) => withOpening(to, ref, 'pattern', (one) => ({ ...one, layout })),
  }
}
