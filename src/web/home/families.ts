import type { DocumentHead, RevisionHead } from '#wire/documents.ts'

/** A stove among its relations. */
export interface Relation {
  readonly stove: DocumentHead
  /** The stove it was made from, where that is there. */
  readonly from: DocumentHead | null
}

/** A stove and all that descend from it, each behind what it was made from. */
export interface StoveFamily {
  readonly founder: DocumentHead
  readonly members: readonly Relation[]
}

/** For every document, the one that its first revision was made from; null for one of its own. */
export type Origins = ReadonlyMap<string, string | null>

/** Reads from revisions which document was made from which. */
export const originsIn = (revisions: readonly RevisionHead[]): Origins => {
  const documentOf = new Map(revisions.map(({ id, document }) => [id, document]))
  const origins = new Map<string, string | null>()
  for (const { document, parents } of revisions) {
    const [foreign] = parents
      .map((id) => documentOf.get(id))
      .filter((one) => one !== undefined && one !== document)
    if (foreign !== undefined || !origins.has(document)) origins.set(document, foreign ?? null)
  }
  return origins
}

/** Stoves by family, founders in the order in which they were made. */
export const familiesOf = (stoves: readonly DocumentHead[], origins: Origins): readonly StoveFamily[] => {
  const here = new Map(stoves.map((stove) => [stove.id, stove]))
  /** Through what was taken away up to the next that is there. */
  const parentOf = ({ id }: DocumentHead): DocumentHead | null => {
    const passed = new Set([id])
    let at = origins.get(id) ?? null
    while (at !== null && !passed.has(at)) {
      const there = here.get(at)
      if (there !== undefined) return there
      passed.add(at)
      at = origins.get(at) ?? null
    }
    return null
  }
  const children = new Map<string, DocumentHead[]>()
  const founders: DocumentHead[] = []
  for (const stove of stoves) {
    const parent = parentOf(stove)
    if (parent === null) founders.push(stove)
    else children.set(parent.id, [...(children.get(parent.id) ?? []), stove])
  }
  const below = (parent: DocumentHead): readonly Relation[] =>
    (children.get(parent.id) ?? []).flatMap((stove) => [{ stove, from: parent }, ...below(stove)])
  return founders.map((founder) => ({
    founder,
    members: [{ stove: founder, from: null }, ...below(founder)],
  }))
}
