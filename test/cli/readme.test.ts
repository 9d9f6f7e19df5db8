import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, it } from 'vitest'
import type { Environment } from '#cli/environment.ts'
import { openWorkshop } from '#store/open.ts'
import { exampleFiles, type Files, tinwright } from './memory.ts'

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8')
const asInCheckout: Files = Object.fromEntries(
  Object.entries(exampleFiles).map(([name, text]) => [`examples/${name}`, text]),
)
const shown = [...readme.matchAll(/^npx tinwright (.+)$/gm)].map(([, words]) => words as string)

/** A reader's own workshop, which the commands find as they left it. */
const folder = mkdtempSync(join(tmpdir(), 'tinwright-readme-'))
afterAll(() => rmSync(folder, { recursive: true }))
const workshop: Environment['workshop'] = (begin) =>
  openWorkshop(
    { file: join(folder, 'workshop') },
    { at: '2031-05-17T14:05:00Z', beginAs: begin ? 'workshop-1' : null },
  )

it('the README shows commands', () => {
  expect(shown.length).toBeGreaterThanOrEqual(5)
})

it.each(shown)('a reader can paste `npx tinwright %s` and it ends with 0', async (words) => {
  const args = [...words.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '')
  const { code, err } = await tinwright(args, asInCheckout, { workshop })
  expect({ code, err }).toEqual({ code: 0, err: '' })
})
