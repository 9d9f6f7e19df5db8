import type { Delimiter } from './mapping.ts'

/** Lines of a text, whatever ends them; a byte-order mark and an empty last line are none of it. */
export const linesOf = (text: string): readonly string[] => {
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\n|\r/)
  if (lines.at(-1) === '') lines.pop()
  return lines
}

const quoted = (line: string, by: string): readonly string[] => {
  const fields: string[] = []
  let field = ''
  let inside = false
  for (let i = 0; i < line.length; i++) {
    const char = line[i] as string
    if (inside) {
      if (char !== '"') field += char
      else if (line[i + 1] === '"') {
        field += '"'
        i++
      } else inside = false
    } else if (char === '"' && field.trim() === '') {
      inside = true
      field = ''
    } else if (char === by) {
      fields.push(field)
      field = ''
    } else field += char
  }
  fields.push(field)
  return fields
}

/** Fields of one line, blanks at their ends off. Quotation marks as in RFC 4180, for files that have them. */
export const fieldsOf = (line: string, delimiter: Delimiter): readonly string[] => {
  if (delimiter === 'blanks') return line.trim().split(/\s+/)
  const mark = delimiter === 'tab' ? '\t' : delimiter
  return (line.includes('"') ? quoted(line, mark) : line.split(mark)).map((field) => field.trim())
}
