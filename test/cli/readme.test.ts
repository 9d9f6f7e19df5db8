import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, it } from 'vitest'
import type { Environment } from '#cli/environment.ts'
import { openWorkshop } from '#store/open.ts'
import { seriesTexts } from '../proof/compare/seriesTrials.ts'
import { exampleFiles, type Files, tinwright } from './memory.ts'

const pages = ['README.md', 'docs/commands.md'].map((page) =>
  readFileSync(new URL(`../../${page}`, import.meta.url), 'utf8'),
)
const asInCheckout: Files = Object.fromEntries(
  Object.entries(exampleFiles).map(([name, text]) => [`examples/${name}`, text]),
)
const asInSeries: Files = Object.fromEntries(
  Object.entries(seriesTexts).map(([name, text]) => [`examples/series/${name}`, text]),
)
const files: Files = { ...asInCheckout, ...asInSeries }
/** As a shell does: names that match, in the order of the alphabet. */
const expanded = (word: string): readonly string[] => {
  if (!word.includes('*')) return [word]
  const [before = '', after = ''] = word.split('*')
  return Object.keys(files)
    .filter((name) => name.startsWith(before) && name.endsWith(after))
    .sort()
}
/** These stay open until they are stopped, or ask about them: bench.test.ts runs both as a program. */
const ELSEWHERE = /^(bench|devices)\b/
const commandsOf = (page: string): readonly string[] =>
  [...page.matchAll(/^npx tinwright (.+)$/gm)].map(([, words]) => words as string)
const shown = [...new Set(pages.flatMap(commandsOf))].filter((words) => !ELSEWHERE.test(words))

/** A reader's own workshop, which the commands find as they left it. */
const folder = mkdtempSync(join(tmpdir(), 'tinwright-readme-'))
afterAll(() => rmSync(folder, { recursive: true }))
const workshop: Environment['workshop'] = (begin) =>
  openWorkshop(
    { file: join(folder, 'workshop') },
    { at: '2031-05-17T14:05:00Z', beginAs: begin ? 'workshop-1' : null },
  )

it.each(pages)('a page that is tried here shows commands', (page) => {
  expect(commandsOf(page).length).toBeGreaterThanOrEqual(3)
})

it('every command is shown', async () => {
  const { out } = await tinwright(['--help'], files)
  const known = [...out.matchAll(/^ {2}([a-z]+) \[/gm)].map(([, name]) => name)
  expect(known.length).toBeGreaterThan(20)
  const named = new Set(pages.flatMap(commandsOf).map((words) => words.split(' ')[0]))
  expect(known.filter((name) => !named.has(name) && name !== 'help')).toEqual([])
})

it.each(shown)(
  'a reader can paste `npx tinwright %s` and it ends with 0',
  { timeout: 600_000 },
  async (words) => {
    const args = [...words.matchAll(/"([^"]*)"|(\S+)/g)].flatMap(([, quoted, bare]) =>
      quoted === undefined ? expanded(bare ?? '') : [quoted],
    )
    const { code, err } = await tinwright(args, files, { workshop })
    expect({ code, err }).toEqual({ code: 0, err: '' })
  },
)
