/** A figure keeps the unit that follows it: `12 %`, `6 3/16 in`, `0.22 g/s`. */
const FIGURE_AND_UNIT =
  /(?<=\d) (?=(?:±|×|%|°C|°F|mm²?|in²?|\d+\/\d+ in|ft³?|m³|[mk]?g|oz|lb|k?W|MJ|Btu|h?Pa|inHg|mph|min|mL|L|US (?:fl oz|qt)|h|s|m)(?![\p{L}\p{N}]))/gu
const KEEP = '\u00a0'

/** Words to lines no longer than `width` (but for a word that is longer), all but the first indented by `hang`. */
export const wrap = (text: string, width: number, indent = '', hang = indent): string => {
  const words = text
    .replace(FIGURE_AND_UNIT, KEEP)
    .split(/[ \t\r\n]+/)
    .filter((word) => word !== '')
  const lines: string[] = []
  let line = indent
  let empty = true
  for (const word of words) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line)
      line = hang
      empty = true
    }
    line += empty ? word : ` ${word}`
    empty = false
  }
  lines.push(line)
  return lines.join('\n').replaceAll(KEEP, ' ')
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
