import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { randomStream } from '#basis/random.ts'
import { planDraught } from '#science/draft/build.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import type { DraughtPlan } from '#science/draft/plan.ts'
import { type LinkData, solveNetwork } from '#scripts/validation/draught/solvedNetwork.ts'
import { layouts } from '../layouts.ts'
import { randomCase } from '../randomStove.ts'
import { type Frozen, frozen, frozenNetwork, planOf } from './frozenNetwork.ts'

/**
 * What more open area does to the air with every temperature held where it is. The network is monotone: more flow into
 * a space raises its pressure and, less, that of every other. So much can be proved from that:
 * - a row in an outer wall, in any stove: what goes through the stove never falls;
 * - a row inside, air drawn the right way, in a stove whose air all meets in one flame space: the same.
 * Where streams compete on their way out (a stand that draws air at its foot, a gap that is open at the top) or a row
 * breathes the wrong way, a wider passage inside can win its own flow at a greater loss elsewhere: the last tests hold
 * such stoves, as proof that the statement ends there. `gain` is 1 throughout: air only, no gas added by the front.
 */
const still: Frozen = { ...frozen, gain: 1 }

interface Through {
  /** All that comes in from the open air, which is all that goes out [kg/s]. */
  readonly total: number
  readonly flow: readonly number[]
}

const throughOf = (nodes: number, links: readonly LinkData[]): Through | null => {
  const { status, flow } = solveNetwork(nodes, links)
  if (status !== 'balanced') return null
  const total = links.reduce((sum, { from, to }, k) => {
    const m = flow[k] as number
    return sum + (from === OUTSIDE ? Math.max(0, m) : to === OUTSIDE ? Math.max(0, -m) : 0)
  }, 0)
  return { total, flow }
}

/** The same network with one passage's area enlarged: inertia by the square, friction by the 3/2 of equal holes. */
const widened = (links: readonly LinkData[], which: number, factor: number): readonly LinkData[] =>
  links.map((link, k) =>
    k === which
      ? { ...link, linear: link.linear / factor ** 1.5, quadratic: link.quadratic / factor ** 2 }
      : link,
  )

interface Case {
  readonly plan: DraughtPlan
  readonly before: Through
  readonly link: number
  /** Relative change of what goes through. */
  readonly change: number
}

/** Every drilled passage of a plan, widened. */
const casesOf = (plan: DraughtPlan, factor: number): Case[] => {
  const { nodes, links } = frozenNetwork(plan, still)
  const before = throughOf(nodes, links)
  if (before === null || before.total < 1e-9) return []
  return plan.links.flatMap(({ kind }, link) => {
    if (kind !== 'opening') return []
    const after = throughOf(nodes, widened(links, link, factor))
    return after === null ? [] : [{ plan, before, link, change: (after.total - before.total) / before.total }]
  })
}

const outer = ({ plan, link }: Case): boolean =>
  plan.links[link]?.from === OUTSIDE || plan.links[link]?.to === OUTSIDE

/** Down to the solver's own tolerance. */
const NOT_LESS = -1e-9

describe('more open area in one row, temperatures held', () => {
  test('of any stove’s outer wall never lets less through (1,000 random stoves)', () => {
    let seen = 0
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), fc.integer({ min: 101, max: 300 }), (seed, percent) => {
        const outcome = planDraught(randomCase(randomStream(seed)).stove)
        if (!outcome.ok) return
        for (const one of casesOf(outcome.plan, percent / 100).filter(outer)) {
          seen++
          expect(one.change).toBeGreaterThanOrEqual(NOT_LESS)
        }
      }),
      { seed: 31, numRuns: 1000 },
    )
    expect(seen).toBeGreaterThan(1000)
  })

  test.each([
    'two walls without a pot stand',
    'two walls, nothing over the fuel can',
    'two walls with a chimney riser',
    'single wall with a chimney riser',
  ])('inside or outside, where all air meets in one flame space: %s', (name) => {
    const plan = planOf((layouts[name] as (typeof layouts)[string])())
    for (const factor of [1.05, 1.5, 3]) {
      const cases = casesOf(plan, factor)
      expect(cases.length).toBeGreaterThanOrEqual(3)
      for (const { before, link, change } of cases) {
        // Air drawn the right way, from the network's start to its end.
        expect(before.flow[link]).toBeGreaterThan(0)
        expect(change).toBeGreaterThan(0)
      }
    }
  })

  test('inside a stove of any shape it mostly lets more through; how often less, and by how much, is printed', () => {
    const inner = Array.from({ length: 1000 }, (_, i) =>
      planDraught(randomCase(randomStream(i)).stove),
    ).flatMap((outcome) => (outcome.ok ? casesOf(outcome.plan, 1.3).filter((one) => !outer(one)) : []))
    const forward = inner.filter(({ before, link }) => (before.flow[link] as number) > 0)
    const less = forward.filter(({ change }) => change < NOT_LESS)
    const worst = Math.min(...forward.map(({ change }) => change))
    console.log(
      `inner rows 30 % wider, temperatures held: ${less.length} of ${forward.length} let less through the whole stove, ` +
        `at worst ${(-100 * worst).toFixed(1)} % less`,
    )
    expect(forward.length).toBeGreaterThan(500)
    expect(less.length / forward.length).toBeLessThan(0.03)
    expect(worst).toBeGreaterThan(-0.2)
  })
})

describe('where a wider passage lets less through', () => {
  /** Two streams compete for one way out: the wider the first, the less the second draws. */
  const flame = (bore: number): readonly LinkData[] => [
    // A long slow way in that the wide bore opens…
    { from: OUTSIDE, to: 0, linear: 2e4, quadratic: 0, head: 0, gain: 1 },
    { from: 0, to: 1, linear: bore, quadratic: 0, head: 0.6, gain: 1 },
    // …into a stand that draws freely at its foot and is choked at its top.
    { from: OUTSIDE, to: 1, linear: 1, quadratic: 1e6, head: -0.05, gain: 1 },
    { from: 1, to: OUTSIDE, linear: 1, quadratic: 4e6, head: 0.5, gain: 1 },
  ]

  test('not even there, while the competing stream goes the same way', () => {
    const narrow = throughOf(2, flame(1e4)) as Through
    const wide = throughOf(2, flame(1e3)) as Through
    expect(wide.flow[2]).toBeLessThan(narrow.flow[2] as number)
    expect(wide.total).toBeGreaterThan(narrow.total)
  })

  test('a secondary row that breathes out goes round in a circle: wider, it circles more and the stove draws less', () => {
    // Intake → under the can → fuel → flame → bore; the gap is so hot that it draws flame gas down through the row.
    const links: readonly LinkData[] = [
      { from: OUTSIDE, to: 0, linear: 20, quadratic: 2e6, head: 0, gain: 1 },
      { from: 0, to: 1, linear: 2000, quadratic: 1e6, head: 0.4, gain: 1 },
      { from: 0, to: 1, linear: 50, quadratic: 4e6, head: -0.6, gain: 1 },
      { from: 1, to: OUTSIDE, linear: 20, quadratic: 1e6, head: 0.5, gain: 1 },
    ]
    const before = throughOf(2, links) as Through
    const after = throughOf(2, widened(links, 2, 1.5)) as Through
    expect(before.flow[2]).toBeLessThan(0)
    expect(after.total).toBeLessThan(before.total)
  })
})
