import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { MAKING_CAUTIONS } from '#craft/caution.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
const flat = (text: string): string => text.replace(/\s+/g, ' ')
const times = (text: string, words: string): number => flat(text).split(words).length - 1

test('the demo says the cautions once, at its end, and leaves them on every page it keeps', () => {
  const done = spawnSync(process.execPath, ['scripts/demo.ts'], { cwd: root, encoding: 'utf8' })
  expect(done.status).toBe(0)
  for (const caution of MAKING_CAUTIONS) {
    expect(times(done.stdout, caution)).toBe(1)
    for (const page of ['findings.txt', 'prediction.txt'])
      expect(times(readFileSync(`${root}out/demo/${page}`, 'utf8'), caution)).toBe(1)
  }
  expect(
    flat(done.stdout)
      .trim()
      .endsWith(MAKING_CAUTIONS.at(-1) ?? 'nothing'),
  ).toBe(true)
})
