import fc from 'fast-check'
import { expect, test } from 'vitest'
import { editDistance, nearest } from '#stove/document/nearest.ts'

const word = fc.string({ maxLength: 12 })

test('edit distance is a distance: nothing to itself, the same both ways, at most the longer word', () => {
  fc.assert(
    fc.property(word, word, (a, b) => {
      expect(editDistance(a, a)).toBe(0)
      expect(editDistance(a, b)).toBe(editDistance(b, a))
      expect(editDistance(a, b)).toBeLessThanOrEqual(
        Math.max([...a.toLowerCase()].length, [...b.toLowerCase()].length),
      )
      expect(editDistance(a, b) === 0).toBe(a.toLowerCase() === b.toLowerCase())
    }),
  )
})

test.each([
  ['heigth', 'height', 1],
  ['kitten', 'sitting', 3],
  ['', 'bit', 3],
  ['Bit', 'bit', 0],
])('%s → %s: %i', (a, b, distance) => expect(editDistance(a, b)).toBe(distance))

test('offers what was meant, and nothing where nothing is near', () => {
  expect(nearest('heigth', ['count', 'height', 'hole'])).toBe('height')
  expect(nearest('leftout', ['leftOut', 'count'])).toBe('leftOut')
  expect(nearest('seamDiametre', ['seamDiameter', 'bodyDiameter'])).toBe('seamDiameter')
  expect(nearest('colour', ['count', 'height', 'hole'])).toBeNull()
  expect(nearest('d', ['to', 'x'])).toBeNull()
})
