import type { DraughtPlan } from '#science/draft/plan.ts'
import { charSource } from '#science/fire/charFront.ts'
import { frontModel } from '#science/fire/front.ts'
import { rawFuelSource } from '#science/fire/source.ts'
import { lowerHeatingValue, lowerHeatingValueAsFired } from '#science/fuel/composition.ts'
import { placeFront } from '#science/steady/frontPlace.ts'
import type { SteadyInput } from '#science/steady/input.ts'
import { layOut } from '#science/steady/layOut.ts'
import type { Moment } from '#science/steady/prediction.ts'
import { settle } from '#science/steady/settle.ts'
import type { SteadyFailure, SteadyState } from '#science/steady/state.ts'
import type { Workspace } from '#science/steady/workspace.ts'
import { type BurnTotals, Ledger } from './ledger.ts'
import type { BurnEvent, BurnState, BurnStep } from './record.ts'
import { momentOf, sampleOf } from './sample.ts'

export interface BurnOptions {
  /** The stove is still warm from a burn before: its walls, stretch by stretch [K]; ambient when null. */
  readonly wallStart: readonly number[] | null
  /** The stove as it is changed on the way, the damper turned say: from when [s], in order of time. */
  readonly stages: readonly { readonly from: number; readonly plan: DraughtPlan; readonly sentence: string }[]
  /** Longest time step [s]. */
  readonly longestStep: number
  /** Keep the moment of every step, with all its passages: some fifteen times the memory. */
  readonly keepMoments: boolean
}

export interface Burn {
  readonly steps: readonly BurnStep[]
  readonly events: readonly BurnEvent[]
  readonly totals: BurnTotals
  /** Of the walls when the front reached the floor, for a second batch in a hot stove [K]; null if it did not. */
  readonly hotWalls: readonly number[] | null
  /** Of every step, as it began; empty unless they were asked for. */
  readonly moments: readonly Moment[]
}

export type BurnOutcome =
  | { readonly ok: true; readonly burn: Burn }
  | { readonly ok: false; readonly failure: SteadyFailure; readonly burn: Burn }

export const defaultBurnOptions: BurnOptions = {
  wallStart: null,
  stages: [],
  longestStep: 300,
  keepMoments: false,
}

/** Failures of a state that are the end of a burn, not of the calculation. */
const ENDS: ReadonlySet<string> = new Set(['front out', 'draws its own smoke', 'does not glow'])

/** After lighting or a change steps are short, for the tin warms in half a minute [s]; from one to the next they may grow. */
const FIRST_STEP = 5
const GROWTH = 1.5
/** Steps at least while the fire spreads over the bed. */
const LIGHTING_STEPS = 14
/** The front moves by no more than this share of the bed in a step. */
const FRONT_STEP = 0.04
/** The char by no more than this share of what was made, at the very end by this. */
const CHAR_STEP = 0.1
const LAST_BITE = 0.015
/** Relative change of flows that ends the iteration within a step. */
const STEP_TOLERANCE = 1e-5
/** Part of the char at the end that burns with less and less of the bed alight. */
const LAST_CHAR = 0.4
const LONGEST_BURN = 6 * 3600

/**
 * Burns a stove from lighting to the last glow. Flows follow the fire at once (gas stays in the stove for a tenth of a
 * second); walls, fuel and char are stepped in time, backward Euler for the walls.
 */
