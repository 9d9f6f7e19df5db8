import type { Block, Blocks } from './block.ts'
import { type Orientation, type PaperName, pageFrame } from './paper.ts'

/** Between blocks that share a page [mm]. */
const GAP = 5

/** A block on a page, its lower left corner at (x, y). */
export interface PlacedBlock {
  readonly block: Block
  readonly x: number
  readonly y: number
}

interface Shelf {
  readonly top: number
  readonly height: number
  readonly right: number
}

export interface PackedPage {
  readonly way: Orientation
  readonly placed: readonly PlacedBlock[]
  readonly shelves: readonly Shelf[]
}

/** The page with a block set on its first shelf with room, or on a new one under them; null if it will not go. */
const withBlock = (page: PackedPage, block: Block, paper: PaperName): PackedPage | null => {
  const { field } = pageFrame(paper, page.way)
  const set = (shelf: Shelf, x: number, shelves: readonly Shelf[]): PackedPage => ({
    ...page,
    placed: [...page.placed, { block, x, y: shelf.top - block.height }],
    shelves: [...shelves, { ...shelf, right: x + block.width }],
  })
  for (const shelf of page.shelves) {
    const x = shelf.right + GAP
    if (block.height <= shelf.height + 1e-9 && x + block.width <= field.right + 1e-9)
      return set(
        shelf,
        x,
        page.shelves.filter((other) => other !== shelf),
      )
  }
  const lowest = Math.min(field.top + GAP, ...page.shelves.map(({ top, height }) => top - height))
  const top = lowest - GAP
  if (top - block.height < field.bottom - 1e-9 || block.width > field.right - field.left + 1e-9) return null
  return set({ top, height: block.height, right: field.left }, field.left, page.shelves)
}

const emptyPage = (way: Orientation): PackedPage => ({ way, placed: [], shelves: [] })

const withAll = (page: PackedPage, blocks: readonly Block[], paper: PaperName): PackedPage | null =>
  blocks.reduce<PackedPage | null>((so, block) => (so === null ? null : withBlock(so, block, paper)), page)

/**
 * Sets blocks on few pages, in rows like books on shelves. The pieces of one drawing stay on one page if
 * they fit one; else none comes before its first piece. Drawings that are cut for a page lying flat go
 * first, so that the others can fill what they leave; then the tallest first. Pages come in the order of
 * the drawings they begin with. The same blocks always give the same pages.
 */
export const packPages = (drawings: readonly Blocks[], paper: PaperName): readonly PackedPage[] => {
  const turn = new Map(drawings.flatMap(({ blocks }) => blocks).map((block, index) => [block, index]))
  // Notes that found room beside a piece do not pull it before the pieces that come first.
  const turnOf = ({ placed }: PackedPage): number => {
    const pieces = placed.filter(({ block }) => block.piece !== null)
    return Math.min(
      ...(pieces.length > 0 ? pieces : placed).map(
        ({ block }) => turn.get(block) ?? Number.POSITIVE_INFINITY,
      ),
    )
  }
  const pages: PackedPage[] = []
  const setTogether = (blocks: readonly Block[], way: Orientation, notBefore: number): boolean => {
    for (const [index, page] of pages.entries()) {
      const fuller = turnOf(page) < notBefore ? null : withAll(page, blocks, paper)
      if (fuller === null) continue
      pages[index] = fuller
      return true
    }
    const fresh = withAll(emptyPage(way), blocks, paper)
    if (fresh !== null) pages.push(fresh)
    return fresh !== null
  }
  const isFlat = ({ way }: Blocks): number => Number(way === 'landscape')
  const tall = ({ blocks }: Blocks): number => blocks.reduce((sum, { height }) => sum + height, 0)
  // Sorting keeps the order of equals.
  const inTurn = [...drawings].sort((a, b) => isFlat(b) - isFlat(a) || tall(b) - tall(a))
  for (const { way, blocks } of inTurn) {
    if (setTogether(blocks, way, 0)) continue
    for (const [index, block] of blocks.entries())
      setTogether([block], way, index === 0 ? 0 : (turn.get(blocks[0] ?? block) ?? 0))
  }
  return inOrder(pages, drawings, turnOf)
}

/**
 * Pages by the drawing they begin with, but none with a later piece before the page of its first piece; notes by themselves
 * come after the last piece they speak of.
 */
const inOrder = (
  pages: readonly PackedPage[],
  drawings: readonly Blocks[],
  turnOf: (page: PackedPage) => number,
): readonly PackedPage[] => {
  const pageOf = new Map(pages.flatMap((page) => page.placed.map(({ block }) => [block, page] as const)))
  const firstOf = new Map(
    drawings.flatMap(({ blocks }) => blocks.map((block) => [block, blocks[0]] as const)),
  )
  const lastOf = new Map(
    drawings.flatMap(({ blocks }) => blocks.map((block) => [block, blocks.at(-2)] as const)),
  )
  const homeOf = (block: Block | undefined): number => {
    const home = block === undefined ? undefined : pageOf.get(block)
    return home === undefined ? 0 : turnOf(home)
  }
  const place = (page: PackedPage): number => {
    if (page.placed.every(({ block }) => block.piece === null))
      return Math.max(...page.placed.map(({ block }) => homeOf(lastOf.get(block)) + 0.75))
    return Math.max(
      turnOf(page),
      ...page.placed.map(({ block }) => {
        const first = firstOf.get(block)
        const home = first === undefined ? undefined : pageOf.get(first)
        return home === undefined || home === page ? 0 : turnOf(home) + 0.5
      }),
    )
  }
  return [...pages].sort((a, b) => place(a) - place(b))
}
