import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { type QuantityKey, quantities } from '#basis/quantities.ts'
import { QUANTITY_GROUPS } from '#web/help/groups.ts'
import { ORIGINS } from '#web/help/origins.ts'
import { readReferences } from '#web/help/references.ts'

const bib = readFileSync(join(import.meta.dirname, '../../../docs/references.bib'), 'utf8')
const references = readReferences(bib)

describe('what the help says of quantities', () => {
  it('names only sources that stand in the bibliography', () => {
    const unknown = Object.values(ORIGINS).flatMap(({ sources }) =>
      sources.filter((key) => !references.has(key)),
    )
    expect(unknown).toEqual([])
  })

  it('reads every entry of the bibliography with a title, a year where there is one, and no marks of its typesetting', () => {
    expect(references.size).toBe(bib.match(/^@[a-z]+\{/gm)?.length)
    const odd = [...references.values()].filter(({ text }) => /[{}\\]|n\.d\.|: \(|^: /.test(text))
    expect(odd).toEqual([])
  })

  it('writes names with their accents, and of many authors the first', () => {
    // From the entry in docs/references.bib: Picard, Davis, Gl{\"a}ser and Fujii, 2008.
    expect(references.get('picard2008')?.text).toBe(
      'Picard and others: Revised formula for the density of moist air (CIPM-2007) (2008)',
    )
    expect(
      readReferences(
        '@misc{a1900,\n author = {Gl{\\"a}ser, M.},\n title = {On {NASA}},\n year = {1900}\n}',
      ).get('a1900')?.text,
    ).toBe('Gläser: On NASA (1900)')
  })

  it('shows every quantity of the one table, once', () => {
    const shown = QUANTITY_GROUPS.flatMap(({ keys }) => keys)
    expect([...shown].sort()).toEqual((Object.keys(quantities) as QuantityKey[]).sort())
  })
})
