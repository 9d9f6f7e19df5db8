import { describe, expect, test } from 'vitest'
import { orThrow, problemSentence } from '#basis/problem.ts'
import { bodyInside } from '#stove/can/ends.ts'
import { formatStoveFile } from '#stove/document/format.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { readStoveDocument, readStoveValue } from '#stove/document/read.ts'
import type { FuelCharge, Stove } from '#stove/model.ts'
import { exampleNamed } from './examples.ts'

const LEVEL = '80 mm'
const PIECES = { diameter: '9 mm', length: '35 mm' }

const reading = (fuel: Record<string, unknown>) =>
  readStoveValue({ ...JSON.parse(exampleNamed('heron').text), fuel } as JsonValue)

const stoveOf = (fuel: Record<string, unknown>): Stove => orThrow(reading(fuel)).stove
const chargeOf = (fuel: Record<string, unknown>): FuelCharge => stoveOf(fuel).fuel
const ownOf = (own: Record<string, unknown>) => {
  const charge = chargeOf({ own: { name: 'hazel twigs', like: 'twigs', ...own }, level: LEVEL })
  if (charge.own === undefined) throw new Error('no own fuel was read')
  return { charge, own: charge.own }
}

/** Inside of heron's fuel can [m]. */
const inside = (() => {
  const can = stoveOf({ kind: 'twigs', level: LEVEL }).parts.get('fuel can')
  if (can?.form !== 'can') throw new Error('heron has no fuel can')
  return bodyInside(can.can).value
})()

describe('a fuel of the table', () => {
  test('as files had it before fines and packing were asked', () => {
    expect(chargeOf({ kind: 'twigs', level: LEVEL })).toEqual({ kind: 'twigs', moisture: null, level: 0.08 })
  })

  test('with fines, and stood upright', () => {
    const charge = chargeOf({ kind: 'twigs', level: LEVEL, fines: '5 %', packing: 'upright' })
    expect(charge).toMatchObject({ packing: 'upright' })
    expect(charge.fines).toBeCloseTo(0.05, 12)
  })
})

describe('an own fuel', () => {
  test('a filling of the fuel can up to the fuel level: weight over π/4 D² h', () => {
    const { own } = ownOf({ filling: { weight: '150 g' } })
    expect(own.bulk?.density).toBeCloseTo(0.15 / ((Math.PI / 4) * inside ** 2 * 0.08), 9)
    expect(own.bulk?.vesselDiameter).toBe(inside)
  })

  test('a filling of any vessel, taken to be as wide as it is high', () => {
    const { own } = ownOf({ filling: { weight: '150 g', volume: '0.6 L' } })
    expect(own.bulk?.density).toBeCloseTo(250, 9)
    const wide = own.bulk?.vesselDiameter ?? Number.NaN
    expect((Math.PI / 4) * wide ** 3).toBeCloseTo(0.0006, 12)
  })

  // Oven-dry method on the wet basis: (100 − 87)/100.
  test('dried from 100 g to 87 g it was 13 % moist', () => {
    const { charge, own } = ownOf({ dried: { before: '100 g', after: '87 g' } })
    expect(charge.moisture).toBeCloseTo(0.13, 12)
    expect(own.moisture).toBe(charge.moisture)
  })

  test('dried to the same weight it was dry', () => {
    expect(ownOf({ dried: { before: '100 g', after: '100 g' } }).charge.moisture).toBe(0)
  })

  test('moisture from a meter stands for what was weighed too', () => {
    const own = { name: 'chips', like: 'wood-chips', filling: { weight: '120 g' } }
    const charge = chargeOf({ own, level: LEVEL, moisture: '18 %' })
    expect(charge.moisture).toBeCloseTo(0.18, 12)
    expect(charge.own?.moisture).toBe(charge.moisture)
  })

  test('pieces round and square', () => {
    expect(ownOf({ pieces: PIECES }).own.pieces).toEqual({ shape: 'rod', diameter: 0.009, length: 0.035 })
    expect(ownOf({ pieces: { length: '20 mm', width: '1/2 in', thickness: '6 mm' } }).own.pieces).toEqual({
      shape: 'block',
      length: 0.02,
      width: 0.0127,
      thickness: 0.006,
    })
  })

  // 20 rods of 9 × 35 mm hold 20 · π/4 · 0.9² · 3.5 = 44.53 cm³; 31 g of them have 696 kg/m³.
  test('weighed pieces say how heavy the wood is', () => {
    const { own } = ownOf({ pieces: { ...PIECES, weighed: { count: 20, weight: '31 g' } } })
    expect(own.pieceDensity).toBeCloseTo(696.1, 0)
  })

  test('it is of the kind it is like; what was not measured is left open', () => {
    const { charge, own } = ownOf({ pieces: PIECES })
    expect(charge.kind).toBe('twigs')
    expect(own).toMatchObject({ name: 'hazel twigs', moisture: null, bulk: null, pieceDensity: null })
  })
})

