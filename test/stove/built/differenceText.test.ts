import fc from 'fast-check'
import { expect, test } from 'vitest'
import { orThrow } from '#basis/problem.ts'
import { readLength } from '#basis/text/length.ts'
import { differenceText } from '#stove/built/differenceText.ts'
import type { Measure } from '#stove/built/measure.ts'

const lengthMeasure: Measure = {
  kind: 'can height',
  path: [],
  part: 'can',
  opening: null,
  quantity: 'canHeight',
  readings: null,
  planned: null,
  label: 'height',
  how: '',
}

/** One half of `88 mm (3 15/32 in)` in its own unit, as a maker with a pencil would take it. */
const number = (text: string): number => {
  const [whole = '0', fraction] = text.replace(/ (?:mm|in|g|oz)$/, '').split(/ (?=\d+\/)/)
  const value = (part: string): number => {
    const [over, under = '1'] = part.split('/')
    return Number(over) / Number(under)
  }
  return value(whole) + (fraction === undefined ? 0 : value(fraction))
}
const halves = (text: string): readonly [number, number] => {
  const [, first, second] = /^(.+) \((.+)\)$/.exec(text) as unknown as [string, string, string]
  return [number(first), number(second)]
}

test('one millimetre less is seen in inches too, and comes out when the two are taken from each other', () => {
  expect(differenceText(lengthMeasure, 0.088, 0.087)).toEqual({
    planned: '88 mm (3 15/32 in)',
    built: '87 mm (3 27/64 in)',
    off: '1 mm (3/64 in)',
  })
  expect(differenceText(lengthMeasure, 0.012, 0.0122)).toEqual({
    planned: '12 mm (0.472 in)',
    built: '12.2 mm (0.480 in)',
    off: '0.2 mm (0.008 in)',
  })
})

test('whatever was measured, the difference is that of the two figures beside it, in both systems, and never nothing', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 200, max: 38_000 }),
      fc.integer({ min: 6, max: 1_000 }),
      fc.boolean(),
      (hundredths, apart, more) => {
        const [planned, built] = [
          hundredths / 1e5,
          (hundredths + (more ? apart : -Math.min(apart, 100))) / 1e5,
        ]
        const text = differenceText(lengthMeasure, planned, built)
        const [one, other, off] = [text.planned, text.built, text.off].map(halves) as [
          readonly [number, number],
          readonly [number, number],
          readonly [number, number],
        ]
        for (const half of [0, 1] as const) {
          expect(Math.abs(other[half] - one[half])).toBeCloseTo(off[half], 6)
          expect(off[half]).toBeGreaterThan(0)
        }
        // Each figure stands for one length in both systems, to half a mark of the rule.
        for (const [mm, inch] of [one, other, off]) expect(Math.abs(mm - inch * 25.4)).toBeLessThan(0.21)
        for (const whole of [text.planned, text.built]) orThrow(readLength(whole, 'as built', 'clearance'))
      },
    ),
  )
})

test('weights too', () => {
  const weight: Measure = { ...lengthMeasure, kind: 'part weight', quantity: 'mass' }
  expect(differenceText(weight, 0.11, 0.112)).toEqual({
    planned: '110 g (3.88 oz)',
    built: '112 g (3.95 oz)',
    off: '2 g (0.07 oz)',
  })
})
