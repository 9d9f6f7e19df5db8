import { describe, expect, it } from 'vitest'
import { familiesOf, originsIn } from '#web/home/families.ts'
import type { DocumentHead, RevisionHead } from '#wire/documents.ts'

const stove = (id: string): DocumentHead => ({
  id,
  kind: 'stove',
  name: id,
  head: `${id}1`,
  deleted: false,
  version: 1,
  aboutDocument: null,
  aboutRevision: null,
  created: '2031-05-17T14:05:00Z',
  touched: 1,
})
const revision = (id: string, document: string, parents: readonly string[]): RevisionHead => ({
  id,
  document,
  parents,
  note: '',
  hash: '',
  created: '2031-05-17T14:05:00Z',
})

const revisions = [
  revision('a1', 'a', []),
  revision('a2', 'a', ['a1']),
  revision('b1', 'b', ['a1']),
  revision('b2', 'b', ['b1']),
  revision('c1', 'c', ['b2']),
]

describe('families of stoves', () => {
  it('reads from the revisions what was made from what', () => {
    expect([...originsIn(revisions)]).toEqual([
      ['a', null],
      ['b', 'a'],
      ['c', 'b'],
    ])
  })

  it('puts each stove behind what it was made from', () => {
    const [family, lone] = familiesOf([stove('a'), stove('b'), stove('z'), stove('c')], originsIn(revisions))
    expect(family?.members.map(({ stove: { id }, from }) => [id, from?.id])).toEqual([
      ['a', undefined],
      ['b', 'a'],
      ['c', 'b'],
    ])
    expect(lone?.members.map(({ stove: { id } }) => id)).toEqual(['z'])
  })

  it('goes past what was taken away to the next relation that is there', () => {
    const [family] = familiesOf([stove('a'), stove('c')], originsIn(revisions))
    expect(family?.members.map(({ stove: { id } }) => id)).toEqual(['a', 'c'])
  })

  it('shows every stove once, whatever the origins say', () => {
    const round = new Map([
      ['a', 'b'],
      ['b', 'a'],
    ])
    const shown = familiesOf([stove('a'), stove('b'), stove('c')], round).flatMap(({ members }) => members)
    // A ring has no founder; the store makes none, and nobody is shown twice.
    expect(new Set(shown.map(({ stove: { id } }) => id)).size).toBe(shown.length)
  })
})
