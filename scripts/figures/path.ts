import { STANDARD_GRAVITY } from '#basis/constants.ts'
import { medianCoefficients } from '#science/coefficients.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import type { DraughtPlan } from '#science/draft/plan.ts'
import { AIR } from '#science/gas/blend.ts'
import { mixtureGasConstant } from '#science/gas/mixture.ts'
import { mildDay } from '#science/site.ts'
import { createSteadyModel } from '#science/steady/model.ts'
import type { SteadyState } from '#science/steady/state.ts'
import { rangeOf } from './kit/axis.ts'
import { type Figure, figurePage } from './kit/page.ts'
import type { Note, Point } from './kit/panel.ts'
import { firingOf, variant } from './stoves.ts'

/** What a route passes, from the open air to the open air. */
interface Route {
  readonly points: readonly Point[]
  readonly jumps: readonly { readonly name: string; readonly from: Point; readonly to: Point }[]
}

/** A link as it is passed: with its own direction or against it. */
interface Step {
  readonly link: DraughtPlan['links'][number]
  readonly from: number
  readonly to: number
}

/** Follows the strongest flow from a link, against the stream and with it, out to the open air on both sides. */
const stepsOf = ({ links }: DraughtPlan, { flow }: SteadyState, start: number): readonly Step[] => {
  const steps = links.map((link, k): Step & { readonly amount: number } => {
    const m = flow[k] as number
    return m >= 0
      ? { link, from: link.from, to: link.to, amount: m }
      : { link, from: link.to, to: link.from, amount: -m }
  })
  const strongest = (node: number, side: 'from' | 'to'): Step => {
    const there = steps.filter((step) => step[side] === node)
    return there.reduce((a, b) => (b.amount > a.amount ? b : a))
  }
  const route: Step[] = [steps[start] as Step]
  for (let first = route[0] as Step; first.from !== OUTSIDE; ) {
    first = strongest(first.from, 'to')
    route.unshift(first)
  }
  for (let last = route[route.length - 1] as Step; last.to !== OUTSIDE; ) {
    last = strongest(last.to, 'from')
    route.push(last)
  }
  return route
}

/** Pressure over that of the open air at the same height, along a route: heights in mm, pressures in Pa. */
const routeOf = (plan: DraughtPlan, state: SteadyState, start: number): Route => {
  const { pressure: air, temperature: cold } = mildDay
  const airDensity = air / (AIR.gasConstant * cold)
  const basis = { ...state.front, heat: state.front.gasHeat }
  const densityOf = (node: number): number =>
    air / (mixtureGasConstant(basis, state.gasFraction[node] as number) * (state.temperature[node] as number))
  /** A node's pressure at another height: lighter gas gains on the air outside as it rises. */
  const at = (node: number, height: number): number =>
    node === OUTSIDE
      ? 0
      : (state.pressure[node] as number) +
        STANDARD_GRAVITY * (airDensity - densityOf(node)) * (height - (plan.nodes[node]?.height ?? height))
  const points: Point[] = []
  const jumps: Route['jumps'][number][] = []
  for (const { link, from, to } of stepsOf(plan, state, start)) {
    const longWay = link.kind === 'gap' || link.kind === 'bed'
    const heightOf = (node: number): number =>
      longWay ? (plan.nodes[node]?.height ?? link.height + link.length) : link.height
    const before: Point = [at(from, heightOf(from)), 1000 * heightOf(from)]
    const after: Point = [at(to, heightOf(to)), 1000 * heightOf(to)]
    points.push(before, after)
    jumps.push({ name: link.opening ?? link.name, from: before, to: after })
  }
  return { points, jumps }
}

const nameOf: Readonly<Record<string, string>> = {
  intake: 'intake',
  floor: 'floor holes',
  ring: 'secondary ring',
  bore: 'concentrator',
  vanes: 'concentrator',
  windows: 'outlet windows',
}

/** An opening's name and what it takes, beside its step. */
const stepNote = (route: Route, name: string, more: Partial<Note>): Note[] => {
  const jump = route.jumps.find((one) => one.name === name)
  if (jump === undefined) return []
  const drop = Math.abs(jump.to[0] - jump.from[0])
  const middle = (jump.from[0] + jump.to[0]) / 2
  const text = `${nameOf[name] ?? name} ${drop.toFixed(2)}`
  return [{ at: [middle, jump.to[1]], text, anchor: 'middle', dy: -7, ...more }]
}

