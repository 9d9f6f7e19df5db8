import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { inOrder, LONG } from '#scripts/gate/order.ts'

const root = join(import.meta.dirname, '..', '..')

describe('the order of files of tests', () => {
  it.each(Object.keys(LONG))('knows %s, which is there', (file) => {
    expect(existsSync(join(root, file))).toBe(true)
  })

  it('leaves no file out and names none twice, however they come', () => {
    const files = [
      ...Object.keys(LONG),
      'test/basis/a.test.ts',
      'test/web/browser/b.test.ts',
      'test/a.test.ts',
    ]
    const order = inOrder(files)
    expect([...order].sort()).toEqual([...files].sort())
    expect(inOrder(files.toReversed())).toEqual(order)
  })

  it('begins what takes long first, in the browser and elsewhere', () => {
    const order = inOrder(['test/a/a.test.ts', 'test/web/browser/b.test.ts', ...Object.keys(LONG)])
    for (const inBrowser of [true, false]) {
      const lane = order.filter((file) => file.startsWith('test/web/browser/') === inBrowser)
      // A file that is not in the list is taken for a short one.
      const seconds = lane.map((file) => LONG[file] ?? 0)
      expect(seconds).toEqual([...seconds].sort((a, b) => b - a))
    }
  })

  it('takes the browser and the others in turn', () => {
    const two = ['test/web/browser/a.test.ts', 'test/web/browser/b.test.ts']
    const many = Array.from({ length: 15 }, (_, n) => `test/stove/${String(n).padStart(2, '0')}.test.ts`)
    const order = inOrder([...many, ...two])
    expect(order[0]).toBe(two[0])
    // The second has to wait until the others have taken about as long as the first.
    expect(order.indexOf(two[1] as string)).toBe(9)
  })
})
