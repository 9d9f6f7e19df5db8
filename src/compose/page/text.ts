import { brokenLines } from '#basis/text/breaking.ts'

/** Words to lines no longer than `width` (but for a word that is longer), all but the first indented by `hang`; values stay whole. */
export const wrap = (text: string, width: number, indent = '', hang = indent): string => {
  const words = text.split(/[ \t\r\n]+/).filter((word) => word !== '')
  const lines = brokenLines(
    words.join(' '),
    (line, index) => (index === 0 ? indent : hang).length + line.length <= width,
  )
  return (lines.length === 0 ? [''] : lines).map((line, i) => `${i === 0 ? indent : hang}${line}`).join('\n')
}

/** A column keeps to the left, or its figures to the right. */
export type Align = 'left' | 'right'

/** A table, its columns two blanks apart, or one where two are too many for `width`: as wide as it needs to be. */
export const columns = (
  rows: readonly (readonly string[])[],
  align: readonly Align[],
  width = Number.POSITIVE_INFINITY,
  indent = '  ',
): string => {
  const widths = align.map((_, i) => Math.max(0, ...rows.map((row) => (row[i] ?? '').length)))
  const wide = indent.length + widths.reduce((sum, one) => sum + one + 2, -2)
  const gap = wide > width ? ' ' : '  '
  return rows
    .map((row) =>
      (
        indent +
        row
          .map((cell, i) =>
            align[i] === 'right' ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0),
          )
          .join(gap)
      ).trimEnd(),
    )
    .join('\n')
}

/** Short labels in a column, and beside each what is to be said, wrapped where it stands. */
export const labelled = (
  rows: readonly (readonly [label: string, text: string])[],
  width: number,
  indent = '  ',
): string => {
  const column = Math.max(0, ...rows.map(([label]) => label.length))
  const hang = ' '.repeat(indent.length + column + 2)
  return rows.map(([label, text]) => wrap(text, width, `${indent}${label.padEnd(column)}  `, hang)).join('\n')
}

/** A page: blocks with one empty line between them. */
export const page = (...blocks: readonly (string | null)[]): string =>
  `${blocks.filter((block) => block !== null && block !== '').join('\n\n')}\n`
