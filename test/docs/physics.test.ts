import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { coefficientTable } from '#science/coefficients.ts'
import { figureNames } from '#scripts/figures.ts'
import { DOCS } from '#scripts/validation.ts'

const pages = ['physics.md', 'validation.md', 'coefficients.md'].map((name) => ({
  name,
  text: readFileSync(join(DOCS, name), 'utf8'),
}))
const physics = pages[0]?.text ?? ''

const anchorsOf = (text: string): ReadonlySet<string> =>
  new Set(
    [...text.matchAll(/^#+ (.+)$/gm)].map(([, heading]) =>
      (heading ?? '')
        .toLowerCase()
        .replace(/[^\p{L}\p{N} -]/gu, '')
        .replaceAll(' ', '-'),
    ),
  )

describe.each(pages)('docs/$name', ({ name, text }) => {
  const links = [...text.matchAll(/\]\(([^)\s]+)\)/g)].map(([, target]) => target ?? '')

  test('links to what is there', () => {
    const dead = [...new Set(links)].filter((target) => {
      const [path = '', anchor] = target.split('#')
      if (/^https?:/.test(path)) return false
      const file = path === '' ? join(DOCS, name) : join(dirname(join(DOCS, name)), path)
      if (!existsSync(file)) return true
      return anchor !== undefined && !anchorsOf(readFileSync(file, 'utf8')).has(anchor)
    })
    expect(dead).toEqual([])
  })
})

test('docs/physics.md shows every figure that is drawn for it', () => {
  for (const figure of figureNames) expect(physics).toContain(`](pictures/${figure})`)
})

test('docs/physics.md names no coefficient that is not in the table', () => {
  const named = [...physics.matchAll(/`([a-z]+[A-Z][A-Za-z]+)`/g)].map(([, key]) => key ?? '')
  expect(named.length).toBeGreaterThan(20)
  expect(named.filter((key) => !(key in coefficientTable))).toEqual([])
})
