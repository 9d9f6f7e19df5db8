import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { describe, expect, it } from 'vitest'
import { barText, meets } from '#bench/row.ts'

const folder = join(import.meta.dirname, '..', '..', 'bench')
const files = readdirSync(folder).filter((name) => name.endsWith('.bench.ts'))

describe('a bar', () => {
  it('is met from its own side, the limit included', () => {
    expect([4, 5, 6].map((value) => meets(value, { atLeast: 5 }))).toEqual([false, true, true])
    expect([4, 5, 6].map((value) => meets(value, { atMost: 5 }))).toEqual([true, true, false])
  })

  it('is written for people and programs alike', () => {
    expect([barText({ atLeast: 200_000 }), barText({ atMost: 0.5 })]).toEqual(['>= 200000', '<= 0.5'])
  })
})

describe('the measurements', () => {
  it.each(files)('%s exports rows', async (name) => {
    expect(await import(pathToFileURL(join(folder, name)).href)).toMatchObject({ rows: expect.any(Function) })
  })
})
