import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { expect, it } from 'vitest'
import { filesUnder, ROOT } from '../house/files.ts'

const scripts = Object.keys(JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).scripts)

/** `[words](place)`, and pictures as HTML has them; addresses of the web are not asked for. */
const linksOf = (text: string): readonly string[] =>
  [...text.matchAll(/\]\(([^)\s#]+)(?:#[^)]*)?\)|\b(?:src|srcset)="([^"]+)"/g)]
    .map(([, markdown, html]) => markdown ?? html ?? '')
    .filter((place) => !/^[a-z]+:/.test(place))

const pages = [
  ...['README.md', 'CONTRIBUTING.md'].map((path) => ({ path, text: readFileSync(join(ROOT, path), 'utf8') })),
  ...['docs', 'examples', 'test'].flatMap((folder) => filesUnder(folder, ['.md'])),
]

it('there are pages', () => {
  expect(pages.length).toBeGreaterThan(20)
})

it.each(pages)('what $path points at is there', ({ path, text }) => {
  expect(linksOf(text).filter((place) => !existsSync(join(ROOT, dirname(path), place)))).toEqual([])
  const run = [...text.matchAll(/\bnpm run ([a-z]+)/g)].map(([, name = '']) => name)
  expect(run.filter((name) => !scripts.includes(name))).toEqual([])
})

it('every decision is in the list of decisions', () => {
  const list = readFileSync(join(ROOT, 'docs/decisions/README.md'), 'utf8')
  const decisions = pages.map(({ path }) => path).filter((path) => /^docs\/decisions\/\d/.test(path))
  expect(decisions.length).toBeGreaterThan(15)
  expect(decisions.filter((path) => !list.includes(`](${path.slice('docs/decisions/'.length)})`))).toEqual([])
})
