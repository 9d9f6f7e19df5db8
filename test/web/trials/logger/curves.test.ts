import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Mapping } from '#proof/logger/mapping.ts'
import { mappingText } from '#proof/logger/mappingFile.ts'
import { proposeMapping } from '#proof/logger/propose.ts'
import { byClocks, curveOf, loggerTime, nearestReading } from '#web/trials/logger/curves.ts'
import { fitting, mappingsIn } from '#web/trials/logger/keptMappings.ts'
import { panned, zoomed } from '#web/trials/logger/viewRange.ts'

const channel = (time: readonly number[], value: readonly number[]) => ({
  name: 'T1',
  quantity: 'temperature' as const,
  time: Float64Array.from(time),
  value: Float64Array.from(value),
  line: Uint32Array.from(time, (_, i) => i + 2),
})
const shifted = (offset: number, rate = 1) => ({ offset, rate, residuals: [], cautions: [] })

describe('curves of a logger', () => {
  it('draws minutes after lighting and °C, and lifts the pen over a gap', () => {
    const { x, y } = curveOf(
      channel([0, 1, 2, 3, 33, 34], [293.15, 294.15, 295.15, 296.15, 300.15, 301.15]),
      shifted(60),
    )
    expect(x.map((one) => Number(one.toFixed(4)))).toEqual([1, 1.0167, 1.0333, 1.05, 1.3, 1.55, 1.5667])
    expect(y.map((one) => (one === null ? null : Number(one.toFixed(2))))).toEqual([
      20,
      21,
      22,
      23,
      null,
      27,
      28,
    ])
  })

  it('reads the nearest reading, and none across a gap', () => {
    const one = channel([0, 1, 2, 40], [290, 291, 292, 293])
    expect(nearestReading(one, 1.4)?.value).toBe(291)
    expect(nearestReading(one, 20)).toBeNull()
    expect(nearestReading(channel([], []), 0)).toBeNull()
  })

  it('goes from log to logger and back', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -2000, max: 2000 }),
        fc.integer({ min: 990, max: 1010 }),
        (offset, milli) => {
          const alignment = shifted(offset, milli / 1000)
          expect(alignment.offset + alignment.rate * loggerTime(alignment, 612)).toBeCloseTo(612, 6)
        },
      ),
    )
  })

  it('goes by the clocks across midnight, and not when they are hours apart', () => {
    const lit = { ofDay: 23 * 3600 + 3590, since1970: 1_937_000_000 }
    expect(byClocks('time of day', 5, lit)).toBe(15)
    expect(byClocks('time of day', 12 * 3600, lit)).toBeNull()
    expect(byClocks('elapsed', 5, lit)).toBeNull()
    expect(byClocks('seconds since 1970', 1_936_999_940, lit)).toBe(-60)
  })
})

describe('moving along the time line', () => {
  const all = { from: -2, to: 60 }
  it('never leaves what there is, and keeps the moment under the hand', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.constantFrom(0.5, 1 / 1.2, 1.2, 3),
        (share, by) => {
          const now = { from: 10, to: 20 }
          const about = 10 + 10 * share
          const next = zoomed(now, about, by, all)
          expect(next.from).toBeGreaterThanOrEqual(all.from)
          expect(next.to).toBeLessThanOrEqual(all.to)
          if (by < 1) expect((about - next.from) / (next.to - next.from)).toBeCloseTo(share, 6)
        },
      ),
    )
    expect(panned({ from: 50, to: 60 }, 0.5, all)).toEqual({ from: 50, to: 60 })
    expect(panned({ from: 10, to: 20 }, -0.1, all)).toEqual({ from: 9, to: 19 })
    expect(zoomed({ from: 0, to: 1 }, 0.5, 1e-9, all).to).toBeGreaterThan(0.5)
  })
})

const TEXT = 'Time (s),T1 (°C),Scale (g)\n0,20,1000\n1,21,999\n2,22,998\n3,23,997\n'

const mappingOf = (text: string): Mapping => {
  const proposal = proposeMapping(text)
  if (!proposal.ok || proposal.value.kind !== 'mapping') throw new Error('No mapping')
  return proposal.value.mapping
}

describe('mappings kept for next time', () => {
  const kept = { name: 'kitchen logger', mapping: mappingOf(TEXT) }

  it('come back from the setting, and what does not read is left out', () => {
    const text = JSON.stringify([
      { name: kept.name, mapping: mappingText(kept.mapping) },
      { name: 'broken', mapping: '{}' },
      'nonsense',
    ])
    expect(mappingsIn(text)).toEqual([kept])
    expect(mappingsIn('no json')).toEqual([])
  })

  it('fit a file with the same headings and no other', () => {
    expect(fitting(TEXT.replaceAll('20', '25'), [kept])?.name).toBe('kitchen logger')
    expect(fitting(TEXT.replace('T1', 'T2'), [kept])).toBeNull()
    expect(fitting(TEXT.replace('(g)', '(oz)'), [kept])).toBeNull()
  })
})
