import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { orThrow, problemSentence } from '#basis/problem.ts'
import { blankBuilt, formatBuiltFile } from '#stove/built/blank.ts'
import { readBuilt } from '#stove/built/read.ts'
import { readStoveDocument } from '#stove/document/read.ts'
import { stoveExamples } from '../document/examples.ts'

type Path = readonly (string | number)[]

/** Every place of a document, branches and leaves. */
const placesIn = (value: unknown, at: Path = []): readonly Path[] =>
  typeof value === 'object' && value !== null
    ? [
        at,
        ...Object.entries(value).flatMap(([key, one]) =>
          placesIn(one, [...at, Array.isArray(value) ? Number(key) : key]),
        ),
      ]
    : [at]

const withValue = (document: unknown, path: Path, value: unknown): unknown => {
  const copy = JSON.parse(JSON.stringify(document)) as Record<string | number, unknown>
  if (path.length === 0) return value
  let holder = copy
  for (const key of path.slice(0, -1)) holder = holder[key] as Record<string | number, unknown>
  holder[path.at(-1) as string | number] = value
  return copy
}

const junk = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    0,
    -1,
    1e308,
    '',
    'twelve',
    '12',
    '12 mm',
    '1/2 in',
    '1/2 in (40 mm)',
    '900 mm',
    '0 mm',
    '-3 mm',
    '12 mm ± 1 mm',
    '45 deg',
    '180 g',
    '12 %',
    true,
    [],
    {},
    [null],
    ['12 mm'],
    ['12 mm', 12],
    [1, 2, 3],
    { end: 'cut' },
  ),
  fc.string(),
  fc.double(),
  fc.jsonValue(),
)

const sheets = stoveExamples.flatMap(({ name, text }) => {
  const plan = orThrow(readStoveDocument(text))
  const blank: unknown = JSON.parse(formatBuiltFile(blankBuilt(plan.stove)))
  const example: unknown = name.startsWith('redshank')
    ? JSON.parse(readFileSync(new URL('../../../examples/redshank.built.json', import.meta.url), 'utf8'))
    : blank
  return [
    { plan, sheet: blank, places: placesIn(blank) },
    { plan, sheet: example, places: placesIn(example) },
  ]
})

test('whatever is written into a sheet, it is read or every fault is told in a sentence', () => {
  let read = 0
  let refused = 0
  fc.assert(
    fc.property(
      fc.constantFrom(...sheets),
      fc.array(fc.tuple(fc.nat(), junk), { minLength: 1, maxLength: 3 }),
      ({ plan, sheet, places }, changes) => {
        const spoilt = changes.reduce<unknown>((document, [index, value]) => {
          const path = places[index % places.length] ?? []
          try {
            return withValue(document, path, value)
          } catch {
            // An earlier change took the place away.
            return document
          }
        }, sheet)
        const outcome = readBuilt(JSON.stringify(spoilt) ?? 'null', plan)
        if (outcome.ok) {
          read += 1
          expect(JSON.stringify(outcome.value.stove)).not.toMatch(/null,"tolerance"|NaN/)
          return
        }
        refused += 1
        expect(outcome.problems.length).toBeGreaterThan(0)
        for (const problem of outcome.problems) {
          expect(problem.code).toMatch(/\S/)
          expect(problem.field).toMatch(/\S/)
          expect(problemSentence(problem)).not.toMatch(/undefined|\[object Object\]/)
        }
      },
    ),
    { numRuns: 1500 },
  )
  // Both happen, or the junk is no test.
  expect(read).toBeGreaterThan(20)
  expect(refused).toBeGreaterThan(500)
})
