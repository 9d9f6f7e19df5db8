import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type BorderFlow, matchFlows } from '#craft/section/match.ts'

/** Flows round a border that add up to nothing. */
const balanced = fc
  .array(
    fc.double({ min: -5, max: 5, noNaN: true }).filter((flow) => Math.abs(flow) > 1e-3),
    { minLength: 1, maxLength: 9 },
  )
  .map((flows) => {
    const rest = -flows.reduce((sum, flow) => sum + flow, 0)
    return (Math.abs(rest) > 1e-3 ? [...flows, rest] : flows.length > 1 ? flows : [1, -1]).map(
      (flow, at): BorderFlow<number> => ({ at, flow }),
    )
  })
  .filter((border) => Math.abs(border.reduce((sum, { flow }) => sum + flow, 0)) < 1e-9)

describe('inflows joined to outflows', () => {
  test('every flow is used up, once', () => {
    fc.assert(
      fc.property(balanced, (border) => {
        const strands = matchFlows(border)
        for (const { at, flow } of border) {
          const spans = strands
            .flatMap(({ from, fromSpan, to, toSpan }) => [
              ...(from === at ? [fromSpan] : []),
              ...(to === at ? [toSpan] : []),
            ])
            .sort((a, b) => a.from - b.from)
          const used = spans.reduce((sum, { from, to }) => sum + to - from, 0)
          expect(used).toBeCloseTo(Math.abs(flow), 6)
          for (const [i, span] of spans.entries())
            expect(span.from).toBeGreaterThanOrEqual((spans[i - 1]?.to ?? 0) - 1e-9)
        }
      }),
    )
  })

  test('a strand is as wide where it ends as where it begins, and leads from an inflow to an outflow', () => {
    fc.assert(
      fc.property(balanced, (border) => {
        for (const { from, fromSpan, to, toSpan } of matchFlows(border)) {
          expect(toSpan.to - toSpan.from).toBeCloseTo(fromSpan.to - fromSpan.from, 9)
          expect(border[from]?.flow).toBeGreaterThan(0)
          expect(border[to]?.flow).toBeLessThan(0)
        }
      }),
    )
  })

  test('no two strands cross', () => {
    fc.assert(
      fc.property(balanced, (border) => {
        // Place of a strand's middle on the way round the room.
        const starts = border.map((_, i) =>
          border.slice(0, i).reduce((sum, { flow }) => sum + Math.abs(flow), 0),
        )
        const chords = matchFlows(border).map(({ from, fromSpan, to, toSpan }) => {
          const a = (starts[from] ?? 0) + (fromSpan.from + fromSpan.to) / 2
          const b = (starts[to] ?? 0) + (toSpan.from + toSpan.to) / 2
          return [Math.min(a, b), Math.max(a, b)] as const
        })
        for (const [a, b] of chords)
          for (const [c, d] of chords) expect(a + 1e-9 < c && c + 1e-9 < b && b + 1e-9 < d).toBe(false)
      }),
    )
  })

  test('what came last is joined first', () => {
    const border = [
      { at: 'fuel', flow: 1 },
      { at: 'ring', flow: 2 },
      { at: 'vanes', flow: -0.5 },
      { at: 'bore', flow: -2.5 },
    ]
    expect(matchFlows(border).map(({ from, to }) => `${from} to ${to}`)).toEqual([
      'ring to vanes',
      'ring to bore',
      'fuel to bore',
    ])
  })
})
