/** A source as a page shows it. */
export interface Reference {
  readonly key: string
  /** `Ergun: Fluid flow through packed columns (1952)` */
  readonly text: string
}

/** Letters that BibTeX writes with accents. */
const ACCENTS: Readonly<Record<string, string>> = {
  '"': '\u0308',
  "'": '\u0301',
  '`': '\u0300',
  '^': '\u0302',
  '~': '\u0303',
  c: '\u0327',
}

const plain = (text: string): string =>
  text
    .replace(/\{?\\(["'`^~]|c\s)\s*\{?([A-Za-z])\}?\}?/g, (_, accent: string, letter: string) =>
      `${letter}${ACCENTS[accent.trim()] ?? ''}`.normalize('NFC'),
    )
    .replace(/[{}]/g, '')
    .replace(/\s+/g, ' ')
    .trim()

const field = (entry: string, name: string): string => {
  const start = new RegExp(`^\\s*${name}\\s*=\\s*\\{`, 'm').exec(entry)
  if (start === null) return ''
  const from = start.index + start[0].length
  let depth = 1
  let at = from
  while (at < entry.length && depth > 0) {
    if (entry[at] === '{') depth += 1
    if (entry[at] === '}') depth -= 1
    at += 1
  }
  return plain(entry.slice(from, at - 1))
}

/** Surnames; of more than two authors the first. */
const authors = (text: string): string => {
  const names = text.split(' and ').map((name) => name.split(',')[0] ?? name)
  return names.length > 2 ? `${names[0]} and others` : names.join(' and ')
}

/** Reads the bibliography of docs, entry by entry. */
export const readReferences = (bib: string): ReadonlyMap<string, Reference> => {
  const found = new Map<string, Reference>()
  for (const entry of bib.split(/^(?=@[a-z]+\{)/m)) {
    const key = /^@[a-z]+\{([^,\s]+),/.exec(entry)?.[1]
    if (key === undefined) continue
    const who = authors(field(entry, 'author') || field(entry, 'organization') || field(entry, 'institution'))
    const year = /^\d{4}$/.exec(field(entry, 'year'))?.[0] ?? ''
    const text = `${who === '' ? '' : `${who}: `}${field(entry, 'title')}${year === '' ? '' : ` (${year})`}`
    found.set(key, { key, text })
  }
  return found
}
