import { expect, test } from 'vitest'
import { tabulated } from '#basis/numerics/table.ts'

test('a table of a smooth function is as good as its step says, and asks the function beyond its ends', () => {
  const root = tabulated(Math.sqrt, 100, 400, 2)
  // Error of straight lines: |f″| h²/8 = ¼·100^(−3/2)·4/8 = 1.25e-4 at the low end.
  for (let x = 100; x <= 400; x += 0.37) expect(Math.abs(root(x) - Math.sqrt(x))).toBeLessThan(1.3e-4)
  expect(root(9)).toBe(3)
  expect(root(10_000)).toBe(100)
})
