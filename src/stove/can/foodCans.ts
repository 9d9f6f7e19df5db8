import type { CubicMetres } from '#basis/units.ts'
import { readSizeCode } from './sizeCode.ts'

/** A size of can the trade has a name for. */
export interface NamedCan {
  readonly name: string
  /** Size code, `603x700`. */
  readonly code: string
  /** Water it holds at 68 °F as its source gives it, or null where it gives none worth keeping [m3]. */
  readonly capacity: CubicMetres | null
  readonly source: string
  readonly fromMemory: boolean
}

/** Exactly: the avoirdupois ounce [kg]. */
const OUNCE = 0.028349523125
/** Water at 68 °F (20 °C) [kg/m3]; the density the table is converted with, [bib:cmi]. */
const WATER_AT_68F = 998.203

// Name, size code, capacity in avoirdupois ounces of water at 68 °F: not fluid ounces. [bib:cmi]
const FOOD: readonly (readonly [string, string, number])[] = [
  ['6Z', '202x308', 6.08],
  ['8Z Short', '211x300', 7.93],
  ['8Z Tall', '211x304', 8.68],
  ['No. 1 Picnic', '211x400', 10.94],
  ['No. 211 Cylinder', '211x414', 13.56],
  ['No. 300', '300x407', 15.22],
  ['No. 300 Cylinder', '300x509', 19.4],
  ['No. 1 Tall', '301x411', 16.7],
  ['No. 303', '303x406', 16.88],
  ['No. 303 Cylinder', '303x509', 21.86],
  ['No. 2 Vacuum', '307x306', 14.71],
  ['No. 2', '307x409', 20.55],
  ['Jumbo', '307x510', 25.8],
  ['No. 2 Cylinder', '307x512', 26.4],
  ['No. 1.25', '401x206', 13.81],
  ['No. 2.5', '401x411', 29.79],
  ['No. 3 Vacuum', '404x307', 23.9],
  ['No. 3 Cylinder', '404x700', 51.7],
  ['No. 5', '502x510', 59.1],
  ['No. 10', '603x700', 109.43],
]

/** The public table of food-can sizes, by diameter and height. [bib:cmi] */
export const FOOD_CANS: readonly NamedCan[] = FOOD.map(([name, code, ounces]) => ({
  name,
  code,
  capacity: ((ounces * OUNCE) / WATER_AT_68F) as CubicMetres,
  source: 'Can Manufacturers Institute, dimensional food can standards',
  fromMemory: false,
}))

const other = (name: string, code: string, source: string): NamedCan => ({
  name,
  code,
  capacity: null,
  source,
  fromMemory: source === 'from memory',
})

const SIZES = 'sizes.com, can sizes' // [bib:sizes]
const LEVAPACK = 'levapack.com, can size guide' // [bib:levapack]
const MILEHIGH = 'milehighcontainers.com, metal container basics' // [bib:milehigh]

/**
 * Other sizes a maker meets. Their sources give capacities in fluid ounces or not at all; where the two
 * tables name the same can, its capacity is in `FOOD_CANS`.
 */
export const OTHER_CANS: readonly NamedCan[] = [
  other('202', '202x214', SIZES),
  other('Slim', '202x504', LEVAPACK),
  other('Tall No. 1', '211x413', SIZES),
  other('Tuna', '307x113', LEVAPACK),
  other('Tall No. 2', '307x509', SIZES),
  other('No. 3', '404x414', SIZES),
  other('2 lb coffee', '502x608', SIZES),
  other('3 lb coffee', '603x700', SIZES),
  other('US half pint paint', '211x300', 'from memory'),
  other('US pint paint', '307x315', 'from memory'),
  // Some makers make it 404x412, from memory.
  other('US quart paint', '404x414', 'from memory'),
  other('US gallon paint', '610x708', MILEHIGH),
]

/** Every named size, the public table first. */
export const NAMED_CANS: readonly NamedCan[] = [...FOOD_CANS, ...OTHER_CANS]

const plain = (name: string): string =>
  name
    .toLowerCase()
    .replace(/^(?:#|no\.?|number)\s*(?=\d)/, 'no ')
    .replace('½', '.5')
    .replace('¼', '.25')
    .replace(/[^a-z0-9.]+/g, ' ')
    .trim()

/** The named size of a can by its trade name (`No. 10`, `#10`) or size code; null where none has it. */
export const findFoodCan = (nameOrCode: string): NamedCan | null => {
  const code = readSizeCode(nameOrCode, 'can')
  const wanted = plain(nameOrCode)
  const isIt = code.ok
    ? (can: NamedCan) => can.code === code.value.code
    : (can: NamedCan) => plain(can.name) === wanted
  return NAMED_CANS.find(isIt) ?? null
}
