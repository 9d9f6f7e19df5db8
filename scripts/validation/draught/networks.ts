import { STANDARD_GRAVITY } from '#basis/constants.ts'
import flow from '#reference/flowChecks.json' with { type: 'json' }
import twin from '#reference/network-scipy.json' with { type: 'json' }
import networks from '#reference/networks.json' with { type: 'json' }
import { OUTSIDE } from '#science/draft/network.ts'
import { AIR } from '#science/gas/blend.ts'
import type { CheckSet, PointRow } from '../row.ts'
import { orifice, solveNetwork } from './solvedNetwork.ts'

const series: CheckSet = {
  title: 'openings one after the other, as one opening',
  source: flow.equivalentArea.source,
  standing: 'proof of code',
  note: 'Algebra that any text has: 1/A² adds up. A millionth.',
  rows: () =>
    (flow.equivalentArea.series as [number, number, number][]).map(([first, second, equivalent]) => {
      const drive = 1.5
      const two = solveNetwork(1, [orifice(OUTSIDE, 0, first, drive), orifice(0, OUTSIDE, second)])
      return {
        check: `areas ${first} and ${second} in series`,
        published: equivalent,
        ours: (two.flow[0] as number) / Math.sqrt(drive),
        unit: 'm²',
        allowed: { share: 1e-6 },
      }
    }),
}

const stack: CheckSet = {
  title: 'draught of a stack, g H (ρ₀ − ρ), and the flow it drives through two openings',
  source: flow.stack.source,
  standing: 'proof of code',
  note: '1e-4: the source’s gas constant of air is 4e-5 larger.',
  rows: () =>
    (flow.stack.rows as [number, number, number, number, number][]).flatMap(
      ([pressure, height, outside, inside, published]): PointRow[] => {
        const densityAt = (T: number): number => pressure / (AIR.gasConstant * T)
        const draught = (densityAt(outside) - densityAt(inside)) * STANDARD_GRAVITY * height
        // Hot gas over one opening at its foot and under one twice as large; the node is meant at the foot.
        const column = solveNetwork(1, [orifice(OUTSIDE, 0, 1), orifice(0, OUTSIDE, 2, draught)])
        const name = `stack of ${height} m, ${pressure} Pa, ${outside} and ${inside} K`
        return [
          { check: `${name}: draught`, published, ours: draught, unit: 'Pa', allowed: { share: 1e-4 } },
          {
            check: `${name}: flow`,
            published: Math.sqrt(published / (1 + 1 / 4)),
            ours: column.flow[0] as number,
            unit: 'kg/s',
            allowed: { share: 1e-4 },
          },
          {
            // The drops share the draught as 1/A².
            check: `${name}: pressure at the foot`,
            published: -0.8 * published,
            ours: column.pressure[0] as number,
            unit: 'Pa',
            allowed: { share: 1e-4 },
          },
        ]
      },
    ),
}

const scipyTwin: CheckSet = {
  title: 'air networks solved a second time in SciPy, every flow',
  source: twin.source,
  standing: 'proof of code',
  note: '1e-8, and a billionth of the largest flow for what is nearly nothing.',
  rows: () =>
    networks.flatMap(({ name, nodes, links }): PointRow[] => {
      const theirs = twin.rows.find((row) => row.name === name)
      const { status, flow: ours } = solveNetwork(nodes, links)
      if (status !== 'balanced' || theirs === undefined) throw new Error(`${name}: ${status}`)
      const largest = Math.max(...theirs.flow.map(Math.abs))
      return theirs.flow.map(
        (published, k): PointRow => ({
          check: `${name}: flow ${k + 1}`,
          group: name,
          published: published * 1e6,
          ours: (ours[k] as number) * 1e6,
          unit: 'mg/s',
          allowed: { by: (1e-8 * Math.abs(published) + 1e-11 * largest) * 1e6 },
        }),
      )
    }),
}

export const networkSets: readonly CheckSet[] = [series, stack, scipyTwin]
