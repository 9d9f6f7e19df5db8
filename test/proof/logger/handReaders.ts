// Readers of the tests' own for what loggers write: nothing of the house's reader is used here.

/** Fields of a line: quotation marks hold what is between them together. */
export const cellsOf = ({ between }: { readonly between: string }, line: string): readonly string[] => {
  if (between === ' ') return line.match(/\S+/g) ?? []
  const cells = ['']
  let open = false
  for (let i = 0; i < line.length; i++) {
    const char = line[i] as string
    const last = cells.length - 1
    if (open && char === '"' && line[i + 1] === '"') {
      cells[last] += '"'
      i++
    } else if (open && char === '"') open = false
    else if (!open && char === '"' && (cells[last] as string).trim() === '') {
      open = true
      cells[last] = ''
    } else if (!open && char === between) cells.push('')
    else cells[last] += char
  }
  return cells.map((cell) => cell.trim())
}

const isFigures = (text: string): boolean =>
  text !== '' && [...text].every((char) => char >= '0' && char <= '9')

/** A number in those marks, as a person reads it. */
export const numberOf = (written: string, decimal: string, thousands = ''): number | null => {
  let text = written.replace('\u2212', '-')
  const [body = '', power, ...more] = text.toLowerCase().split('e')
  if (more.length > 0 || (power !== undefined && !isFigures(power.replace(/^[+-]/, '')))) return null
  text = body
  const sign = text.startsWith('-') ? -1 : 1
  if (/^[+-]/.test(text)) text = text.slice(1)
  const [whole = '', part, ...rest] = text.split(decimal)
  if (rest.length > 0 || (part !== undefined && part !== '' && !isFigures(part))) return null
  const groups = thousands === '' ? [whole] : whole.split(thousands)
  if (groups.length > 1 && groups.some((group, i) => (i === 0 ? group.length > 3 : group.length !== 3)))
    return null
  const figures = groups.join('')
  if (
    !(isFigures(figures) && groups.every(isFigures)) &&
    !(whole === '' && part !== undefined && part !== '')
  )
    return null
  const value = sign * Number(`${figures || '0'}.${part || '0'}e${power ?? '0'}`)
  return Number.isFinite(value) ? value : null
}

const OF_SECONDS: Readonly<Record<string, number>> = { s: 1, ms: 1e-3, min: 60, h: 3600 }

/** Elapsed time of a column, by the unit it counts in [s]. */
export const counted =
  (column: number, decimal = '.', thousands = '') =>
  (cells: readonly string[], unit: string): number | null => {
    const value = numberOf(cells[column] ?? '', decimal, thousands)
    return value === null ? null : value * (OF_SECONDS[unit] ?? Number.NaN)
  }

/** `9:12:04` with exactly so many parts, the first below `most`. */
export const clock = (text: string, parts: 2 | 3, most: number): number | null => {
  const found = text.split(':')
  if (found.length !== parts) return null
  const [first = '', ...others] = found
  if (!isFigures(first) || Number(first) >= most) return null
  const last = others.at(-1)?.replace(',', '.') ?? ''
  if (!/^\d\d(?:\.\d+)?$/.test(last) || others.slice(0, -1).some((one) => !/^\d\d$/.test(one))) return null
  if (parts === 2 && last.includes('.')) return null
  const values = [...others.slice(0, -1), last].map(Number)
  if (values.some((value) => value >= 60)) return null
  const scale = parts === 3 ? [60, 1] : [1]
  return Number(first) * 60 * (scale[0] ?? 1) + values.reduce((sum, v, i) => sum + v * (scale[i] ?? 1), 0)
}

const halfDay = (text: string): number | null => {
  const [, time = '', half = ''] = /^(\S+?) ?([ap])\.?m\.?$/i.exec(text) ?? []
  const at = clock(time, 3, 13)
  if (at === null || at < 3600) return null
  return (at % 43_200) + (half.toLowerCase() === 'p' ? 43_200 : 0)
}

/** Midnight of a written day; `places` says where year, month and day stand [s since 1970]. */
export const day = (text: string, mark: string, places: readonly [number, number, number]): number | null => {
  const parts = text.split(mark)
  if (parts.length !== 3 || !parts.every(isFigures)) return null
  const [year = 0, month = 0, date = 0] = places.map((place) => Number(parts[place]))
  const length = (parts[places[0]] as string).length
  if (length !== 4 && length !== 2) return null
  const full = length === 2 ? 2000 + year : year
  const days = [
    31,
    full % 4 === 0 && (full % 100 !== 0 || full % 400 === 0) ? 29 : 28,
    31,
    30,
    31,
    30,
    31,
    31,
  ]
  const most = [...days, 30, 31, 30, 31][month - 1]
  return most !== undefined && date >= 1 && date <= most ? Date.UTC(full, month - 1, date) / 1000 : null
}

export const both = (date: number | null, time: number | null): number | null =>
  date === null || time === null ? null : date + time

/** `3/14/2031 9:12:04 pm`, month first. */
export const american = (cells: readonly string[]): number | null => {
  const [, date = '', time = ''] = /^(\S+) +(.*)$/.exec(cells[0] ?? '') ?? []
  return both(day(date, '/', [2, 0, 1]), halfDay(time))
}
