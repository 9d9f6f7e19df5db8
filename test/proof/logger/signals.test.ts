import { describe, expect, it } from 'vitest'
import { randomStream } from '#basis/random.ts'
import { align, aligned } from '#proof/logger/align.ts'
import { boilOf } from '#proof/logger/boil.ts'
import { burnRateOf } from '#proof/logger/burnRate.ts'
import { smoothed } from '#proof/logger/localLine.ts'
import { outliersOf, resolutionOf } from '#proof/logger/outliers.ts'

const seconds = Float64Array.from({ length: 900 }, (_, i) => i)

describe('burn rate from the scale', () => {
  it('of a steady fire is its slope, on a scale of 1 g with a knock on it', () => {
    const mass = seconds.map((t) => Math.round(1312 - 0.2 * t) / 1000)
    mass[400] = 1.9
    const { rate } = burnRateOf(seconds, mass)
    for (const one of rate) expect(Math.abs(one - 0.0002)).toBeLessThan(2e-5)
  })
})

it('an outlier is shown with its line, and nothing else is', () => {
  const value = seconds.map((t) => Math.round(290 + 0.1 * t))
  value[300] = 700
  const channel = {
    name: 'pot',
    quantity: 'temperature' as const,
    time: seconds,
    value,
    line: Uint32Array.from(seconds, (t) => t + 2),
  }
  const found = outliersOf(channel, smoothed(seconds, value, 30), resolutionOf(value))
  expect(found.map(({ line, value: v }) => [line, v])).toEqual([[302, 700]])
})

it('boiling begins where the water stays at its boiling point', () => {
  const stream = randomStream(3)
  const value = seconds.map((t) => Math.min(290 + 0.2 * t, 372.6) + stream.between(-0.2, 0.2))
  expect(Math.abs((boilOf(seconds, value, 372.6)?.time ?? 0) - 413)).toBeLessThan(12)
  expect(boilOf(seconds, value, 385)).toBeNull()
})

it('a clock that drifts is brought onto the log', () => {
  const found = align([
    { what: 'lit', logger: 100, log: 0 },
    { what: 'flame out', logger: 1900, log: 1818 },
  ])
  expect(aligned(found as NonNullable<typeof found>, 1000)).toBeCloseTo(909, 9)
  expect(found?.cautions.join()).toContain('36 s an hour slow')
  expect(align([])).toBeNull()
})
