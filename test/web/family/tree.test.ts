import { describe, expect, it } from 'vitest'
import { familyTree, type TreeNode, treeLines, treeMove } from '#web/family/tree.ts'
import type { RevisionHead } from '#wire/documents.ts'

let minute = 0
const revision = (id: string, document: string, ...parents: readonly string[]): RevisionHead => {
  minute += 1
  const created = `2031-05-17T10:${String(minute % 60).padStart(2, '0')}:00.000Z`
  return { id, document, parents, note: '', hash: '', created }
}

/** Heron with three steps; Egret from its second, Bittern from Egret's first. */
const FAMILY: readonly RevisionHead[] = [
  revision('h1', 'heron'),
  revision('h2', 'heron', 'h1'),
  revision('e1', 'egret', 'h2'),
  revision('h3', 'heron', 'h2'),
  revision('b1', 'bittern', 'e1'),
]

const drawn = (nodes: readonly TreeNode[], indent = ''): string =>
  nodes
    .map(
      ({ kind, document, key, children }) =>
        `${indent}${kind === 'stove' ? document : key}\n${drawn(children, `${indent}  `)}`,
    )
    .join('')

describe('the tree of a family', () => {
  it('has every stove with its steps in order, and variants under the step they were made from', () => {
    expect(drawn(familyTree(FAMILY))).toBe(
      'heron\n  h1\n  h2\n    egret\n      e1\n        bittern\n          b1\n  h3\n',
    )
  })

  it('is the same however the revisions come, and when a clock was wrong', () => {
    const wrong = FAMILY.map((one) =>
      one.id === 'h2' ? { ...one, created: '1999-01-01T00:00:00.000Z' } : one,
    )
    expect(drawn(familyTree(wrong.toReversed()))).toBe(drawn(familyTree(FAMILY)))
  })

  it('says what each step was changed from: the step before, or that of another stove', () => {
    const lines = treeLines(familyTree(FAMILY), new Set())
    const from = new Map(lines.map(({ node }) => [node.key, node.from]))
    expect(from.get('h1')).toBeNull()
    expect(from.get('h3')).toBe('h2')
    expect(from.get('e1')).toBe('h2')
    expect(from.get('b1')).toBe('e1')
  })

  it('outlives a circle and a parent that is not there', () => {
    const circle = [revision('x', 'one', 'y'), revision('y', 'two', 'x')]
    expect(drawn(familyTree(circle))).toBe('one\n  x\n    two\n      y\n')
    expect(drawn(familyTree([revision('z', 'three', 'gone')]))).toBe('three\n  z\n')
  })

  it('is walked by the keys of a tree', () => {
    const roots = familyTree(FAMILY)
    const all = treeLines(roots, new Set())
    expect(all.map(({ node }) => node.key)).toEqual([
      'stove heron',
      'h1',
      'h2',
      'stove egret',
      'e1',
      'stove bittern',
      'b1',
      'h3',
    ])
    expect(treeMove(all, 'h1', 'ArrowDown')).toEqual({ kind: 'go', key: 'h2' })
    expect(treeMove(all, 'h1', 'ArrowUp')).toEqual({ kind: 'go', key: 'stove heron' })
    expect(treeMove(all, 'stove heron', 'ArrowUp')).toBeNull()
    expect(treeMove(all, 'h2', 'ArrowRight')).toEqual({ kind: 'go', key: 'stove egret' })
    expect(treeMove(all, 'h2', 'ArrowLeft')).toEqual({ kind: 'close', key: 'h2' })
    expect(treeMove(all, 'h1', 'ArrowLeft')).toEqual({ kind: 'go', key: 'stove heron' })
    expect(treeMove(all, 'h1', 'End')).toEqual({ kind: 'go', key: 'h3' })
    const closed = treeLines(roots, new Set(['h2']))
    expect(closed.map(({ node }) => node.key)).toEqual(['stove heron', 'h1', 'h2', 'h3'])
    expect(treeMove(closed, 'h2', 'ArrowRight')).toEqual({ kind: 'open', key: 'h2' })
    expect(closed.map(({ place, of, level }) => [place, of, level])).toEqual([
      [1, 1, 1],
      [1, 3, 2],
      [2, 3, 2],
      [3, 3, 2],
    ])
  })
})
