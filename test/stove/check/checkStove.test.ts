import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BadInput } from '#basis/problem.ts'
import { degrees } from '#basis/units.ts'
import { CHECKS, checkStove } from '#stove/check/checkStove.ts'
import { AREAS, DAMPER, DRILL, FIT, HEIGHTS, STAND, TIN } from '#stove/check/rules.ts'
import type { Opening, Part, Stove } from '#stove/model.ts'
import { soundStove } from './soundStove.ts'
import { brief, canPart, lone, place, rings, round, row, shelf, stove } from './stoves.ts'

describe('the whole of the checks', () => {
  test('a sound stove is told only how to drill its floor', () => {
    expect(brief(checkStove(soundStove(), null))).toEqual(['note drill.from-outside fuel/floor'])
  })

  test('worst first, then by part and opening', () => {
    const found = checkStove(
      lone(
        canPart(
          'shell',
          {},
          {
            b: row('intake', 40, round(7), 40),
            a: row('intake', 45, round(7), 80),
            c: row('intake', 24, round(7), 60),
          },
        ),
      ),
      shelf(7),
    ).filter(({ code }) => code === 'spacing.neighbours')
    // Circumference 314.16 mm: 45 holes leave −0.02 mm, 40 leave 0.85 mm, 24 leave 6.1 mm.
    expect(brief(found)).toEqual([
      'stop spacing.neighbours can/a',
      'warn spacing.neighbours can/b',
      'note spacing.neighbours can/c',
    ])
  })

  test('the order of the parts in the file does not matter', () => {
    const sound = soundStove({ fuel: { upper: row('secondary', 40, round(8), 146) } })
    const turned: Stove = { ...sound, parts: new Map([...sound.parts].reverse()) }
    expect(checkStove(turned, null)).toEqual(checkStove(sound, null))
  })

  test('an assembly of parts that are not there is refused', () => {
    const broken = stove({}, [place('shell', 'on ground')])
    expect(() => checkStove(broken, null)).toThrow(BadInput)
  })

  test('every threshold says what it means and where it is from', () => {
    for (const rule of [TIN, DRILL, HEIGHTS, FIT, DAMPER, STAND, AREAS].flatMap((table) =>
      Object.values(table),
    )) {
      expect(rule.meaning).not.toBe('')
      expect(rule.provenance).toMatch(/read|derived|from memory|common practice, no source/)
    }
  })

  test('sentences are sentences', () => {
    const found = checkStove(soundStove({ fuel: { upper: row('secondary', 40, round(8), 146) } }), shelf(3))
    expect(found.length).toBeGreaterThan(3)
    for (const { sentence, fix } of found)
      for (const text of [sentence, fix]) expect(text).toMatch(/^[A-Z“0-9].*[^.]\.$/)
  })
})

const turnedOpening = (opening: Opening, by: (bearing: number) => number): Opening => {
  switch (opening.kind) {
    case 'row':
    case 'vanes':
      return { ...opening, bearing: degrees(by(opening.bearing)) }
    case 'pattern':
      return {
        ...opening,
        holes: opening.holes.map((hole) => ({ ...hole, bearing: degrees(by(hole.bearing)) })),
      }
    case 'bore':
      return opening
  }
}

/** Moves every bearing of every opening of a part. */
const turnedPart = (part: Part, by: (bearing: number) => number): Part => ({
  ...part,
  openings: new Map([...part.openings].map(([name, opening]) => [name, turnedOpening(opening, by)])),
})

const crowded = (): Stove =>
  soundStove({
    fuel: {
      upper: row('secondary', 30, round(8), 130, { bearing: 3 }),
      above: row('secondary', 30, round(6), 141, { bearing: 11 }),
      floor: rings('primary', 8, [
        [14, 6],
        [38, 20],
      ]),
    },
  })

const withParts = (from: Stove, change: (part: Part) => Part): Stove => ({
  ...from,
  parts: new Map([...from.parts].map(([name, part]) => [name, change(part)])),
})

describe('symmetries', () => {
  test('turning all openings of every can changes nothing', () => {
    const still = brief(checkStove(crowded(), null))
    expect(still.length).toBeGreaterThan(2)
    fc.assert(
      fc.property(fc.double({ min: -360, max: 360, noNaN: true }), (turn) => {
        const turned = withParts(crowded(), (part) => turnedPart(part, (bearing) => bearing + turn))
        expect(brief(checkStove(turned, null))).toEqual(still)
      }),
      { numRuns: 30 },
    )
  })

  test('a mirrored stove has the same findings', () => {
    const mirrored = withParts(crowded(), (part) => turnedPart(part, (bearing) => -bearing))
    expect(brief(checkStove(mirrored, null))).toEqual(brief(checkStove(crowded(), null)))
  })
})

test('every check has a name of its own', () => {
  expect(new Set(Object.values(CHECKS)).size).toBe(Object.keys(CHECKS).length)
})
