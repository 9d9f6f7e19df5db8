import type { Drawing, Point } from '../drawing.ts'
import { assemblyMap } from './assemblyMap.ts'
import { type Cut, type Cutting, cutDrawing, type FieldSize, HOLE_COST } from './cutting.ts'
import { type SetNotes, setNotes } from './notes.ts'
import { fieldSize, type Orientation, type PaperName } from './paper.ts'

/** A piece of a drawing with its words, or words alone, ready to be set on a page. */
export interface Block {
  /** Title of the drawing. */
  readonly title: string
  /** Number of the piece and how many there are; null for words alone. */
  readonly piece: {
    readonly number: number
    readonly of: number
    readonly cut: Cut
    readonly at: Point
  } | null
  readonly words: SetNotes
  readonly wordsAt: Point
  readonly width: number
  readonly height: number
}

/** A drawing as the blocks it needs, and the way its pages lie. */
export interface Blocks {
  readonly way: Orientation
  readonly blocks: readonly Block[]
}

/** Between words and drawing [mm]. */
const GAP = { beside: 6, under: 2 }
/** Width of a column of words [mm]: beside a drawing it is narrow, over one it may be as wide as reads well. */
const COLUMN = { beside: 84, least: 100, most: 178 }
/** Room kept for a heading and how a piece is laid, when a drawing is cut [mm]. */
const HEADING_ROOM = 22

/** What to do with a piece. The first lies still. */
const assembly = ({ columns, cuts }: Cutting, { column, row }: Cut): string => {
  const number = row * columns + column + 1
  if (number === 1) {
    const others = cuts.length === 2 ? 'piece 2 is' : 'the others are'
    return `Lay this piece down; ${others} cut along the dash-dot line, laid over it and taped.`
  }
  const edges = [...(column > 0 ? ['left'] : []), ...(row > 0 ? ['top'] : [])].join(' and ')
  const under = [...(column > 0 ? [number - 1] : []), ...(row > 0 ? [number - columns] : [])].join(' and ')
  return `Cut along the dash-dot line on the ${edges}, lay over piece ${under}, crosses on crosses, and tape.`
}

/** Words over the drawing, or beside it where it leaves room for them. */
const join = (
  { title, words: write }: { readonly title: string; readonly words: (width: number) => SetNotes },
  piece: Omit<NonNullable<Block['piece']>, 'at'>,
  field: FieldSize,
): Block => {
  const { left, right, bottom, top } = piece.cut.clip
  const [width, height] = [right - left, top - bottom]
  if (width + GAP.beside + COLUMN.beside <= field.width) {
    const words = write(COLUMN.beside)
    const tall = Math.max(height, words.height)
    return {
      title,
      piece: { ...piece, at: { x: 0, y: tall - height } },
      words,
      wordsAt: { x: width + GAP.beside, y: tall - words.height },
      width: width + GAP.beside + words.width,
      height: tall,
    }
  }
  const words = write(width > COLUMN.least ? Math.min(COLUMN.most, field.width) : COLUMN.least)
  return {
    title,
    piece: { ...piece, at: { x: 0, y: 0 } },
    words,
    wordsAt: { x: 0, y: height + GAP.under },
    width: Math.max(width, words.width),
    height: height + GAP.under + words.height,
  }
}

/**
 * The pieces of a drawing with their words. Where the notes leave no room for the first piece, they stand alone, after the
 * pieces, so that they find room under one of them.
 */
const blocksOfCutting = (cutting: Cutting, field: FieldSize): readonly Block[] => {
  const { drawing, cuts } = cutting
  const { title, notes } = drawing
  const isWhole = cuts.length === 1
  const notesTitle = `${title}: notes`
  const blockOf = (cut: Cut, number: number, extra: readonly string[]): Block => {
    const heading = isWhole ? title : `${title}, piece ${number} of ${cuts.length}`
    const paragraphs = isWhole ? extra : [assembly(cutting, cut), ...extra]
    return join(
      { title, words: (width) => setNotes(heading, paragraphs, width, assemblyMap(cutting, cut)) },
      { number, of: cuts.length, cut },
      field,
    )
  }
  const rest = cuts.slice(1).map((cut, index) => blockOf(cut, index + 2, []))
  const first = cuts[0] as Cut
  const together = blockOf(first, 1, notes)
  if (together.height <= field.height) return [together, ...rest]
  const words = setNotes(notesTitle, notes, Math.min(COLUMN.most, field.width))
  const alone: Block = {
    title,
    piece: null,
    words,
    wordsAt: { x: 0, y: 0 },
    width: words.width,
    height: words.height,
  }
  return [blockOf(first, 1, [`What to drill and cut: see “${notesTitle}”.`]), ...rest, alone]
}

const cutFor = (drawing: Drawing, field: FieldSize): Cutting =>
  cutDrawing(drawing, { width: field.width, height: field.height - HEADING_ROOM })

/** Words that a join runs through are no reason to turn the page, holes are. */
const holesCut = ({ cost }: Cutting): number => Math.floor(cost / HOLE_COST)

/** Cuts a drawing the way round that takes the fewest pieces, then the one that cuts fewer holes, then upright. */
export const blocksOf = (drawing: Drawing, paper: PaperName): Blocks => {
  const [upright, flat] = [fieldSize(paper, 'portrait'), fieldSize(paper, 'landscape')]
  const [uprightCut, flatCut] = [cutFor(drawing, upright), cutFor(drawing, flat)]
  const better = flatCut.cuts.length - uprightCut.cuts.length || holesCut(flatCut) - holesCut(uprightCut)
  return better < 0
    ? { way: 'landscape', blocks: blocksOfCutting(flatCut, flat) }
    : { way: 'portrait', blocks: blocksOfCutting(uprightCut, upright) }
}
