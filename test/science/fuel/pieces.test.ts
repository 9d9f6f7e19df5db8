import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  cylinderSauterDiameter,
  equalVolumeDiameter,
  girth,
  isStick,
  sauterDiameter,
  sphericity,
} from '#science/fuel/pieces.ts'
import { anyPieces, block, rod } from './pieces.ts'

test('a cylinder as long as it is thick has the Sauter diameter of its sphere', () => {
  expect(cylinderSauterDiameter(0.01, 0.01)).toBeCloseTo(0.01, 12)
})

test('so has a cube', () => {
  expect(sauterDiameter(block(10, 10, 10))).toBeCloseTo(0.01, 12)
})

// 6 · 20·12·6 / (2·(20·12 + 20·6 + 12·6)) = 8640/864.
test('a chip of 20 × 12 × 6 mm has 10 mm', () => {
  expect(sauterDiameter(block(20, 12, 6))).toBeCloseTo(0.01, 12)
})

// Wadell's sphericity of a cube is (π/6)^(1/3) = 0.806, of a cylinder as long as it is thick (2/3)^(1/3) = 0.874.
test('sphericity of cube and short cylinder, exact', () => {
  expect(sphericity(block(7, 7, 7))).toBeCloseTo(Math.cbrt(Math.PI / 6), 12)
  expect(sphericity(rod(7, 7))).toBeCloseTo(Math.cbrt(2 / 3), 12)
})

test('no piece is rounder than a ball, and none is finer than its thickness', () => {
  fc.assert(
    fc.property(anyPieces, (pieces) => {
      expect(sphericity(pieces)).toBeLessThan(1)
      expect(sauterDiameter(pieces)).toBeLessThan(equalVolumeDiameter(pieces))
    }),
    { seed: 41 },
  )
})

test('a piece goes end first through a hole of its middle size', () => {
  expect(girth(block(20, 6, 12))).toBeCloseTo(0.012, 12)
  expect(girth(rod(9, 35))).toBeCloseTo(0.009, 12)
  expect(girth(rod(9, 3))).toBeCloseTo(0.009, 12)
})

test('sticks stand, pellets and chips do not', () => {
  expect(isStick(rod(10, 40))).toBe(true)
  expect(isStick(block(60, 12, 12))).toBe(true)
  expect(isStick(rod(6, 15))).toBe(false)
  expect(isStick(block(20, 12, 6))).toBe(false)
})
