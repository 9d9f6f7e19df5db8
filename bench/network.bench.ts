import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { emptyNetwork, type Network } from '#science/draft/network.ts'
import { createSolver } from '#science/draft/solve.ts'
import { timing } from './measure.ts'
import type { Row, Rows } from './row.ts'

const REFERENCE = join(import.meta.dirname, '..', 'test', 'reference')
const NAME = 'six spaces: under the can, gap below, gap above, fuel, flame, stand'

interface NetworkData {
  readonly name: string
  readonly nodes: number
  readonly links: readonly Readonly<
    Record<'from' | 'to' | 'linear' | 'quadratic' | 'head' | 'gain', number>
  >[]
}

const sixSpaces = (): Network => {
  const all = JSON.parse(readFileSync(join(REFERENCE, 'networks.json'), 'utf8')) as readonly NetworkData[]
  const data = all.find(({ name }) => name === NAME)
  if (data === undefined) throw new Error(`no network is called ${NAME}`)
  const network = emptyNetwork(data.nodes, data.links.length)
  for (const [k, link] of data.links.entries())
    for (const key of ['from', 'to', 'linear', 'quadratic', 'head', 'gain'] as const)
      network[key][k] = link[key]
  return network
}

/** Solves a call of `work` does, each with every head changed by up to 2 %: no solve finds its answer ready. */
const VARIATIONS = 50

/** Runs all variations; `cold` puts the pressures back to nothing before each. Returns the flows' sum. */
const solveAll = (cold: boolean): (() => number) => {
  const network = sixSpaces()
  const solver = createSolver(network)
  const heads = Array.from({ length: VARIATIONS }, (_, i) =>
    network.head.map((head) => head * (1 + 0.02 * Math.sin(0.7 * i))),
  )
  return () => {
    let sum = 0
    for (const head of heads) {
      network.head.set(head)
      if (cold) solver.pressure.fill(0)
      const { status } = solver.solve()
      if (status !== 'balanced') throw new Error(`the network is ${status}`)
      sum += solver.flow[0] as number
    }
    return sum
  }
}

/** Solves a second of SciPy on the same network in this very run, or null where there is no SciPy [1/s]. */
const scipyPerSecond = (): number | null => {
  const script = join(REFERENCE, 'generators', 'network_scipy.py')
  const { status, stdout } = spawnSync('/usr/bin/python3', [script, '--time', '3000', NAME], {
    encoding: 'utf8',
  })
  if (status !== 0) return null
  return 1 / (JSON.parse(stdout) as { readonly seconds: number }).seconds
}

/** The air network alone, temperatures given, on one core. */
export const rows: Rows = async () => {
  const warm = await timing(solveAll(false), { calls: VARIATIONS })
  const cold = await timing(solveAll(true), { calls: VARIATIONS })
  const scipy = scipyPerSecond()
  const measured: Row[] = [
    {
      name: 'air network of six spaces, from the last answer',
      value: warm.perSecond,
      unit: 'solves/s',
      bar: { atLeast: 200_000 },
    },
    { name: 'air network of six spaces, from nothing', value: cold.perSecond, unit: 'solves/s', bar: null },
  ]
  if (scipy === null) console.error('/usr/bin/python3 has no SciPy: the network is not compared with it')
  else
    measured.push(
      { name: 'the same network in SciPy, from the last answer', value: scipy, unit: 'solves/s', bar: null },
      { name: 'air network over SciPy', value: warm.perSecond / scipy, unit: 'times', bar: null },
    )
  return measured
}
