import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { emptyNetwork, linkConductance, linkFlow, OUTSIDE } from '#science/draft/network.ts'
import { createSolver } from '#science/draft/solve.ts'
import { type LinkData, networkOf, orifice, solveNetwork } from '#scripts/validation/draught/solvedNetwork.ts'
import { relativeMiss } from '../relativeMiss.ts'

describe('one passage', () => {
  const law = fc.record({
    linear: fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
    quadratic: fc.double({ min: 0, max: 1e9, noNaN: true }),
    // In steps of a micropascal: numbers too small to be numbers prove nothing.
    drive: fc.integer({ min: -50_000_000, max: 50_000_000 }).map((steps) => steps / 1e6),
  })

  test('its flow answers the law: linear·ṁ + quadratic·ṁ|ṁ| is the drive', () => {
    fc.assert(
      fc.property(law, ({ linear, quadratic, drive }) => {
        const m = linkFlow(linear, quadratic, drive)
        expect(Math.abs(linear * m + quadratic * m * Math.abs(m) - drive)).toBeLessThanOrEqual(
          1e-12 * Math.abs(drive),
        )
      }),
      { seed: 1, numRuns: 500 },
    )
  })

  test('it is odd', () => {
    fc.assert(
      fc.property(law, ({ linear, quadratic, drive }) => {
        expect(linkFlow(linear, quadratic, -drive) + linkFlow(linear, quadratic, drive)).toBe(0)
      }),
      { seed: 2, numRuns: 500 },
    )
  })

  test('it rises with the drive', () => {
    fc.assert(
      fc.property(
        law,
        fc.double({ min: 1e-6, max: 1, noNaN: true }),
        ({ linear, quadratic, drive }, more) => {
          expect(linkFlow(linear, quadratic, drive + more)).toBeGreaterThan(
            linkFlow(linear, quadratic, drive),
          )
        },
      ),
      { seed: 3, numRuns: 500 },
    )
  })

  test('its derivative is the finite difference', () => {
    fc.assert(
      fc.property(law, ({ linear, quadratic, drive }) => {
        // Away from the origin: there the third derivative of the root defeats any step.
        fc.pre(Math.abs(drive) > 1e-2)
        const step = 1e-5 * Math.abs(drive)
        const slope =
          (linkFlow(linear, quadratic, drive + step) - linkFlow(linear, quadratic, drive - step)) / (2 * step)
        expect(relativeMiss(slope, linkConductance(linear, quadratic, drive))).toBeLessThan(1e-6)
      }),
      { seed: 4, numRuns: 500 },
    )
  })

  test('it has a finite derivative at rest', () => {
    expect(linkConductance(20, 1e6, 0)).toBe(1 / 20)
  })
})

describe('orifices in series and side by side', () => {
  test('3 and 4 in series make 2.4 exactly', () => {
    const two = solveNetwork(1, [orifice(OUTSIDE, 0, 3, 1), orifice(0, OUTSIDE, 4)])
    expect(two.flow[0]).toBeCloseTo(2.4, 6)
  })

  test('3 and 4 side by side make 7', () => {
    const wide = 1e4
    const both = solveNetwork(1, [
      orifice(OUTSIDE, 0, 3, 1),
      orifice(OUTSIDE, 0, 4, 1),
      orifice(0, OUTSIDE, wide),
    ])
    expect((both.flow[0] as number) + (both.flow[1] as number)).toBeCloseTo(7, 5)
  })
})

describe('the solver', () => {
  test('conserves mass at every node of random networks, with gains and reversed flows', () => {
    const network = fc.integer({ min: 1, max: 8 }).chain((nodes) =>
      fc.record({
        nodes: fc.constant(nodes),
        links: fc.array(
          fc.record({
            from: fc.integer({ min: OUTSIDE, max: nodes - 1 }),
            to: fc.integer({ min: OUTSIDE, max: nodes - 1 }),
            linear: fc.double({ min: 0.5, max: 1e5, noNaN: true }),
            quadratic: fc.double({ min: 0, max: 1e8, noNaN: true }),
            head: fc.integer({ min: -3_000_000, max: 3_000_000 }).map((steps) => steps / 1e6),
            gain: fc.double({ min: 1, max: 1.6, noNaN: true }),
          }),
          { minLength: nodes, maxLength: 16 },
        ),
      }),
    )
    fc.assert(
      fc.property(network, ({ nodes, links }) => {
        // Every node has a way out, so that its pressure means something.
        const open = Array.from({ length: nodes }, (_, node) => ({
          ...orifice(node, OUTSIDE, 1e-4),
          linear: 1,
        }))
        const all: LinkData[] = [...links.filter(({ from, to }) => from !== to), ...open]
        const { status, flow: flows } = solveNetwork(nodes, all)
        expect(status).toBe('balanced')
        const largest = Math.max(...flows.map(Math.abs))
        for (let node = 0; node < nodes; node++) {
          const imbalance = all.reduce((sum, { from, to, gain }, k) => {
            const m = flows[k] as number
            if (from === node) return sum - m
            return to === node ? sum + (m > 0 ? m * gain : m) : sum
          }, 0)
          expect(Math.abs(imbalance)).toBeLessThanOrEqual(1e-9 * largest)
        }
      }),
      { seed: 5, numRuns: 300 },
    )
  })

  test('two equal openings with nothing to drive them come to rest from any start', () => {
    const solver = createSolver(networkOf(1, [orifice(OUTSIDE, 0, 1e-3), orifice(0, OUTSIDE, 1e-3)]))
    solver.pressure[0] = 0.4
    expect(solver.solve().status).toBe('balanced')
    expect(solver.flow[0]).toBeCloseTo(0, 12)
  })

  test('a chamber with one way out stands still', () => {
    const rest = solveNetwork(2, [orifice(OUTSIDE, 0, 1e-3, -0.7), orifice(0, 1, 1e-2, 0.3)])
    expect(rest.status).toBe('balanced')
    for (const m of rest.flow) expect(Math.abs(m)).toBeLessThan(1e-12)
    expect(rest.pressure[0]).toBeCloseTo(-0.7, 10)
  })

  test('a chamber without any way out is called sealed', () => {
    expect(solveNetwork(2, [orifice(OUTSIDE, 0, 1e-3, 1), orifice(0, OUTSIDE, 1e-3)]).status).toBe('sealed')
  })

  test('a number that is none is said so', () => {
    expect(solveNetwork(1, [orifice(OUTSIDE, 0, 1, Number.NaN), orifice(0, OUTSIDE, 1)]).status).toBe(
      'not finite',
    )
  })

  test('the start makes no difference', () => {
    const net = networkOf(2, [
      orifice(OUTSIDE, 0, 1e-3, 0.3),
      orifice(0, 1, 2e-3, 0.5),
      orifice(1, OUTSIDE, 1e-3, 1),
    ])
    const flows = [0, 5, -5, 100].map((start) => {
      const solver = createSolver(net)
      solver.pressure.fill(start)
      expect(solver.solve().status).toBe('balanced')
      return solver.flow[0] as number
    })
    for (const m of flows) expect(relativeMiss(m, flows[0] as number)).toBeLessThan(1e-9)
  })

  test('an empty network’s links pass all mass on', () => {
    expect([...emptyNetwork(2, 3).gain]).toEqual([1, 1, 1])
  })
})
