import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { emptyDraft } from '#web/trials/draft.ts'
import { isInvented } from '#web/trials/invented.ts'

it('knows the burns of the demo, and takes no real one for one of them', () => {
  const demo = new URL('../../../examples/series/burn-01.trial.json', import.meta.url)
  expect(isInvented(JSON.parse(readFileSync(demo, 'utf8')))).toBe(true)
  expect(isInvented(emptyDraft())).toBe(false)
  expect(
    isInvented({ ...emptyDraft(), about: 'Burnt beside the hut. Pot weight invented, scale was broken.' }),
  ).toBe(false)
})
