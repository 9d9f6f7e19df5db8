import type { TextFile } from './files.ts'

/** One entry of `docs/references.bib`. */
export interface Entry {
  readonly key: string
  readonly kind: string
  readonly fields: ReadonlyMap<string, string>
}

export interface Bibliography {
  readonly entries: readonly Entry[]
  readonly faults: readonly string[]
}

/** A source named at a line, as it stands there: `[bib:key]` or `[bib:key, eq. 5]`. */
export interface Citation {
  /** Null where the notation is broken. */
  readonly key: string | null
  /** `path:line` */
  readonly at: string
  readonly written: string
}

const KEY = '[a-z][a-z0-9-]*'

/** The text between a brace and its partner, and where it ends; null when the partner is missing. */
const braced = (text: string, open: number): { readonly inner: string; readonly end: number } | null => {
  let depth = 0
  for (let at = open; at < text.length; at++) {
    if (text[at] === '{') depth++
    if (text[at] === '}') depth--
    if (depth === 0) return { inner: text.slice(open + 1, at), end: at + 1 }
  }
  return null
}

const readFields = (body: string): ReadonlyMap<string, string> => {
  const fields = new Map<string, string>()
  const name = /([a-z]+)\s*=\s*/gi
  for (let match = name.exec(body); match !== null; match = name.exec(body)) {
    const start = name.lastIndex
    const value = body[start] === '{' ? braced(body, start) : null
    const plain = /^"([^"]*)"|^([0-9]+)/.exec(body.slice(start))
    const text = value?.inner ?? plain?.[1] ?? plain?.[2] ?? ''
    fields.set((match[1] ?? '').toLowerCase(), text.trim())
    name.lastIndex = value?.end ?? start + (plain?.[0].length ?? 0)
  }
  return fields
}

const AUTHORITY = ['author', 'editor', 'organization', 'institution']

const entryFaults = (entry: Entry): readonly string[] => {
  const lacks = (name: string): boolean => (entry.fields.get(name) ?? '') === ''
  return [
    ...(new RegExp(`^${KEY}$`).test(entry.key)
      ? []
      : [`"${entry.key}" is no key: small letters, digits, hyphens`]),
    ...['title', 'year'].filter(lacks).map((name) => `${entry.key} has no ${name}`),
    ...(AUTHORITY.every(lacks) ? [`${entry.key} says neither author nor editor nor organization`] : []),
  ]
}

/** Reads BibTeX: entries in braces, lines that start with % are remarks. */
export const readBibliography = (bib: string): Bibliography => {
  const text = bib.replace(/^\s*%.*$/gm, '')
  const entries: Entry[] = []
  const faults: string[] = []
  const head = /@([a-z]+)\s*\{/gi
  for (let match = head.exec(text); match !== null; match = head.exec(text)) {
    const body = braced(text, head.lastIndex - 1)
    if (body === null) {
      faults.push(`the entry "${text.slice(match.index, match.index + 30).trim()}" has no closing brace`)
      break
    }
    const comma = body.inner.indexOf(',')
    const key = (comma < 0 ? body.inner : body.inner.slice(0, comma)).trim()
    const fields = readFields(comma < 0 ? '' : body.inner.slice(comma + 1))
    entries.push({ key, kind: (match[1] ?? '').toLowerCase(), fields })
    head.lastIndex = body.end
  }
  const keys = entries.map(({ key }) => key)
  const twice = [...new Set(keys.filter((key, index) => keys.indexOf(key) !== index))]
  return {
    entries,
    faults: [...faults, ...entries.flatMap(entryFaults), ...twice.map((key) => `${key} stands there twice`)],
  }
}

/** Every source named in a file. */
export const citations = ({ path, text }: TextFile): readonly Citation[] =>
  text.split('\n').flatMap((line, index) =>
    [...line.matchAll(/\[bib:[^\]]*\]?/g)].map(([written]) => ({
      key: new RegExp(`^\\[bib:(${KEY})(?:, [^\\]]+)?\\]$`).exec(written)?.[1] ?? null,
      at: `${path}:${index + 1}`,
      written,
    })),
  )

/** What is wrong between the bibliography and those who cite it, as sentences. */
export const bibliographyFaults = (bib: string, files: readonly TextFile[]): readonly string[] => {
  const { entries, faults } = readBibliography(bib)
  const cited = files.flatMap(citations)
  const known = new Set(entries.map(({ key }) => key))
  const used = new Set(cited.map(({ key }) => key))
  const isBackground = (entry: Entry): boolean => /\bbackground\b/.test(entry.fields.get('keywords') ?? '')
  return [
    ...faults,
    ...cited
      .filter(({ key }) => key === null)
      .map(({ at, written }) => `${at}: ${written} is not written as [bib:key] or [bib:key, place]`),
    ...cited
      .filter(({ key }) => key !== null && !known.has(key))
      .map(({ at, key }) => `${at}: ${key} is not in docs/references.bib`),
    ...entries
      .filter((entry) => !used.has(entry.key) && !isBackground(entry))
      .map(({ key }) => `${key} is cited nowhere: cite it, or give it keywords = {background}`),
  ]
}
