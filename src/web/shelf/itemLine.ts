import { type Outcome, problemSentence } from '#basis/problem.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { fuelTable } from '#science/fuel/table.ts'
import { readBit } from '#stove/bit/readBit.ts'
import { readBitItem, readCanItem, readFuelItem, readPotItem } from '#stove/document/shelfItem.ts'
import type { Bit, Can } from '#stove/model.ts'
import { lengthIn } from '../settings/inUnits.ts'
import type { Units } from '../settings/settings.ts'
import type { Shelved } from './shelfOf.ts'

/** What a row of the shelf says of a thing beside its name, or why it does not read. */
export interface ItemLine {
  readonly ok: boolean
  readonly words: string
}

const saying = <T>(read: Outcome<T>, words: (value: T) => string): ItemLine =>
  read.ok
    ? { ok: true, words: words(read.value) }
    : { ok: false, words: read.problems.map(problemSentence).join(' ') }

const canWords = ({ code, seamDiameter, bodyDiameter, height, top }: Can, units: Units): string => {
  const long = (length: number): string => lengthIn(length, units)
  const open =
    top.kind === 'pull-off' || top.kind === 'friction' ? `, top open ${long(top.opening.value)}` : ''
  return `${code === null ? '' : `${code}: `}${long(seamDiameter.value)} over the seam, ${long(bodyDiameter.value)} at the wall, ${long(height.value)} high${open}`
}

/** Nobody can see less of a difference between two bits [m]. */
const SAME = 1e-6

/** Sizes of a bit or a step drill; of a bit that is called by its size only what its name does not say. */
const bitWords = (bits: readonly Bit[], name: string, units: Units): string => {
  const [bit, ...more] = bits
  const named = readBit(name, '')
  if (
    bit === undefined ||
    more.length > 0 ||
    !named.ok ||
    Math.abs(named.value.diameter - bit.diameter) > SAME
  )
    return bits.map(({ diameter }) => lengthIn(diameter, units)).join(', ')
  const wanted = units === 'both' ? (['mm', 'in'] as const) : [units]
  return wanted
    .map((unit) => lengthIn(bit.diameter, unit))
    .filter((size) => size !== named.value.name)
    .join(', ')
}

export const lineOf = ({ kind, name, value }: Shelved, units: Units): ItemLine => {
  if (value === null) return { ok: false, words: 'It does not read as a file of ours.' }
  switch (kind) {
    case 'can':
      return saying(readCanItem(value, name), (can) => canWords(can, units))
    case 'bit':
      return saying(readBitItem(value), (bits) => bitWords(bits, name, units))
    case 'fuel':
      return saying(readFuelItem(value), ({ kind: key, own, moisture }) => {
        const words = own?.name ?? (key === undefined ? '' : (fuelTable.get(key)?.label ?? key))
        return `${words}${moisture === undefined ? '' : `, moisture ${formatQuantity(moisture, 'fuelMoisture')}`}`
      })
    case 'pot':
      return saying(readPotItem(value), ({ diameter }) => `${lengthIn(diameter, units)} across`)
  }
}