export const march = (input: SteadyInput, options: BurnOptions = defaultBurnOptions): BurnOutcome => {
  let w = layOut(input)
  const { plan, site, coefficients, fuel } = w
  const { moisture } = fuel
  const bedDiameter = 2 * Math.sqrt(plan.bed.area / Math.PI)
  const model = frontModel(fuel, moisture, site.temperature, coefficients, bedDiameter)
  const raw = rawFuelSource(model, moisture, coefficients)
  const glowing = charSource(site.temperature, w.airDensity, coefficients)
  const dryCharge = fuel.bulkDensity * plan.bed.area * plan.bed.depth * (1 - moisture)
  const asFired = lowerHeatingValueAsFired(
    lowerHeatingValue(fuel.higherHeatingValue, fuel.analysis.H),
    moisture,
  )

  const steps: BurnStep[] = []
  const moments: Moment[] = []
  const events: BurnEvent[] = [{ time: 0, kind: 'lit', sentence: 'Lit on top.' }]
  const say = (kind: BurnEvent['kind'], sentence: string): void => {
    events.push({ time: state.time, kind, sentence })
  }
  const ledger = new Ledger()
  const state: BurnState = { time: 0, phase: 'lighting', front: 0, char: 0, charMade: 0 }
  let hotWalls: readonly number[] | null = null
  const done = (): Burn => ({
    steps,
    events,
    totals: ledger.totals(state.char, dryCharge),
    hotWalls,
    moments,
  })

  let stage = 0
  let fresh = true
  let lastStep = FIRST_STEP
  while (state.time < LONGEST_BURN) {
    for (
      let next = options.stages[stage];
      next !== undefined && state.time >= next.from - 1e-6;
      next = options.stages[stage]
    ) {
      const changed = layOut({ ...input, plan: next.plan })
      adopt(changed, w)
      w = changed
      say('changed', next.sentence)
      lastStep = FIRST_STEP
      stage++
    }
    const { walls } = w
    const alight = alightShare(state, coefficients.ignitionTime, coefficients.charBurnt)
    const place = placeFront(w, state.front, alight, charLeft(state))
    const untilStage = (options.stages[stage]?.from ?? Number.POSITIVE_INFINITY) - state.time
    const spreading =
      state.phase === 'lighting' ? coefficients.ignitionTime / LIGHTING_STEPS : Number.POSITIVE_INFINITY
    let dt = Math.min(options.longestStep, GROWTH * lastStep, spreading, untilStage)
    if (!fresh) walls.before.set(walls.temperature)
    else if (options.wallStart?.length === walls.before.length) walls.before.set(options.wallStart)
    else walls.before.fill(site.temperature)
    walls.step.perSecond = 1 / dt
    const source = state.phase === 'char' ? glowing : raw
    let outcome = settle(w, place, source, { fresh, tolerance: STEP_TOLERANCE })
    if (outcome.ok) {
      // Shorten the step where the front would jump or pass the floor; the walls are settled for the shorter one.
      const wanted = stepFor(state, outcome.state, dryCharge, coefficients.charBurnt, dt)
      if (wanted < dt * 0.999) {
        dt = wanted
        walls.step.perSecond = 1 / dt
        outcome = settle(w, place, source, { fresh: false, tolerance: STEP_TOLERANCE })
        // The rate has moved by a trace with the walls: a step that ends at the floor ends right there.
        if (outcome.ok && isNear(wanted, timeToFloor(state, outcome.state, dryCharge)))
          dt = timeToFloor(state, outcome.state, dryCharge)
      }
    }
    if (!outcome.ok) {
      if (state.phase === 'char') {
        say('char out', 'The rest of the char goes cold.')
        break
      }
      if (!ENDS.has(outcome.failure.code) || steps.length === 0)
        return { ok: false, failure: outcome.failure, burn: done() }
      say('front out', outcome.failure.sentence)
      break
    }
    fresh = false
    lastStep = dt
    const now = outcome.state
    ledger.add(w, now, place, dt)
    const moment = momentOf(w, now, state, asFired)
    steps.push({ ...sampleOf(w, now, place, state, moment), duration: dt })
    if (options.keepMoments) moments.push(moment)
    advance(state, now, dryCharge, dt)
    if (state.phase === 'lighting' && alight >= 0.999) {
      state.phase = 'wood gas'
      say('whole bed alight', 'The whole top of the fuel is alight.')
    }
    if (state.phase !== 'char' && state.front >= 1 - 1e-9) {
      state.phase = 'char'
      hotWalls = [...w.walls.temperature]
      lastStep = FIRST_STEP
      say('front at the floor', 'The front reaches the floor: the wood gas is over, the char glows on.')
    }
    if (state.phase === 'char' && state.char <= (1 - coefficients.charBurnt) * state.charMade) {
      say('char out', 'The last char goes cold.')
      break
    }
  }
  say('end', 'Over. Char smoulders under its ash: let it go cold, or drown it.')
  return { ok: true, burn: done() }
}

