import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { randomStream } from '#basis/random.ts'
import type { LinkData } from '#scripts/validation/draught/solvedNetwork.ts'
import { frozenNetwork, planOf } from '../../science/draft/frozenNetwork.ts'
import { layouts } from '../../science/layouts.ts'

/**
 * Writes networks.json, the pressure networks that network_scipy.py solves: stoves with their temperatures given, and
 * a few drawn at random. Run: node test/reference/generators/exportNetworks.ts
 */
interface Exported {
  readonly name: string
  readonly nodes: number
  readonly links: readonly LinkData[]
}

const OUTSIDE = -1

const ofLayout = (name: string): Exported => {
  const build = layouts[name]
  if (build === undefined) throw new Error(`no layout is called ${name}`)
  return { name, ...frozenNetwork(planOf(build())) }
}

/** A chain of nodes from the open air and back to it, with bridges across: currents meet and turn round. */
const drawn = (seed: number, nodes: number): Exported => {
  const stream = randomStream(seed)
  const link = (from: number, to: number): LinkData => ({
    from,
    to,
    linear: 10 ** stream.between(0, 4),
    quadratic: 10 ** stream.between(4, 8),
    head: stream.between(-1.5, 2.5),
    gain: 1,
  })
  const chain = Array.from({ length: nodes + 1 }, (_, i) => link(i - 1, i === nodes ? OUTSIDE : i))
  const bridges = Array.from({ length: nodes }, () => {
    const from = stream.integer(nodes)
    return link(from, (from + 1 + stream.integer(nodes - 1)) % nodes)
  })
  return {
    name: `drawn at random, ${nodes} spaces, seed ${seed}`,
    nodes,
    links: [...chain, ...bridges, { ...link(0, nodes - 1), gain: 1.5 }],
  }
}

/** Two ways from one space to another with a bridge between their middles. */
const bridge: Exported = {
  name: 'bridge of five passages',
  nodes: 2,
  links: [
    { from: OUTSIDE, to: 0, linear: 20, quadratic: 2e6, head: 1.2, gain: 1 },
    { from: OUTSIDE, to: 1, linear: 60, quadratic: 5e5, head: 1.2, gain: 1 },
    { from: 0, to: 1, linear: 300, quadratic: 0, head: 0, gain: 1 },
    { from: 0, to: OUTSIDE, linear: 5, quadratic: 4e5, head: 0.3, gain: 1 },
    { from: 1, to: OUTSIDE, linear: 80, quadratic: 3e6, head: 0.3, gain: 1 },
  ],
}

/** The usual stove: under the can, foot and head of the gap, fuel, flame, stand. */
const sixSpaces: Exported = {
  name: 'six spaces: under the can, gap below, gap above, fuel, flame, stand',
  nodes: 6,
  links: [
    { from: OUTSIDE, to: 0, linear: 25, quadratic: 9.5e5, head: 0, gain: 1 },
    { from: 0, to: 1, linear: 3, quadratic: 6e4, head: 0.01, gain: 1 },
    { from: 1, to: 2, linear: 45, quadratic: 0, head: 0.16, gain: 1 },
    { from: 0, to: 3, linear: 180, quadratic: 5.4e6, head: 0.005, gain: 1 },
    { from: 3, to: 4, linear: 6500, quadratic: 1.1e7, head: 0.35, gain: 1.56 },
    { from: 2, to: 4, linear: 90, quadratic: 3.6e6, head: -0.3, gain: 1 },
    { from: 4, to: 5, linear: 30, quadratic: 2.4e6, head: 0.44, gain: 1 },
    { from: OUTSIDE, to: 5, linear: 80, quadratic: 1e7, head: -0.09, gain: 1 },
    { from: 5, to: OUTSIDE, linear: 12, quadratic: 8e5, head: 0.48, gain: 1 },
  ],
}

const networks: readonly Exported[] = [
  sixSpaces,
  {
    ...sixSpaces,
    name: 'six spaces, the bed choked',
    links: sixSpaces.links.map((l, k) => (k === 4 ? { ...l, linear: 2e5 } : l)),
  },
  {
    ...sixSpaces,
    name: 'six spaces, hot gap that draws backwards',
    links: sixSpaces.links.map((l, k) => (k === 2 ? { ...l, head: -1.5 } : l)),
  },
  bridge,
  ...[
    'two walls with a pot stand',
    'two walls without a pot stand',
    'single wall with a chimney riser',
    'with a damper half shut',
    'open gap at the top, no ring',
    'two intake rows and two secondary rows',
    'primary rows in the wall beside the fuel',
  ].map(ofLayout),
  drawn(1, 6),
  drawn(2, 6),
  drawn(3, 9),
  drawn(4, 12),
]

const path = join(import.meta.dirname, '..', 'networks.json')
const rows = networks.map(
  ({ name, nodes, links }) =>
    ` {"name": ${JSON.stringify(name)}, "nodes": ${nodes}, "links": [\n${links.map((l) => `  ${JSON.stringify(l)}`).join(',\n')}\n ]}`,
)
writeFileSync(path, `[\n${rows.join(',\n')}\n]\n`)
