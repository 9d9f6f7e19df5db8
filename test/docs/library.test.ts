import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
const page = readFileSync(join(root, 'docs/library.md'), 'utf8')
const block = (language: string): string =>
  new RegExp(`^\`\`\`${language}\\n(.*?)^\`\`\``, 'ms').exec(page)?.[1] ?? ''

const folder = mkdtempSync(join(tmpdir(), 'tinwright-library-'))
afterAll(() => rmSync(folder, { recursive: true }))

it('the example of docs/library.md runs in a project of its own and says what the page says', () => {
  // As `npm install ../tinwright` lays it out: a link.
  mkdirSync(join(folder, 'node_modules'))
  symlinkSync(root, join(folder, 'node_modules/tinwright'), 'junction')
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }')
  writeFileSync(join(folder, 'ring.ts'), block('ts'))
  const { stdout, stderr } = spawnSync(process.execPath, ['ring.ts'], { cwd: folder, encoding: 'utf8' })
  expect({ stdout, stderr }).toEqual({ stdout: block('text'), stderr: '' })
})

const doors = [...page.matchAll(/^\| [^|]+ \| (`[^|]+`) \| `([^|]+)` \|$/gm)].map(
  ([, names = '', file = '']) => ({
    file,
    names: [...names.matchAll(/`(\w+)`/g)].map(([, name]) => name ?? ''),
  }),
)

it('the page names doors', () => {
  expect(doors.length).toBeGreaterThan(10)
})

it.each(doors)('$file has the doors that the page names', ({ file, names }) => {
  const text = readFileSync(join(root, 'src', file), 'utf8')
  expect(names.filter((name) => !text.includes(`export const ${name} =`))).toEqual([])
})
