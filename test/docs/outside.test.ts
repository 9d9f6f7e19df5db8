import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { evaluated } from '#scripts/validation/evaluate.ts'
import { faultOf, isEnforced, misses, missReasons } from '#scripts/validation/knownMisses.ts'
import { hits, isBand, offText } from '#scripts/validation/row.ts'
import { DOCS, madePage, pageNames } from '#scripts/validation.ts'

// Every outside check of the model, from the rows that docs/validation.md shows.

const subjects = evaluated()
const sets = subjects.flatMap((subject) => subject.sets)
const rows = sets.flatMap((set) => set.rows)
const nameOf = ([first = '', ...more]: readonly string[]): string =>
  more.length === 0 ? first : `${first} and ${more.length} more`
const byName = new Map(rows.map((row) => [row.check, row]))

describe.each(subjects)('$name', ({ sets: own }) => {
  test.each(own.filter(({ standing }) => isEnforced(standing)))('$title: $source', (set) => {
    expect(set.rows.length).toBeGreaterThan(0)
    expect(set.rows.flatMap((row) => faultOf(row) ?? [])).toEqual([])
  })
})

describe('known misses', () => {
  // The gate lists these, and one fails as soon as a check of it passes.
  test.fails.each(misses.map(({ checks, why }) => [nameOf(checks), why, checks] as const))(
    '%s: %s',
    (_name, _why, checks) => {
      // A reason for what is no check must not pass for a miss: the next test sees to it.
      expect(checks.map((check) => byName.get(check)).some((row) => row === undefined || hits(row))).toBe(
        true,
      )
    },
  )

  test('each is a check, once, that is enforced and has a reason', () => {
    const enforced = new Set(
      sets
        .filter(({ standing }) => isEnforced(standing))
        .flatMap((set) => set.rows.map(({ check }) => check)),
    )
    for (const [check, why] of missReasons) {
      expect(enforced, `${check} is no check`).toContain(check)
      expect(why.length).toBeGreaterThan(20)
    }
  })
})

describe('the rows', () => {
  test('have names of their own', () => {
    const names = rows.map(({ check }) => check)
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([])
  })

  test('are numbers', () => {
    for (const row of rows) {
      const ours = isBand(row) ? [row.ours.low, row.ours.median, row.ours.high] : [row.ours]
      for (const value of [...ours, ...[row.published].flat()])
        expect(Number.isFinite(value), row.check).toBe(true)
    }
  })

  test('that allow a share of nothing allow nothing: a published zero wants a difference', () => {
    for (const row of rows)
      if (!isBand(row) && 'share' in row.allowed) expect(row.published, row.check).not.toBe(0)
  })

  test('from memory are printed and decide nothing', () => {
    for (const set of sets.filter(({ standing }) => !isEnforced(standing)))
      for (const row of set.rows)
        if (!hits(row)) console.log(`from memory: ${row.check} is ${offText(row)} off`)
    expect(sets.some(({ standing }) => !isEnforced(standing))).toBe(true)
  })
})

test.each(pageNames)('docs/%s is current; else run node scripts/validation.ts', (name) => {
  // Not toBe: of a hundred thousand letters a reader wants to know only that they differ.
  expect(readFileSync(join(DOCS, name), 'utf8') === madePage(name)).toBe(true)
})