/** What all openings and stretches of a route take, buoyancy taken off [Pa]. */
const spentOn = ({ jumps }: Route, drives: ReadonlyMap<string, number>): number =>
  jumps.reduce((sum, { name }) => sum + Math.abs(drives.get(name) ?? 0), 0)

/** Pressure along the two ways of the air through a stove. */
export const pathFigure = (): Figure => {
  const { plan, fuel } = firingOf(variant('redshank'))
  const input = { plan, fuel, site: mildDay, coefficients: medianCoefficients, burntOff: true }
  const outcome = createSteadyModel(input).solve(0.5)
  if (!outcome.ok) throw new Error(outcome.failure.sentence)
  const { state } = outcome
  const drives = new Map(
    plan.links.map(({ opening, name }, k) => [opening ?? name, state.drive[k] as number] as const),
  )
  const bed = plan.bed.segments[plan.bed.segments.length - 1]?.link ?? 0
  const ring = plan.links.findIndex(({ opening }) => opening === 'ring')
  const primary = routeOf(plan, state, bed)
  const secondary = routeOf(plan, state, ring)
  const pressures = [...primary.points, ...secondary.points].map(([p]) => p)
  const ringStep = secondary.jumps.find(({ name }) => name === 'ring')
  const bedStep = primary.jumps.find(({ name }) => name === plan.links[bed]?.name)
  const gapStep = secondary.jumps.find(({ name }) => name.startsWith('gap') || name.includes('gap'))
  const middleOf = (step: Route['jumps'][number] | undefined): Point =>
    step === undefined ? [0, 0] : [(step.from[0] + step.to[0]) / 2, (step.from[1] + step.to[1]) / 2]
  const outlet = primary.jumps[primary.jumps.length - 1]
  const afterBore = primary.jumps.find(({ name }) => name === 'vanes' || name === 'bore')
  const rise: Point =
    outlet === undefined || afterBore === undefined
      ? [0, 0]
      : [(outlet.from[0] + afterBore.to[0]) / 2, (outlet.from[1] + afterBore.to[1]) / 2]
  const spent = spentOn(primary, drives)
  return figurePage({
    title: 'Where the draught is won, and where it is spent',
    lead: 'Pressure against the open air at the same height, followed up through the stove. Every opening is a step to the left; hot gas that rises wins it back to the right. At the outlet both ways are at zero again.',
    rows: [
      [
        {
          heading: 'Height above the ground, mm',
          x: { label: 'pressure over the open air at that height, Pa', ...rangeOf(pressures, { ticks: 6 }) },
          y: { label: '', from: 0, to: 250 },
          height: 400,
          rules: [{ axis: 'x', at: 0, dash: true }],
          series: [
            { points: secondary.points, tone: 'cool' },
            { points: primary.points, tone: 'ember' },
          ],
          notes: [
            ...stepNote(primary, 'intake', { dy: 18 }),
            ...stepNote(primary, 'floor', { dy: 18 }),
            ...(ringStep === undefined
              ? []
              : stepNote(secondary, 'ring', { at: ringStep.from, anchor: 'start', dx: 8, dy: 4 })),
            ...stepNote(primary, afterBore?.name ?? 'bore', { dy: -8, anchor: 'start', dx: -20 }),
            ...stepNote(primary, 'windows', {}),
            { at: middleOf(gapStep), text: 'secondary air, up the gap', dx: 12, dy: 8, tone: 'cool' },
            { at: middleOf(bedStep), text: 'primary air, up through the fuel', dx: 12, dy: 0, tone: 'ember' },
            { at: rise, text: 'gas, up the pot stand', dx: 14, dy: 12, tone: 'ember' },
          ],
        },
      ],
    ],
    foot: `Numbers are the pascals that an opening takes; all that primary air and gas pass takes ${spent.toFixed(1)} Pa. Fuel and gap tilt the lines: friction and lift in one. Redshank, an invented example, front half way down, calm, 20 °C at sea level: medians of the model, no measurement.`,
  })
}
