import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { licenceOf, packageFolder } from '#scripts/build/licences.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

it.each([
  ['/a/node_modules/zod/v4/index.js', '/a/node_modules/zod'],
  ['/a/node_modules/@cantoo/pdf-lib/es/index.js', '/a/node_modules/@cantoo/pdf-lib'],
  [
    '/a/node_modules/manifold-3d/node_modules/commander/index.js',
    '/a/node_modules/manifold-3d/node_modules/commander',
  ],
  ['\0/a/node_modules/react/index.js?commonjs-module', '/a/node_modules/react'],
  ['C:\\a\\node_modules\\three\\build\\three.js', 'C:\\a\\node_modules\\three'],
  ['/a/src/web/main.tsx', null],
])('the package of %j is %j', (id, folder) => {
  expect(packageFolder(id)).toBe(folder)
})

it('the lettering goes with its whole licence, and a package without a text with its own page', () => {
  const lettering = licenceOf(join(root, 'node_modules/@fontsource/source-sans-3'))
  expect(lettering).toMatch(/^@fontsource\/source-sans-3 [\d.]+ \(OFL-1\.1\)\n\n/)
  expect(lettering).toContain('SIL OPEN FONT LICENSE')
  expect(licenceOf(join(root, 'node_modules/@resvg/resvg-wasm'))).toMatch(/MPL-2\.0\)\n\nhttps:/)
})

// docs/packages.md: a package earns its place, and says under what terms.
const page = readFileSync(join(root, 'docs/packages.md'), 'utf8')
const read = (path: string) => JSON.parse(readFileSync(join(root, path), 'utf8'))
const asked = read('package.json')
const names: readonly string[] = Object.keys({ ...asked.dependencies, ...asked.devDependencies })
const rows = new Map(
  [...page.matchAll(/^\| `([^`]+)` \| ([^|]+) \| ([^|]+) \|$/gm)].map(([, name = '', , licence = '']) => [
    name,
    licence.trim(),
  ]),
)

it('every package that is asked for is pinned and has its reason, and no other has', () => {
  expect([...rows.keys()].sort()).toEqual([...names].sort())
  expect(
    Object.values({ ...asked.dependencies, ...asked.devDependencies }).filter(
      (version) => !/^\d+\.\d+\.\d+$/.test(String(version)),
    ),
  ).toEqual([])
})

it.each(names.filter((name) => existsSync(join(root, 'node_modules', name))))(
  'docs/packages.md has the licence of %s right',
  (name) => {
    expect(rows.get(name)).toBe(read(`node_modules/${name}/package.json`).license)
  },
)
