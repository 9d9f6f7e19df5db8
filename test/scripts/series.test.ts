import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { SERIES, seriesFiles } from '#scripts/series.ts'

it('examples/series is what its program makes; else run node scripts/series.ts', () => {
  const made = seriesFiles()
  expect(readdirSync(SERIES).filter((name) => name !== 'README.md')).toEqual([...made.keys()].sort())
  for (const [name, text] of made) expect(readFileSync(join(SERIES, name), 'utf8')).toBe(text)
})
