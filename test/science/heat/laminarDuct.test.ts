import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import computed from '#reference/annulus.json' with { type: 'json' }
import reference from '#reference/heatTransfer.json' with { type: 'json' }
import {
  enteringNusselt,
  ringNusselt,
  TUBE_NUSSELT_ISOTHERMAL,
  TUBE_NUSSELT_UNIFORM_FLUX,
} from '#science/heat/laminarDuct.ts'

const relative = (value: number, expected: number): number => Math.abs(value / expected - 1)

describe('laminar flow in a ring gap', () => {
  test.each(computed.developed.rows as [number, number, number][])(
    `D_i/D_o %d, developed: ${computed.source}`,
    (ratio, inner, outer) => {
      expect(relative(ringNusselt(ratio, 'inner'), inner)).toBeLessThan(0.005)
      expect(relative(ringNusselt(ratio, 'outer'), outer)).toBeLessThan(0.005)
    },
  )

  test.each(computed.entry.rows as [number, 'inner' | 'outer', number, number][])(
    `D_i/D_o %d, %s wall, Gz %d, mean over the entry: ${computed.source}`,
    (ratio, wall, graetz, nusselt) => {
      expect(relative(enteringNusselt(ringNusselt(ratio, wall), graetz), nusselt)).toBeLessThan(0.026)
    },
  )

  test('the table that was remembered and the one that was worked out agree to its last digit', () => {
    for (const [ratio, inner, outer] of reference['annulus from memory'].rows as [
      number,
      number | null,
      number,
    ][]) {
      const row = computed.developed.rows.find(([k]) => k === ratio)
      if (row === undefined || inner === null) continue
      expect(Math.abs((row[1] as number) - inner)).toBeLessThan(0.006)
      expect(Math.abs((row[2] as number) - outer)).toBeLessThan(0.006)
    }
  })

  test(`round tubes: ${reference.tube.source}`, () => {
    expect(TUBE_NUSSELT_ISOTHERMAL).toBe(reference.tube.Nu_T_const)
    expect(TUBE_NUSSELT_UNIFORM_FLUX).toBeCloseTo(reference.tube.Nu_q_const, 12)
    // And the exact series: 3.657.
    expect(relative(TUBE_NUSSELT_ISOTHERMAL, computed.tube)).toBeLessThan(0.002)
  })

  test('a narrower ring evens its two walls out; entry always helps', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.999, noNaN: true }),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        (ratio, graetz) => {
          const inner = ringNusselt(ratio, 'inner')
          const outer = ringNusselt(ratio, 'outer')
          expect(inner).toBeGreaterThan(outer)
          expect(ringNusselt(Math.min(1, ratio * 1.001), 'inner')).toBeLessThan(inner)
          expect(ringNusselt(Math.min(1, ratio * 1.001), 'outer')).toBeGreaterThan(outer)
          expect(enteringNusselt(inner, graetz)).toBeGreaterThanOrEqual(inner)
          expect(enteringNusselt(inner, graetz + 1)).toBeGreaterThan(enteringNusselt(inner, graetz))
        },
      ),
    )
  })
})
