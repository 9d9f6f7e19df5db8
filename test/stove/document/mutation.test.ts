import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Problem } from '#basis/problem.ts'
import { formatStoveFile } from '#stove/document/format.ts'
import { type JsonValue, readJson } from '#stove/document/json.ts'
import { readStove, readStoveDocument, readStoveValue, resolveStove } from '#stove/document/read.ts'
import { stoveExamples } from './examples.ts'

type Tree = { [key: string]: unknown } | unknown[]

/** Every place of a document, as the container and the key in it. */
const places = (tree: unknown, found: { holder: Tree; key: string | number }[] = []) => {
  if (typeof tree !== 'object' || tree === null) return found
  for (const key of Array.isArray(tree) ? tree.keys() : Object.keys(tree)) {
    found.push({ holder: tree as Tree, key })
    places((tree as Record<string | number, unknown>)[key], found)
  }
  return found
}

const allFinite = (value: unknown): boolean => {
  if (typeof value === 'number') return Number.isFinite(value)
  if (value instanceof Map) return [...value.values()].every(allFinite)
  return typeof value === 'object' && value !== null ? Object.values(value).every(allFinite) : true
}

const wellTold = (problems: readonly Problem[]): boolean =>
  problems.length > 0 &&
  problems.every(({ code, field, allowed, fix }) => [code, field, allowed, fix].every((text) => text !== ''))

const oddValue = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    [],
    {},
    '',
    0,
    -1,
    1e9,
    0.5,
    '0 mm',
    '-5 mm',
    '1e9 mm',
    '40 mm',
    '3 mm',
    '200 in',
    '5/8 in',
    '16',
    '50 %',
    '90 deg',
    'shell',
    'fuel can',
    'open',
    'cut',
    'plain',
    'bottom',
    'hangs in',
    '999x999',
    '602x310',
    '108 mm ± 0.2 mm',
    { bit: '6 mm' },
    { slit: { length: '30 mm', width: '2 mm', along: 'round' } },
    { rings: [{ radius: '10 mm', count: 6 }] },
    { sunflower: { pitch: '1 mm', margin: '0 mm' } },
    { hexagonal: { pitch: '1 mm', margin: '0 mm' } },
    { end: 'pull-off', opening: '70 mm' },
    [1, 2, 3],
  ),
  fc.string(),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.double({ min: 0, max: 250, noNaN: true }).map((value) => `${value.toFixed(1)} mm`),
  fc.integer({ min: -2, max: 5001 }),
  fc.jsonValue({ maxDepth: 2 }),
)

/** The same stove with everything a maker can say of a fuel of their own. */
const withOwnFuel = (text: string): string => {
  const file = JSON.parse(text)
  const own = {
    name: 'hazel twigs',
    like: 'twigs',
    filling: { weight: '180 g', volume: '0.6 L' },
    dried: { before: '100 g', after: '87 g' },
    pieces: { diameter: '9 mm', length: '35 mm', weighed: { count: 20, weight: '31 g' } },
  }
  file.fuel = { own, level: file.fuel.level, fines: '2 %', packing: 'upright' }
  return JSON.stringify(file)
}

const texts = stoveExamples.map(({ text }) => text)
const example = fc.constantFrom(...texts, ...texts.map(withOwnFuel))

/** A measure or a count a little larger or smaller, as a maker tries it. */
const nudged = (value: unknown, turn: number): unknown => {
  const factor = 0.85 + (turn % 31) / 100
  if (typeof value === 'number') return Math.max(1, Math.round(value * factor))
  if (typeof value !== 'string') return value
  return value.replace(/^\d+(?:\.\d+)?(?= )/, (digits) => (Number(digits) * factor).toFixed(2))
}

