import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { afterAll, expect, test } from 'vitest'
import { problemSentence } from '#basis/problem.ts'
import { readStove } from '#stove/document/read.ts'

/**
 * Files of `test/bad-files` with the problem each must be told; every one is a good stove file with one
 * thing spoilt. They end in `.txt` so that no formatter mends them.
 */
const WALL = 'parts.wall.openings.intake'
const FLOOR = 'parts.fuel can.openings.floor'
const expected: Readonly<Record<string, readonly [code: string, field: string]>> = {
  'a-billion-holes': ['count.range', `${WALL}.count`],
  'all-left-out': ['row.all-left-out', `${WALL}.leftOut`],
  'bad-size-code': ['size-code.sixteenths', 'parts.fuel can.can.code'],
  'bare-number': ['length.no-unit', `${WALL}.height`],
  'bore-too-wide': ['bore.too-wide', 'parts.disc.openings.bore.diameter'],
  comment: ['json.comment', 'line 4, column 3'],
  'count-in-quotes': ['count.in-quotes', `${WALL}.count`],
  'cut-short': ['json.cut-short', 'line 38, column 19'],
  cycle: ['assembly.cycle', 'assembly[0].host'],
  'denser-than-its-pieces': ['fuel.denser-than-pieces', 'fuel.own.filling.weight'],
  'dual-mismatch': ['length.dual-mismatch', `${WALL}.hole.bit`],
  'duplicate-key': ['json.duplicate-key', 'name'],
  'fuel-above-can': ['fuel.above-can', 'fuel.level'],
  'half-a-hole': ['count.not-whole', `${WALL}.count`],
  'half-dust': ['share.range', 'fuel.fines'],
  'heavier-dry': ['fuel.heavier-dry', 'fuel.own.dried.after'],
  'hole-larger-than-can': ['opening.wider-than-can', 'parts.fuel can.openings.ring.hole.diameter'],
  'honeycomb-count': ['pattern.honeycomb-count', `${FLOOR}.layout.hexagonal.count`],
  'host-later': ['assembly.host-later', 'assembly[0].host'],
  'kind-and-own': ['fuel.kind-and-own', 'fuel.kind'],
  'left-out-beyond': ['row.left-out-beyond', `${WALL}.leftOut[0]`],
  negative: ['length.range', 'parts.disc.thickness'],
  'newer-format': ['format.newer', 'format'],
  'no-can-size': ['can.no-size', 'parts.fuel can.can'],
  'no-holes': ['count.range', `${WALL}.count`],
  'no-unit': ['length.no-unit', `${WALL}.height`],
  'not-a-number': ['json.not-a-number', 'line 13, column 91'],
  'not-placed': ['assembly.not-placed', 'assembly'],
  'open-face': ['opening.open-face', `${FLOOR}.face`],
  'opening-larger-than-can': ['can.opening', 'parts.wall.top.opening'],
  'other-format': ['format.other-kind', 'format'],
  'overlapping-holes': ['row.overlap', `${WALL}.count`],
  'part-in-itself': ['assembly.in-itself', 'assembly[1].host'],
  'pattern-outside': ['pattern.outside', `${FLOOR}.layout`],
  'pattern-overlap': ['pattern.overlap', `${FLOOR}.layout`],
  'placed-twice': ['assembly.placed-twice', 'assembly[3].part'],
  'reserved-key': ['json.refused-key', 'parts.wall.__proto__'],
  'row-outside-wall': ['row.outside-wall', `${WALL}.height`],
  'too-large': ['json.too-large', 'line 13, column 91'],
  'trim-above-can': ['trim.above-can', 'parts.fuel can.trim.height'],
  'two-shells': ['parts.role-twice', 'parts.fuel can.role'],
  'unknown-key': ['key.unknown', `${WALL}.heigth`],
  'unknown-part': ['assembly.unknown-part', 'assembly[1].host'],
  'vanes-inside-out': ['vanes.radii', 'parts.disc.openings.vanes.innerRadius'],
  'vanes-overlap': ['vanes.overlap', 'parts.disc.openings.vanes.width'],
  'window-taller-than-wall': ['opening.taller-than-wall', `${WALL}.hole.window.height`],
  'wrong-unit': ['length.wrong-kind', 'fuel.level'],
}

/** What else follows from the one fault. */
const alsoTold: Readonly<Record<string, readonly string[]>> = { 'two-shells': ['parts.no-fuel-can'] }

const folder = fileURLToPath(new URL('../../bad-files/', import.meta.url))

/** For whoever judges the sentences. */
const told: string[] = []
afterAll(() => console.log(told.join('\n')))

test('every bad file is in the table, and every row of the table has its file', () => {
  expect(readdirSync(folder).sort()).toEqual(
    Object.keys(expected)
      .map((name) => `${name}.txt`)
      .sort(),
  )
})

test.each(Object.entries(expected))('%s', (name, [code, field]) => {
  const outcome = readStove(readFileSync(`${folder}${name}.txt`, 'utf8'))
  if (outcome.ok) throw new Error('was taken for a good stove')
  const [first, ...more] = outcome.problems
  expect(first).toMatchObject({ code, field })
  expect(more.map((problem) => problem.code)).toEqual(alsoTold[name] ?? [])
  for (const problem of outcome.problems) {
    for (const part of [problem.value, problem.allowed, problem.fix]) expect(part).not.toBe('')
    const sentence = problemSentence(problem)
    expect(sentence).toMatch(/[.?!]$/)
    expect(sentence).not.toMatch(/undefined|NaN m|Infinity|\[object/)
    told.push(`${name}: ${sentence}`)
  }
})
