import { long } from '#basis/text/bothUnits.ts'
import { formatLength } from '#basis/text/format.ts'
import type { Metres } from '#basis/units.ts'
import { metricName } from '#stove/bit/name.ts'
import { drilledDiameter } from '#stove/check/drill/bitOnShelf.ts'
import { DRILL } from '#stove/check/rules.ts'
import type { Opening, Part, Stove } from '#stove/model.ts'
import { isFootDrilled } from '../flat/hole.ts'

/**
 * How an opening is made by hand.
 * - `drill`: round, by a bit.
 * - `foot and snips`: a window whose foot is drilled, its sides cut up from there.
 * - `snips`: a window or slit cut or chiselled all round.
 * - `bore`: one round hole in the middle, cut out of the sheet.
 * - `vanes`: slits whose tin is bent.
 */
export type Making = 'drill' | 'foot and snips' | 'snips' | 'bore' | 'vanes'

export const makingOf = (opening: Opening): Making => {
  switch (opening.kind) {
    case 'row':
      if (opening.hole.shape === 'round') return 'drill'
      return isFootDrilled(opening.hole) ? 'foot and snips' : 'snips'
    case 'pattern':
      return 'drill'
    case 'bore':
      return 'bore'
    case 'vanes':
      return 'vanes'
  }
}

/** The bit an opening asks for. */
export interface WantedBit {
  /** As the stove file names it, else by its diameter. */
  readonly name: string
  readonly diameter: Metres
}

/** The bit that makes an opening, or the round foot of one; null where none does. */
export const bitFor = (opening: Opening): WantedBit | null => {
  const making = makingOf(opening)
  const diameter = drilledDiameter(opening)
  if (diameter === null || (making !== 'drill' && making !== 'foot and snips')) return null
  const named =
    opening.kind === 'pattern'
      ? opening.bit
      : opening.kind === 'row' && opening.hole.shape !== 'slit'
        ? opening.hole.bit
        : null
  return { name: named ?? metricName(diameter * 1000), diameter }
}

/** Bits this near are the same. */
export const isSameSize = (one: number, other: number): boolean =>
  Math.abs(one - other) <= DRILL.sameSize.value

/** Wider than the chuck of a hand drill takes: for a step drill, or a bit of reduced shank. */
export const isForStepDrill = ({ name, diameter }: WantedBit): boolean =>
  name.endsWith(' step') || diameter > DRILL.chuckCapacity.value + 1e-9

export interface NamedOpening {
  readonly part: string
  readonly opening: string
}

/** Every opening of a stove with the part it is in, in file order. */
export const openingsIn = (
  stove: Stove,
): readonly (NamedOpening & { readonly in: Part; readonly what: Opening })[] =>
  [...stove.parts].flatMap(([part, body]) =>
    [...body.openings].map(([opening, what]) => ({ part, opening, in: body, what })),
  )

/** A bit by its name with its other measure: `4 mm (5/32 in)`, `5/8 in (15.9 mm)`, `#7, 5.1 mm (13/64 in)`. */
export const bitText = ({ name, diameter }: WantedBit): string => {
  const [size, step] = name.endsWith(' step') ? [name.slice(0, -5), ' step'] : [name, '']
  const both = long(diameter)
  if (size.endsWith(' mm')) return `${both}${step}`
  return size.endsWith(' in')
    ? `${size} (${formatLength(diameter, { units: 'mm' })})${step}`
    : `${name}, ${both}`
}

/** A bit with the tool it is: `14 mm (35/64 in), step drill`. */
export const toolText = (bit: WantedBit, tool: string): string =>
  `${bitText({ ...bit, name: bit.name.replace(/ step$/, '') })}, ${tool}`
