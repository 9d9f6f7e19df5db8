import { type CanItem, readCanItem } from '#stove/document/shelfItem.ts'
import type { ShelfCan } from '#stove/start/choice.ts'
import type { ShelfItem } from '../shelf/items.ts'

/** The cans of the shelf that read, each by a name of its own. */
export const shelfCans = (items: readonly ShelfItem[]): readonly ShelfCan[] => {
  const names = new Set<string>()
  return items.flatMap(({ kind, name, value }) => {
    if (kind !== 'can' || value === null) return []
    const read = readCanItem(value, name)
    if (!read.ok) return []
    let free = name
    for (let n = 2; names.has(free); n += 1) free = `${name} ${n}`
    names.add(free)
    return [{ name: free, item: value as unknown as CanItem, can: read.value }]
  })
}
