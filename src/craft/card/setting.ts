import { brokenLines } from '#basis/text/breaking.ts'
import type { Outlines } from '../lettering/outline.ts'
import type { Block } from './block.ts'
import type { Words } from './board.ts'
import type { CardFormat } from './format.ts'

/** Words side by side on one base line, and how far that lies under the top of its row [px]. */
export interface Row {
  readonly runs: readonly Words[]
  readonly height: number
}

/** A block broken into rows; it is not parted unless it is taller than a card by itself. */
export interface SetBlock {
  readonly rows: readonly Row[]
  readonly height: number
}

/** From base line to base line [em]. */
const LEADING = 1.16
/** Between blocks, in ems of their lines. */
export const BLOCK_GAP = 0.68
/** Between a name and the key beside it [em]. */
export const RUN_GAP = 0.4

/** Breaks text into lines, sizes whole where they can be; a word wider than the line goes on in the next. */
export const broken = (
  outlines: Outlines,
  { text, em, weight }: Pick<Words, 'text' | 'em' | 'weight'>,
  width: number,
): readonly string[] => {
  const fits = (line: string): boolean => outlines.width(line, em, weight) <= width
  return brokenLines(text, fits).flatMap((line) => {
    if (fits(line)) return [line]
    const pieces = ['']
    for (const letter of line) {
      const last = pieces.pop() as string
      if (last !== '' && !fits(last + letter)) pieces.push(last, letter)
      else pieces.push(last + letter)
    }
    return pieces
  })
}

/** Text cut short with an ellipsis where it is wider than `width`. */
export const shortened = (
  outlines: Outlines,
  { text, em, weight }: Pick<Words, 'text' | 'em' | 'weight'>,
  width: number,
): string => {
  if (outlines.width(text, em, weight) <= width) return text
  const letters = [...text]
  while (letters.length > 0 && outlines.width(`${letters.join('')}…`, em, weight) > width) letters.pop()
  return `${letters.join('').trimEnd()}…`
}

const rowOf = (...runs: readonly Words[]): Row => ({
  runs,
  height: LEADING * Math.max(...runs.map(({ em }) => em)),
})

const runsWidth = (outlines: Outlines, runs: readonly Words[]): number =>
  runs.reduce((sum, { text, em, weight }) => sum + outlines.width(text, em, weight), 0) +
  runs.slice(1).reduce((sum, { em }) => sum + RUN_GAP * em, 0)

const rowsOf = (outlines: Outlines, block: Block, { em }: CardFormat, width: number): readonly Row[] => {
  const name: Words = { text: block.name, em: em.name, weight: 'semibold', ink: 'ember' }
  const key: Words | null =
    block.key === null ? null : { text: block.key, em: em.key, weight: 'semibold', ink: 'ink' }
  const beside = key === null ? [name] : [name, key]
  const isOneRow = block.keyPlace === 'beside' && runsWidth(outlines, beside) <= width
  const head = isOneRow
    ? [rowOf(...beside)]
    : [
        ...broken(outlines, name, width).map((text) => rowOf({ ...name, text })),
        ...(key === null ? [] : broken(outlines, key, width).map((text) => rowOf({ ...key, text }))),
      ]
  const line: Omit<Words, 'text'> = { em: em.line, weight: 'regular', ink: 'ink' }
  return [
    ...head,
    ...block.lines.flatMap((each) =>
      broken(outlines, { ...line, text: each }, width).map((text) => rowOf({ ...line, text })),
    ),
  ]
}

const heightOf = (rows: readonly Row[]): number => rows.reduce((sum, { height }) => sum + height, 0)

/** Rows of a block that is too tall, parted; its name comes again over what follows. */
const parted = (rows: readonly Row[], height: number): readonly (readonly Row[])[] => {
  const [name] = rows
  const parts: Row[][] = [[]]
  for (const row of rows) {
    let last = parts.at(-1) as Row[]
    if (last.length > 1 && heightOf(last) + row.height > height) {
      last = name === undefined ? [] : [name]
      parts.push(last)
    }
    last.push(row)
  }
  return parts
}

/** Blocks under one another. */
export type Column = readonly { readonly block: Block; readonly set: SetBlock }[]

export const columnWidth = ({ text, columns: { count, gap } }: CardFormat): number =>
  (text.right - text.left - (count - 1) * gap) / count

/** Height of a column [px]. */
export const columnHeight = ({ em }: CardFormat, column: Column): number =>
  column.reduce((sum, { set }) => sum + set.height, 0) + Math.max(0, column.length - 1) * BLOCK_GAP * em.line

/** Blocks in as many columns as they need, none smaller for it: in each those that find room. */
export const dealt = (
  outlines: Outlines,
  blocks: readonly Block[],
  format: CardFormat,
  { width, height }: { readonly width: number; readonly height: number },
): readonly Column[] => {
  const gap = BLOCK_GAP * format.em.line
  const columns: { readonly block: Block; readonly set: SetBlock }[][] = [[]]
  let used = 0
  for (const block of blocks)
    for (const rows of parted(rowsOf(outlines, block, format, width), height)) {
      const set = { rows, height: heightOf(rows) }
      if (used > 0 && used + gap + set.height > height) {
        columns.push([])
        used = 0
      }
      used += (used > 0 ? gap : 0) + set.height
      columns.at(-1)?.push({ block, set })
    }
  return columns
}