test('written and read again it is the same, keys in the order of the schema', () => {
  const fuel = {
    packing: 'upright',
    level: LEVEL,
    fines: '2 %',
    own: {
      pieces: { weighed: { weight: '31 g', count: 20 }, length: '35 mm', diameter: '9 mm' },
      dried: { after: '87 g', before: '100 g' },
      filling: { volume: '0.6 L', weight: '180 g' },
      like: 'twigs',
      name: 'hazel twigs',
    },
  }
  const { file, stove } = orThrow(reading(fuel))
  const written = formatStoveFile(file)
  expect(written).toContain(`  "fuel": {
    "own": {
      "name": "hazel twigs",
      "like": "twigs",
      "filling": { "weight": "180 g", "volume": "0.6 L" },
      "dried": { "before": "100 g", "after": "87 g" },
      "pieces": { "diameter": "9 mm", "length": "35 mm", "weighed": { "count": 20, "weight": "31 g" } }
    },
    "level": "80 mm",
    "fines": "2 %",
    "packing": "upright"
  },`)
  const again = orThrow(readStoveDocument(written))
  expect(again.stove.fuel).toEqual(stove.fuel)
  expect(formatStoveFile(again.file)).toBe(written)
})

describe('what is told', () => {
  const own = (more: Record<string, unknown>) => ({
    own: { name: 'hazel twigs', like: 'twigs', ...more },
    level: LEVEL,
  })
  const cases: readonly (readonly [string, Record<string, unknown>, string, string])[] = [
    ['no fuel at all', { level: LEVEL }, 'key.missing', 'fuel.kind'],
    ['both', { kind: 'twigs', ...own({ pieces: PIECES }) }, 'fuel.kind-and-own', 'fuel.kind'],
    ['nothing measured', own({}), 'fuel.nothing-measured', 'fuel.own.filling'],
    ['a name of nothing', own({ name: ' ', pieces: PIECES }), 'fuel.no-name', 'fuel.own.name'],
    ['like nothing', { own: { name: 'x', pieces: PIECES }, level: LEVEL }, 'fuel.kind', 'fuel.own.like'],
    [
      'heavier when dry',
      own({ dried: { before: '87 g', after: '100 g' } }),
      'fuel.heavier-dry',
      'fuel.own.dried.after',
    ],
    ['mostly water', own({ dried: { before: '100 g', after: '20 g' } }), 'fuel.too-wet', 'fuel.own.dried'],
    [
      'moisture twice',
      { ...own({ dried: { before: '100 g', after: '87 g' } }), moisture: '12 %' },
      'fuel.moisture-twice',
      'fuel.moisture',
    ],
    [
      'a weight without a unit',
      own({ filling: { weight: '150' } }),
      'mass.no-unit',
      'fuel.own.filling.weight',
    ],
    ['no weight at all', own({ filling: { weight: '0 g' } }), 'mass.range', 'fuel.own.filling.weight'],
    [
      'a filling like lead',
      own({ filling: { weight: '900 g', volume: '0.2 L' } }),
      'fuel.bulk-density',
      'fuel.own.filling.weight',
    ],
    ['a filling of air', own({ filling: { weight: '5 g' } }), 'fuel.bulk-density', 'fuel.own.filling.weight'],
    [
      'pieces like iron',
      own({ pieces: { ...PIECES, weighed: { count: 2, weight: '31 g' } } }),
      'fuel.piece-density',
      'fuel.own.pieces.weighed.weight',
    ],
    [
      'a filling denser than its pieces',
      own({
        filling: { weight: '420 g', volume: '0.6 L' },
        pieces: { ...PIECES, weighed: { count: 20, weight: '29 g' } },
      }),
      'fuel.denser-than-pieces',
      'fuel.own.filling.weight',
    ],
    [
      'rods and blocks at once',
      own({ pieces: { diameter: '9 mm', length: '35 mm', width: '9 mm' } }),
      'key.unknown',
      'fuel.own.pieces.width',
    ],
    ['half a rod', own({ pieces: { diameter: '9 mm' } }), 'length.empty', 'fuel.own.pieces.length'],
    ['half dust', { kind: 'twigs', level: LEVEL, fines: '50 %' }, 'share.range', 'fuel.fines'],
    ['a share without a unit', { kind: 'twigs', level: LEVEL, fines: '5' }, 'share.no-unit', 'fuel.fines'],
    ['another packing', { kind: 'twigs', level: LEVEL, packing: 'on end' }, 'choice.unknown', 'fuel.packing'],
    ['a slip of the key', own({ filing: { weight: '150 g' } }), 'key.unknown', 'fuel.own.filing'],
  ]
  test.each(cases)('%s', (_, fuel, code, field) => {
    const outcome = reading(fuel)
    if (outcome.ok) throw new Error('was taken')
    expect(outcome.problems.map((problem) => [problem.code, problem.field])).toEqual([[code, field]])
    for (const problem of outcome.problems) {
      const sentence = problemSentence(problem)
      console.log(sentence)
      expect(sentence).toMatch(/[.?!]$/)
      expect(sentence).not.toMatch(/undefined|NaN|Infinity|\[object/)
    }
  })
})
