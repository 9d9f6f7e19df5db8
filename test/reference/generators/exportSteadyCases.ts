import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type SteadyCase, steadyCases } from './steadyCases.ts'

/**
 * Writes steadyCases.json, the stoves whose steady state steady_scipy.py finds.
 * Run: node test/reference/generators/exportSteadyCases.ts
 */
const lines = (rows: readonly unknown[]): string =>
  `[\n${rows.map((row) => `   ${JSON.stringify(row)}`).join(',\n')}\n  ]`

/** Where the fuel's numbers come from is told in the fuel table. */
const withoutSources = (key: string, value: unknown): unknown =>
  key === 'sources' || key === 'cautions' ? undefined : value

const written = ({ plan, ...rest }: SteadyCase): string => {
  const { nodes, links, walls, ...others } = plan
  return ` {${JSON.stringify(rest, withoutSources).slice(1, -1)},
 "plan": {${JSON.stringify(others).slice(1, -1)},
  "nodes": ${lines(nodes)},
  "links": ${lines(links)},
  "walls": ${lines(walls)}
 }}`
}

const path = join(import.meta.dirname, '..', 'steadyCases.json')
writeFileSync(path, `[\n${steadyCases().map(written).join(',\n')}\n]\n`)
