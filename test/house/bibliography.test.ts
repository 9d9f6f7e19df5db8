import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { bibliographyFaults, citations, readBibliography } from './bibliography.ts'
import { filesUnder, ROOT } from './files.ts'

const ENTRY = `% a remark with {braces
@article{ergun1952,
  author = {Ergun, Sabri},
  title = {Fluid flow through {Packed} columns},
  journal = "Chemical Engineering Progress",
  year = 1952,
}
`
const entry = (change: (text: string) => string): string => change(ENTRY)
const source = (text: string) => [{ path: 'src/science/draft/bed.ts', text }]

describe('docs/references.bib', () => {
  it('holds every source that is cited, and no other', () => {
    const bib = readFileSync(join(ROOT, 'docs/references.bib'), 'utf8')
    const endings = ['.ts', '.tsx', '.mjs', '.js', '.py', '.json', '.md']
    const files = ['src', 'test', 'bench', 'scripts', 'docs']
      .flatMap((folder) => filesUnder(folder, endings))
      // Its own tests cite what is not there.
      .filter(({ path }) => !path.startsWith('test/house/'))
    expect(files.length).toBeGreaterThan(0)
    expect(bibliographyFaults(bib, files)).toEqual([])
  })
})

describe('the check of the bibliography', () => {
  it('reads an entry, its nested braces, its quoted and its bare values', () => {
    const { entries, faults } = readBibliography(ENTRY)
    expect(faults).toEqual([])
    expect(entries).toHaveLength(1)
    expect(Object.fromEntries(entries[0]?.fields ?? [])).toEqual({
      author: 'Ergun, Sabri',
      title: 'Fluid flow through {Packed} columns',
      journal: 'Chemical Engineering Progress',
      year: '1952',
    })
  })

  it('reads the key and the line of a citation, with or without a place in the source', () => {
    const text =
      'const a = 1 // [bib:ergun1952]\n// [bib:ergun1952, eq. 5] and [bib:idelchik1966, diagram 8-1]'
    expect(citations({ path: 'a.ts', text }).map(({ key, at }) => `${key} ${at}`)).toEqual([
      'ergun1952 a.ts:1',
      'ergun1952 a.ts:2',
      'idelchik1966 a.ts:2',
    ])
  })

  it('is content when what is cited is there', () => {
    expect(bibliographyFaults(ENTRY, source('// [bib:ergun1952, eq. 5]'))).toEqual([])
  })

  it('lets an entry stand as background', () => {
    const bib = entry((text) => text.replace('year = 1952', 'year = 1952, keywords = {background}'))
    expect(bibliographyFaults(bib, [])).toEqual([])
  })

  it.each(['[bib:]', '[bib: ergun1952]', '[bib:Ergun 1952]', '[bib:ergun1952,]', '[bib:ergun1952'])(
    'refuses the citation %s',
    (written) => {
      const found = bibliographyFaults(ENTRY, source(`// [bib:ergun1952]\n// ${written}`))
      expect(found).toEqual([expect.stringContaining('src/science/draft/bed.ts:2')])
    },
  )

  it('refuses a key that is not there', () => {
    const found = bibliographyFaults(ENTRY, source('// [bib:ergun1952] [bib:nobody1900]'))
    expect(found).toEqual(['src/science/draft/bed.ts:1: nobody1900 is not in docs/references.bib'])
  })

  it('refuses an entry that nothing cites', () => {
    expect(bibliographyFaults(ENTRY, [])).toEqual([expect.stringContaining('ergun1952 is cited nowhere')])
  })

  it.each([
    ['no title', entry((text) => text.replace(/title = .*\n/, ''))],
    ['an empty title', entry((text) => text.replace(/title = .*\n/, 'title = {},\n'))],
    ['no year', entry((text) => text.replace(/year = .*\n/, ''))],
    ['no author', entry((text) => text.replace(/author = .*\n/, ''))],
    ['no closing brace', entry((text) => text.replace(/\}\n$/, ''))],
    ['a key that stands there twice', ENTRY + ENTRY],
  ])('refuses an entry with %s', (_, bib) => {
    expect(readBibliography(bib).faults).toHaveLength(1)
  })

  it('refuses a key that no citation could name', () => {
    const { faults } = readBibliography(entry((text) => text.replace('ergun1952', 'Ergun 1952')))
    expect(faults).toEqual([expect.stringContaining('is no key')])
  })
})
