import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import knownMisses from '#reference/known-misses.json' with { type: 'json' }
import { expectWithin } from './outsideCheck.ts'

// What these print is not true.
beforeEach(() => {
  vi.spyOn(console, 'log').mockImplementation(() => {})
})
afterEach(() => {
  vi.restoreAllMocks()
})

test('a miss that is not known fails', () => {
  expect(() => expectWithin('invented', 0.011, 0.01)).toThrow('misses by 1.10 %')
})

test('a hit passes', () => {
  expect(() => expectWithin('invented', 0.009, 0.01)).not.toThrow()
})

test.each(knownMisses.rows)('a known miss fails when it starts to pass: $check', ({ check }) => {
  expect(() => expectWithin(check, 0.02, 0.01)).not.toThrow()
  expect(() => expectWithin(check, 0.009, 0.01)).toThrow('take it out')
})

test('every known miss has a reason', () => {
  for (const { why } of knownMisses.rows) expect(why.length).toBeGreaterThan(20)
})
