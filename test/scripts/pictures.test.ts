import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { PICTURES, picture, pictureNames } from '#scripts/pictures.ts'

test.each(pictureNames)('docs/pictures/%s is current; else run node scripts/pictures.ts', (name) => {
  const committed = readFileSync(join(PICTURES, name), 'utf8')
  // Not toBe: of forty thousand letters a reader wants to know only that they differ.
  expect(committed === picture(name)).toBe(true)
})

test('docs/pictures holds no picture of a section or of solids that nothing draws', () => {
  const kept = readdirSync(PICTURES).filter((name) => /^(section|solids)/.test(name))
  expect(kept.sort()).toEqual([...pictureNames].sort())
})
