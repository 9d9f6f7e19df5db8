import type { RevisionHead } from '#wire/documents.ts'

/** A line of the tree: a stove, or one revision of it. */
export interface TreeNode {
  readonly key: string
  readonly kind: 'stove' | 'revision'
  readonly document: string
  /** Null for a stove. */
  readonly revision: RevisionHead | null
  /** What it was changed from: the revision before it, or the one that a variant was made from. */
  readonly from: string | null
  readonly children: readonly TreeNode[]
}

/** A line as it is shown: how deep it lies, and where arrow keys lead. */
export interface TreeLine {
  readonly node: TreeNode
  readonly level: number
  readonly parent: string | null
  readonly place: number
  readonly of: number
  readonly open: boolean
}

/** First among its parents that belongs to this family. */
const fromOf = ({ parents }: RevisionHead, all: ReadonlyMap<string, RevisionHead>): string | null =>
  parents.find((id) => all.has(id)) ?? null

/**
 * A family as a tree: a stove, its revisions in the order in which they were made, and under each revision the stoves that
 * were made from it.
 */
export const familyTree = (revisions: readonly RevisionHead[]): readonly TreeNode[] => {
  const all = new Map(revisions.map((one) => [one.id, one]))
  const byDocument = new Map<string, RevisionHead[]>()
  for (const one of revisions) byDocument.set(one.document, [...(byDocument.get(one.document) ?? []), one])
  const ordered = (some: readonly RevisionHead[]): readonly RevisionHead[] => {
    // By parent first: two clocks may disagree about which came before.
    const left = some.toSorted(
      (a, b) => Date.parse(a.created) - Date.parse(b.created) || (a.id < b.id ? -1 : 1),
    )
    const placed: RevisionHead[] = []
    const ids = new Set(left.map(({ id }) => id))
    while (left.length > 0) {
      const at = left.findIndex(({ parents }) =>
        parents.every((id) => !ids.has(id) || placed.some((one) => one.id === id)),
      )
      placed.push(...left.splice(Math.max(0, at), 1))
    }
    return placed
  }
  const originOf = (document: string): string | null => {
    const [first] = ordered(byDocument.get(document) ?? [])
    const from = first === undefined ? null : fromOf(first, all)
    return from !== null && all.get(from)?.document !== document ? from : null
  }
  const variants = new Map<string, string[]>()
  const founders: string[] = []
  for (const document of byDocument.keys()) {
    const origin = originOf(document)
    if (origin === null) founders.push(document)
    else variants.set(origin, [...(variants.get(origin) ?? []), document])
  }
  const seen = new Set<string>()
  const stove = (document: string): readonly TreeNode[] => {
    if (seen.has(document)) return []
    seen.add(document)
    const children = ordered(byDocument.get(document) ?? []).map(
      (revision): TreeNode => ({
        key: revision.id,
        kind: 'revision',
        document,
        revision,
        from: fromOf(revision, all),
        children: (variants.get(revision.id) ?? []).flatMap(stove),
      }),
    )
    return [{ key: `stove ${document}`, kind: 'stove', document, revision: null, from: null, children }]
  }
  // Stoves that were made from each other, which only damage brings about, are shown all the same.
  return [...founders, ...byDocument.keys()].flatMap(stove)
}

/** The lines that are to be seen, closed branches left out. */
export const treeLines = (roots: readonly TreeNode[], closed: ReadonlySet<string>): readonly TreeLine[] => {
  const lines: TreeLine[] = []
  const walk = (nodes: readonly TreeNode[], level: number, parent: string | null): void => {
    for (const [i, node] of nodes.entries()) {
      const open = node.children.length > 0 && !closed.has(node.key)
      lines.push({ node, level, parent, place: i + 1, of: nodes.length, open })
      if (open) walk(node.children, level + 1, node.key)
    }
  }
  walk(roots, 1, null)
  return lines
}

export type TreeMove =
  | { readonly kind: 'go'; readonly key: string }
  | { readonly kind: 'open' | 'close'; readonly key: string }

/** What an arrow key does on a line, by the tree pattern of WAI-ARIA; null: nothing. */
export const treeMove = (lines: readonly TreeLine[], at: string, key: string): TreeMove | null => {
  const index = lines.findIndex(({ node }) => node.key === at)
  const line = lines[index]
  if (line === undefined) return null
  const go = (to: TreeLine | undefined): TreeMove | null =>
    to === undefined ? null : { kind: 'go', key: to.node.key }
  switch (key) {
    case 'ArrowDown':
      return go(lines[index + 1])
    case 'ArrowUp':
      return go(lines[index - 1])
    case 'Home':
      return go(lines[0])
    case 'End':
      return go(lines.at(-1))
    case 'ArrowRight':
      if (line.node.children.length === 0) return null
      return line.open ? go(lines[index + 1]) : { kind: 'open', key: at }
    case 'ArrowLeft':
      if (line.open) return { kind: 'close', key: at }
      return line.parent === null ? null : { kind: 'go', key: line.parent }
    default:
      return null
  }
}