/** Hands the state of one workspace to another of the same stove, changed in its openings. */
const adopt = (to: Workspace, from: Workspace): void => {
  const same =
    to.plan.nodes.length === from.plan.nodes.length &&
    to.plan.links.length === from.plan.links.length &&
    to.plan.walls.length === from.plan.walls.length &&
    to.walls.gaps.length === from.walls.gaps.length
  for (const [s, stretch] of to.plan.walls.entries()) {
    const middle = (stretch.bottom + stretch.top) / 2
    const twin = from.plan.walls.findIndex(
      (other) => other.part === stretch.part && middle >= other.bottom && middle <= other.top,
    )
    to.walls.temperature[s] = twin < 0 ? to.site.temperature : (from.walls.temperature[twin] as number)
  }
  if (!same) {
    // Another net of spaces: only the tin remembers. Gas finds its state within the first round.
    to.temperature.fill(to.site.temperature)
    for (const [i, node] of to.plan.nodes.entries()) if (node.space === 'flame') to.temperature[i] = 1200
    return
  }
  for (const key of ['temperature', 'gasFraction', 'share'] as const) to[key].set(from[key])
  to.walls.gapTemperature.set(from.walls.gapTemperature)
  to.solver.pressure.set(from.solver.pressure)
  to.solver.flow.set(from.solver.flow)
}

const charLeft = ({ phase, char, charMade }: BurnState): number =>
  phase === 'char' && charMade > 0 ? Math.max(0.02, char / charMade) : 1

/** How much of the bed is alight: the fire spreads over it after lighting, and dies away with the last char [1]. */
const alightShare = (state: BurnState, ignitionTime: number, charBurnt: number): number => {
  if (state.phase === 'lighting') return Math.min(1, 0.1 + (0.9 * state.time) / ignitionTime)
  if (state.phase === 'wood gas') return 1
  const burnable = state.char - (1 - charBurnt) * state.charMade
  return Math.min(1, Math.max(0.05, burnable / (LAST_CHAR * state.charMade)))
}

/** Longest step that moves neither front nor char too far [s]. */
const stepFor = (
  state: BurnState,
  now: SteadyState,
  dryCharge: number,
  charBurnt: number,
  dt: number,
): number => {
  if (state.phase === 'char') {
    const left = state.char - (1 - charBurnt) * state.charMade
    // Ever smaller bites towards the end, where less and less of it is alight.
    const bite = Math.max(LAST_BITE * state.charMade, Math.min(CHAR_STEP * state.charMade, left / 3))
    return Math.min(dt, Math.min(bite, left) / now.dryFuelRate)
  }
  return Math.min(dt, (FRONT_STEP * dryCharge) / now.dryFuelRate, timeToFloor(state, now, dryCharge))
}

/** Until the front reaches the floor, if it goes on like this [s]. */
const timeToFloor = (state: BurnState, now: SteadyState, dryCharge: number): number =>
  ((1 - state.front) * dryCharge) / now.dryFuelRate

const isNear = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-4 * b

const advance = (state: BurnState, now: SteadyState, dryCharge: number, dt: number): void => {
  const burnt = now.dryFuelRate * dt
  if (state.phase === 'char') state.char -= burnt
  else {
    state.front = Math.min(1, state.front + burnt / dryCharge)
    state.char += burnt * now.front.char
    state.charMade = state.char
  }
  state.time += dt
}
