import { long, onRule } from '#basis/text/bothUnits.ts'
import type { Opening, RowOpening, WallHole } from '#stove/model.ts'
import { holeCount } from '#stove/opening/area.ts'

/** A height against something: `12 mm (15/32 in) above`, `1 mm (0.039 in) below`. */
export const level = (height: number): string => `${long(Math.abs(height))} ${height < 0 ? 'below' : 'above'}`

/** Where on a wall so high to put the middle of a row, from the edge its maker measures it from: `24 mm (15/16 in) below the top edge`. */
export const heightOnWall = (
  { measuredFrom }: Pick<RowOpening, 'measuredFrom'>,
  height: number,
  wallHeight: number,
): string =>
  measuredFrom === 'top'
    ? `${onRule(wallHeight - height)} below the top edge`
    : `${onRule(height)} above the bottom edge`

export const percent = (ratio: number): string =>
  `${(ratio * 100).toFixed(ratio > 0.0005 && ratio < 0.095 ? 1 : 0)} %`

/** A number without needless digits: 3.7, 0.42, 12. */
export const figure = (value: number): string => String(Number(value.toPrecision(2)))

/** The maker's own name for a part or an opening. */
export const called = (name: string): string => `“${name}”`

/** Numbers that are spoken with a vowel first: eight, eleven, eighteen, eighty. */
const VOWEL_FIRST = /^(8|11(?!\d)|18(?!\d))/

/** With its article: `a 6 mm bit`, `an 8 mm bit`. */
export const a = (thing: string): string => `${VOWEL_FIRST.test(thing) ? 'an' : 'a'} ${thing}`

export const list = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`

const wallHoleWord = (hole: WallHole): string =>
  hole.shape === 'round' ? 'hole' : hole.shape === 'window' ? 'window' : 'slit'

export const openingWord = (opening: Opening): string => {
  switch (opening.kind) {
    case 'row':
      return wallHoleWord(opening.hole)
    case 'pattern':
      return 'hole'
    case 'bore':
      return 'bore'
    case 'vanes':
      return 'vane'
  }
}

export const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`

const sizeOf = (opening: Opening): string => {
  switch (opening.kind) {
    case 'row':
      switch (opening.hole.shape) {
        case 'round':
          return long(opening.hole.diameter)
        case 'window':
          return `${long(opening.hole.width)} by ${long(opening.hole.height)}`
        case 'slit':
          return `${long(opening.hole.length)} by ${long(opening.hole.width)}`
      }
      break
    case 'pattern':
    case 'bore':
      return long(opening.diameter)
    case 'vanes':
      return `${long(opening.outerRadius - opening.innerRadius)} by ${long(opening.width)}`
  }
}

/** `24 holes of 9 mm (23/64 in)`. */
export const openingsOf = (opening: Opening): string =>
  `${plural(holeCount(opening), openingWord(opening))} of ${sizeOf(opening)}`

const ONE: Readonly<Record<string, string>> = {
  are: 'is',
  begin: 'begins',
  break: 'breaks',
  have: 'has',
  leave: 'leaves',
  lie: 'lies',
  need: 'needs',
  reach: 'reaches',
}

/** `24 holes of 9 mm in “upper” on “shell”`, of a single one `hole of 9 mm in …`. */
export const namedOpenings = (opening: Opening, name: string, part: string): string => {
  const which = `in ${called(name)} on ${called(part)}`
  return holeCount(opening) === 1
    ? `${openingWord(opening)} of ${sizeOf(opening)} ${which}`
    : `${openingsOf(opening)} ${which}`
}

/**
 * A sentence about all openings of one kind, told of many: `reach into the seam.` A single one gets
 * the verb it asks for.
 */
export const says = (opening: Opening, name: string, part: string, predicate: string): string => {
  const subject = `The ${namedOpenings(opening, name, part)}`
  if (holeCount(opening) !== 1) return `${subject} ${predicate}`
  const [verb = '', ...rest] = predicate.split(' ')
  return `${subject} ${[ONE[verb] ?? verb, ...rest].join(' ').replace(/\btheir\b/g, 'its')}`
}
