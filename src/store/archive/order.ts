/**
 * Things in an order in which what each needs stands before it; null where they go round in a circle or one
 * stands there twice. What a thing needs and is not among them is not looked at.
 */
export const inOrder = <T extends { readonly id: string }>(
  things: readonly T[],
  needs: (thing: T) => readonly string[],
): readonly T[] | null => {
  const byId = new Map(things.map((thing) => [thing.id, thing]))
  if (byId.size !== things.length) return null
  const open = new Map<string, number>()
  const waiting = new Map<string, T[]>()
  for (const thing of things) {
    const needed = new Set(needs(thing).filter((id) => byId.has(id)))
    open.set(thing.id, needed.size)
    for (const id of needed) {
      const others = waiting.get(id)
      if (others === undefined) waiting.set(id, [thing])
      else others.push(thing)
    }
  }
  // Without recursion: a chain of revisions may be long. [bib:kahn1962]
  const placed = things.filter(({ id }) => open.get(id) === 0)
  for (const { id } of placed) {
    for (const thing of waiting.get(id) ?? []) {
      const left = (open.get(thing.id) ?? 0) - 1
      open.set(thing.id, left)
      if (left === 0) placed.push(thing)
    }
  }
  return placed.length === things.length ? placed : null
}
