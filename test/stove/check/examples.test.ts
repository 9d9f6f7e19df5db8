import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { checkStove } from '#stove/check/checkStove.ts'
import { readStove } from '#stove/document/read.ts'
import { readShelf } from '#stove/document/shelf.ts'

const folder = new URL('../../../examples/', import.meta.url)
const text = (name: string): string => readFileSync(new URL(name, folder), 'utf8')
const names = readdirSync(folder).filter((name) => name.endsWith('.stove.json'))

describe('the examples', () => {
  test('there are three', () => {
    expect(names).toHaveLength(3)
  })

  test.each(names)('%s has nothing that stops or warns, with the shelf of the example', (name) => {
    const found = checkStove(orThrow(readStove(text(name))), orThrow(readShelf(text('shelf.json'))))
    expect(found.filter(({ severity }) => severity !== 'note')).toEqual([])
  })
})
