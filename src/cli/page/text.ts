/** Words to lines no longer than `width`, all but the first indented by `hang`. */
export const wrap = (text: string, width: number, indent = '', hang = indent): string => {
  const lines: string[] = []
  let line = indent
  let empty = true
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line)
      line = hang
      empty = true
    }
    line += empty ? word : ` ${word}`
    empty = false
  }
  lines.push(line)
  return lines.join('\n')
}

/** A column keeps to the left, or its figures to the right. */
export type Align = 'left' | 'right'

/** Rows in columns two blanks apart; the last row is never padded. */
export const columns = (
  rows: readonly (readonly string[])[],
  align: readonly Align[],
  indent = '  ',
): string => {
  const widths = align.map((_, i) => Math.max(0, ...rows.map((row) => (row[i] ?? '').length)))
  return rows
    .map((row) =>
      (
        indent +
        row
          .map((cell, i) =>
            align[i] === 'right' ? cell.padStart(widths[i] ?? 0) : cell.padEnd(widths[i] ?? 0),
          )
          .join('  ')
      ).trimEnd(),
    )
    .join('\n')
}

/** A page: blocks with one empty line between them. */
export const page = (...blocks: readonly (string | null)[]): string =>
  `${blocks.filter((block) => block !== null && block !== '').join('\n\n')}\n`
