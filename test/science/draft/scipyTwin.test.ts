import { describe, expect, test } from 'vitest'
import twin from '#reference/network-scipy.json' with { type: 'json' }
import networks from '#reference/networks.json' with { type: 'json' }
import { solveNetwork } from './networks.ts'

describe(`the same networks solved by SciPy (${twin.source})`, () => {
  test('are at least ten', () => {
    expect(networks.length).toBeGreaterThanOrEqual(10)
    expect(twin.rows.map(({ name }) => name)).toEqual(networks.map(({ name }) => name))
  })

  test.each(networks)('$name', ({ name, nodes, links }) => {
    const expected = twin.rows.find((row) => row.name === name)
    const { status, flow } = solveNetwork(nodes, links)
    expect(status).toBe('balanced')
    const largest = Math.max(...flow.map(Math.abs))
    for (const [k, m] of flow.entries()) {
      const theirs = expected?.flow[k] ?? Number.NaN
      // Relative to the flow itself, down to the balance's own tolerance: a billionth of the largest flow.
      expect(Math.abs(m - theirs)).toBeLessThanOrEqual(1e-8 * Math.abs(theirs) + 1e-11 * largest)
    }
  })
})
