import type { JsonValue } from '#stove/document/json.ts'
import { readBitItem, readCanItem, type ShelfKind } from '#stove/document/shelfItem.ts'
import type { Bit, Can, Shelf } from '#stove/model.ts'

/** What of a thing on the shelf counts here. */
export interface Shelved {
  readonly kind: ShelfKind
  readonly name: string
  readonly value: JsonValue | null
}

/** A name that is taken already gets a number: two equal cans are two cans. */
const freeName = (name: string, taken: ReadonlyMap<string, unknown>): string => {
  let free = name
  for (let n = 2; taken.has(free); n += 1) free = `${name} ${n}`
  return free
}

/** Cans and bits as the pure rooms take them [m]. What does not read is left out: its own row says why. */
export const shelfOf = (items: readonly Shelved[]): Shelf => {
  const cans = new Map<string, Can>()
  const bits: Bit[] = []
  for (const { kind, name, value } of items) {
    if (value === null) continue
    if (kind === 'can') {
      const can = readCanItem(value, name)
      if (can.ok) cans.set(freeName(name, cans), can.value)
    } else if (kind === 'bit') {
      const read = readBitItem(value)
      if (read.ok) bits.push(...read.value)
    }
  }
  return { bits, cans }
}
