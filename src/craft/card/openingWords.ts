import type { Opening, PatternOpening, RowOpening, VanesOpening, WallHole } from '#stove/model.ts'
import { drilledCount, wrapBearing } from '#stove/opening/row.ts'
import { rings } from '../flat/faceWording.ts'
import { bearingText } from '../flat/wording.ts'
import type { Block } from './block.ts'
import { setOut, size, unbroken } from './length.ts'

export const NOUNS = { round: 'hole', window: 'window', slit: 'slit' } as const

const counted = (count: number, noun: string): string => unbroken(`${count} ${noun}${count === 1 ? '' : 's'}`)

/** Sizes of one opening in a wall: `12 mm (15/32 in)`, or wide and high. */
const holeWords = (hole: WallHole): string => {
  switch (hole.shape) {
    case 'round':
      return size(hole.diameter)
    case 'window':
      return `${size(hole.width)} wide, ${size(hole.height)} high`
    case 'slit':
      return `${size(hole.length)} long, ${size(hole.width)} wide`
  }
}

/** How many, and how large. */
export const rowKey = (row: RowOpening): string =>
  `${counted(drilledCount(row), NOUNS[row.hole.shape])}, ${holeWords(row.hole)}`

/** What shape it has that its sizes do not say. */
export const holeManner = (hole: WallHole): string | null => {
  switch (hole.shape) {
    case 'round':
      return null
    case 'window':
      return hole.foot === 'round' ? 'foot a half circle' : 'square corners'
    case 'slit':
      return hole.along === 'axis' ? 'upright' : 'round the can'
  }
}

/** `7`, `1 and 2`, `1, 2 and 24`. */
const listed = (items: readonly (string | number)[]): string =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`

/** Places that stay whole, or null where every one is cut. */
export const leftOutWords = ({ leftOut }: RowOpening): string | null =>
  leftOut.length === 0
    ? null
    : `${leftOut.length === 1 ? 'place' : 'places'} ${listed([...leftOut].sort((a, b) => a - b))} left out`

/** A bit whose name is no size: `#7`, `letter E`. One that is a size would say the size twice. */
export const bitWords = (bit: string | null): string | null =>
  bit === null || /\d\s*(?:mm|in|")/.test(bit) ? null : `bit ${bit}`

export const firstPlace = (bearing: number): string => {
  const at = Number(wrapBearing(bearing).toFixed(1)) % 360
  return at === 0 ? 'at the front' : `at ${bearingText(at)}`
}

const without = (items: readonly (string | null)[]): readonly string[] =>
  items.filter((item) => item !== null)

const rowBlock = (name: string, row: RowOpening): Block => {
  const left = leftOutWords(row)
  const manner = holeManner(row.hole)
  const bit = row.hole.shape === 'slit' ? null : bitWords(row.hole.bit)
  const places =
    row.count === 1
      ? firstPlace(row.bearing)
      : left === null
        ? `evenly round, first ${firstPlace(row.bearing)}`
        : `${row.count} places clockwise from ${firstPlace(row.bearing).replace('at ', '')}`
  return {
    name,
    opening: name,
    key: rowKey(row),
    lines: without([
      `${row.count === 1 ? 'centre' : 'centres'} ${setOut(row.height)} up`,
      manner,
      places,
      left,
      bit,
    ]),
  }
}

/** A hole nearer to the middle than this is in the middle [m]. */
const MIDDLE = 1e-6

/** How the holes of a pattern lie; "1 in the middle" would read as an inch: `8 on radius 22 mm (7/8 in)`. */
export const patternLines = (pattern: PatternOpening): readonly string[] => {
  if (pattern.layout === 'hexagonal') return [`like a honeycomb: ${unbroken('drill by the template')}`]
  if (pattern.layout === 'sunflower') return [`like sunflower seeds: ${unbroken('drill by the template')}`]
  return [
    ...(pattern.holes.some(({ radius }) => radius < MIDDLE) ? ['one in the middle'] : []),
    ...rings(pattern).map(({ radius, bearings }) => {
      const first = firstPlace(Math.min(...bearings))
      const from =
        first === 'at the front' ? '' : `, ${unbroken(`${bearings.length === 1 ? '' : 'first '}${first}`)}`
      return `${unbroken(`${bearings.length} on radius`)} ${setOut(radius)}${from}`
    }),
  ]
}

const vaneLines = ({ innerRadius, outerRadius, angle, bend, hand }: VanesOpening): readonly string[] => [
  `from radius ${setOut(innerRadius)} to ${setOut(outerRadius)}`,
  `bend ${bend} ${bearingText(angle)}, gas turns ${hand}`,
]

/** An opening as a card says it. */
export const openingBlock = (name: string, opening: Opening): Block => {
  switch (opening.kind) {
    case 'row':
      return rowBlock(name, opening)
    case 'pattern': {
      const bit = bitWords(opening.bit)
      return {
        name,
        opening: name,
        key: `${counted(opening.holes.length, 'hole')}, ${size(opening.diameter)}`,
        lines: without([...patternLines(opening), bit]),
      }
    }
    case 'bore':
      return { name, opening: name, key: `1 hole, ${size(opening.diameter)}`, lines: [] }
    case 'vanes':
      return {
        name,
        opening: name,
        key: `${counted(opening.count, 'vane')}, ${size(opening.width)} wide`,
        lines: vaneLines(opening),
      }
  }
}
