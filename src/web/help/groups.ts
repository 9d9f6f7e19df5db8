import { type QuantityKey, quantities } from '#basis/quantities.ts'

export interface QuantityGroup {
  readonly name: string
  readonly keys: readonly QuantityKey[]
}

/** The first quantity of each group, in the order of the one table. */
const FIRSTS: readonly (readonly [first: QuantityKey, name: string])[] = [
  ['canSeamDiameter', 'A can'],
  ['bitDiameter', 'Openings'],
  ['discDiameter', 'Discs, bands and how they go together'],
  ['fuelLevel', 'Fuel, water and weather'],
  ['massFlow', 'Answers: air and gas'],
  ['firepower', 'Answers: fire and heat'],
]

/** The answers first: they are what people ask about. */
const ANSWERS = ['firepower', 'massFlow']

/** All quantities, in groups. */
export const QUANTITY_GROUPS: readonly QuantityGroup[] = (() => {
  const keys = Object.keys(quantities) as QuantityKey[]
  const starts = FIRSTS.map(([first]) => keys.indexOf(first))
  const groups = FIRSTS.map(([first, name], i) => ({
    first,
    name,
    keys: keys.slice(starts[i], starts[i + 1]),
  }))
  return [
    ...ANSWERS.flatMap((first) => groups.filter((group) => group.first === first)),
    ...groups.filter(({ first }) => !ANSWERS.includes(first)),
  ]
})()
