import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { exampleFiles, type Files, tinwright } from './memory.ts'

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8')
const asInCheckout: Files = Object.fromEntries(
  Object.entries(exampleFiles).map(([name, text]) => [`examples/${name}`, text]),
)
const shown = [...readme.matchAll(/^npx tinwright (.+)$/gm)].map(([, words]) => words as string)

it('the README shows commands', () => {
  expect(shown.length).toBeGreaterThanOrEqual(5)
})

it.each(shown)('a reader can paste `npx tinwright %s` and it ends with 0', async (words) => {
  const args = [...words.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '')
  const { code, err } = await tinwright(args, asInCheckout)
  expect({ code, err }).toEqual({ code: 0, err: '' })
})