/** A document with a few of its places nudged, replaced, deleted, renamed or exchanged. */
const mutant = fc
  .tuple(
    example,
    fc.array(fc.tuple(fc.nat(), fc.nat(15), oddValue, fc.nat()), { minLength: 1, maxLength: 3 }),
  )
  .map(([text, changes]) => {
    const document = JSON.parse(text)
    for (const [at, how, value, other] of changes) {
      const all = places(document)
      const spot = all[at % Math.max(1, all.length)]
      const second = all[other % Math.max(1, all.length)]
      if (spot === undefined || second === undefined) continue
      const holder = spot.holder as Record<string | number, unknown>
      const from = second.holder as Record<string | number, unknown>
      if (how === 0) delete holder[spot.key]
      else if (how === 1) holder[`${spot.key}x`] = holder[spot.key]
      else if (how === 2) holder[spot.key] = structuredClone(from[second.key])
      else if (how < 6) holder[spot.key] = structuredClone(value)
      else holder[spot.key] = nudged(holder[spot.key], other)
    }
    return JSON.stringify(document)
  })

const published = new Ajv2020({ strictRequired: false }).compile(
  JSON.parse(readFileSync(new URL('../../../schema/stove.schema.json', import.meta.url), 'utf8')),
)

describe('whatever is done to a stove file', () => {
  test('it is read or its problems are told; what is read is finite, can be written back and keeps the schema', () => {
    let read = 0
    fc.assert(
      fc.property(mutant, (text) => {
        const outcome = readStoveDocument(text)
        if (!outcome.ok) return wellTold(outcome.problems)
        read += 1
        expect(allFinite(outcome.value.stove)).toBe(true)
        expect(published(JSON.parse(text))).toBe(true)
        const written = formatStoveFile(outcome.value.file)
        expect(readJson(written)).toEqual({ ok: true, value: JSON.parse(text) })
        return true
      }),
      { numRuns: 3000 },
    )
    // Else this test would only have seen refusals.
    expect(read).toBeGreaterThan(300)
  })

  test('characters thrown in, taken out or doubled never bring the reader down', () => {
    const edit = fc.tuple(fc.nat(), fc.nat(4), fc.string({ unit: 'binary', maxLength: 3 }))
    fc.assert(
      fc.property(example, fc.array(edit, { minLength: 1, maxLength: 4 }), (text, edits) => {
        const spoilt = edits.reduce((now, [at, removed, inserted]) => {
          const start = at % (now.length + 1)
          return now.slice(0, start) + inserted + now.slice(start + removed)
        }, text)
        const outcome = readStove(spoilt)
        return outcome.ok ? allFinite(outcome.value) : wellTold(outcome.problems)
      }),
      { numRuns: 1500 },
    )
  })

  test('any JSON at all is answered', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const outcome = readStoveValue(value as JsonValue)
        return !outcome.ok && wellTold(outcome.problems)
      }),
    )
  })
})

describe('writing a stove file', () => {
  /** The same document with the keys of every object in another order. */
  const shuffled = (value: unknown, turn: number): unknown => {
    if (Array.isArray(value)) return value.map((one) => shuffled(one, turn))
    if (typeof value !== 'object' || value === null) return value
    const entries = Object.entries(value)
    const by = turn % Math.max(1, entries.length)
    return Object.fromEntries(
      [...entries.slice(by), ...entries.slice(0, by)].map(([key, one]) => [key, shuffled(one, turn)]),
    )
  }

  test('what is read back is what was written, and writing it again gives the same text', () => {
    fc.assert(
      fc.property(mutant, fc.nat(20), (text, turn) => {
        const outcome = readStoveDocument(text)
        if (!outcome.ok) return
        const file = shuffled(outcome.value.file, turn) as typeof outcome.value.file
        const written = formatStoveFile(file)
        const again = readStoveDocument(written)
        if (!again.ok) throw new Error(JSON.stringify(again.problems))
        expect(again.value.file).toEqual(file)
        expect(formatStoveFile(again.value.file)).toBe(written)
      }),
      { numRuns: 600 },
    )
  })

  test('an editor may leave a key undefined: it is as if it were not there', () => {
    const [first] = stoveExamples
    const outcome = readStoveDocument(first?.text ?? '')
    if (!outcome.ok) throw new Error('the example does not read')
    const file = { ...outcome.value.file, about: undefined, pot: undefined }
    expect(formatStoveFile(file)).not.toContain('about')
    expect(resolveStove(file).ok).toBe(true)
  })
})
