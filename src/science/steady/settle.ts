import { OUTSIDE } from '#science/draft/network.ts'
import type { Front, FrontOutcome } from '#science/fire/front.ts'
import type { FrontSource } from '#science/fire/source.ts'
import { layBed } from './bedTable.ts'
import { setExchange } from './exchange.ts'
import { type FrontPlace, gainOf } from './frontPlace.ts'
import { setFrontStream } from './frontStream.ts'
import { balanceHeat } from './heat.ts'
import { setLinks } from './links.ts'
import { drawsSmoke, fail, finish, isSmoky, type SteadyOutcome } from './state.ts'
import { transport } from './transport.ts'
import { shareFrontLoss } from './wallModel.ts'
import type { Workspace } from './workspace.ts'

const MAX_ROUNDS = 400
/** Relative change of flows and gas make below which the state has settled. */
const SETTLED = 1e-7
/** Flux of air through the fuel below which there is no front to speak of, a hundredth of what only smoulders [kg/(m² s)]. */
const NO_FLUX = 1.5e-4
/** Walls that move by less than this have settled [K]. */
const WALLS_SETTLED = 1e-4
/** Superficial velocity at which a front is first tried [m/s]. */
const START_VELOCITY = 0.02
/** Rounds in a row without air through the fuel, or without a glow, that put the front out. */
const OUT_AFTER = 4
/** Where a state is looked for when nothing is known of it: a lit stove, not yet warm. */
const start = (w: Workspace, front: Front): void => {
  const { plan, site, walls } = w
  w.solver.pressure.fill(0)
  w.solver.flow.fill(0)
  w.share.fill(1)
  walls.gapTemperature.fill(site.temperature)
  for (let i = 0; i < plan.nodes.length; i++) {
    const flame = plan.nodes[i]?.space === 'flame'
    w.temperature[i] = flame ? 1300 : site.temperature
    w.gasFraction[i] = flame ? 0.7 / (1 + front.stoichiometricAir) : 0
  }
  for (let s = 0; s < walls.stretches.length; s++) {
    const { inside } = walls.stretches[s] as (typeof walls.stretches)[number]
    const hot =
      inside.kind === 'bed' || (inside.kind === 'node' && plan.nodes[inside.node]?.space === 'flame')
    walls.temperature[s] = hot ? 600 : site.temperature + 30
  }
}

export interface SettleOptions {
  /** Begin from nothing, or from the state the workspace holds. */
  readonly fresh: boolean
  /** Relative change of flows that counts as settled; 1e-7 unless said [1]. */
  readonly tolerance?: number
}

/**
 * Repeats network, front, transport and walls until none of them moves. Hotter gas draws more air and more air makes
 * more gas in nearly the same proportion, so temperatures hardly depend on the flow and the repetition contracts quickly.
 */
export const settle = (
  w: Workspace,
  place: FrontPlace,
  source: FrontSource,
  { fresh, tolerance = SETTLED }: SettleOptions,
): SteadyOutcome => {
  const { plan, site, network, solver, previousFlow } = w
  const closed = source.close(START_VELOCITY, site.temperature)
  if (!closed.ok) return doesNotGlow(closed.reason)
  let front = closed.front
  if (fresh) start(w, front)
  layBed(w.bed, w, place)
  shareFrontLoss(w.walls, plan.bed, place.height)
  if (fresh) previousFlow.fill(0)
  else previousFlow.set(solver.flow)
  w.accelerator.reset()
  const noAir = NO_FLUX * plan.bed.area
  let newtonSteps = 0
  let lastMoved = fresh ? ROUGH / EXACTER : KNOWN
  let withoutAir = 0
  let airless = 0
  let cold = 0
  let smoky = 0
  for (let round = 1; round <= MAX_ROUNDS; round++) {
    w.packed.pack(w, w.x)
    if (round > 1 || !fresh) {
      const first = closeFront(w, front, place, source)
      if (first.ok) front = first.front
    }
    setLinks(w, front, place)
    // While the temperatures still move, the network need not be exact; the last rounds see to that.
    const exacter = round > LONG_SEARCH ? EXACTER_BY_THEN : EXACTER
    const report = solver.solve(Math.min(ROUGH, Math.max(EXACT, exacter * lastMoved)))
    newtonSteps += report.iterations
    if (report.status !== 'balanced')
      return fail(
        'not balanced',
        `The air network did not balance (${report.status}, imbalance ${report.residual.toExponential(1)}).`,
      )
    setExchange(w, place)
    const through = solver.flow[place.link] as number
    // A transient may stop the air; a front that stays without it is out.
    withoutAir = through > noAir ? 0 : withoutAir + 1
    if (withoutAir > 0) airless++
    if (withoutAir >= OUT_AFTER || airless >= AIRLESS_ROUNDS) return frontOut(w, place)

    // Again, for where more air makes another gas.
    const next = closeFront(w, front, place, source)
    cold = next.ok ? 0 : cold + 1
    if (next.ok) front = next.front
    else if (cold >= OUT_AFTER) return doesNotGlow(next.reason)
    smoky = isSmoky(place) ? smoky + 1 : 0
    const gain = gainOf(place, front)
    let moved = Math.abs(gain - (network.gain[place.link] as number)) / gain

    setFrontStream(w.fromFront, place, front, Math.max(0, through))
    const flameHeat = transport(w, front, place)
    if (!Number.isFinite(flameHeat))
      return fail('out of range', 'A flow or temperature is no longer a number.')
    const solidRate = (Math.max(0, through) * place.airShare * place.active) / front.airPerFuel
    let wallChange = balanceHeat(w, front, place, solidRate)
    // From a guess the first step leaps; one more makes the second round worth its while.
    if (round === 1 && fresh) wallChange = balanceHeat(w, front, place, solidRate)
    const { flow } = solver
    let largest = 0
    for (let k = 0; k < flow.length; k++) largest = Math.max(largest, Math.abs(flow[k] as number))
    for (let k = 0; k < flow.length; k++) {
      moved = Math.max(moved, Math.abs((flow[k] as number) - (previousFlow[k] as number)) / largest)
      previousFlow[k] = flow[k] as number
    }
    lastMoved = moved
    if (round === MAX_ROUNDS - 1) w.beforeLast.set(flow)
    const settled = moved < tolerance && wallChange < WALLS_SETTLED * (tolerance / SETTLED)
    if (settled && withoutAir + cold === 0) {
      const outcome = finish(w, front, place, { round, newtonSteps, mass: report.residual })
      // Balances that do not close yet want a few more rounds.
      if (outcome.ok || outcome.failure.code !== 'balance not closed' || round === MAX_ROUNDS) return outcome
    }
    speedUp(w, round)
  }
  return smoky >= SMOKY_ROUNDS ? drawsSmoke() : restless(w)
}

/**
 * Network imbalance that will do, relative: in the first rounds, at last, and against the last round's change; after so many
 * rounds the acceleration is not to be misled by it [1].
 */
const ROUGH = 0.1
const EXACT = 1e-11
const EXACTER = 3e-3
const LONG_SEARCH = 20
const EXACTER_BY_THEN = 1e-6
/** Change that is expected of a state that is taken up again [1]. */
const KNOWN = 1e-2

/** So many rounds without air in all: a front that lives only every other moment does not live. */
const AIRLESS_ROUNDS = 40
/** A stove that does not settle but has drawn its own smoke in so many rounds on end does so whatever else it does. */
const SMOKY_ROUNDS = 100

/** Rounds before acceleration starts: the first ones find the region. */
const FIRST_ROUNDS = 3
/** Every so many rounds the acceleration begins anew, which breaks swings. */
const FRESH_START = 30
/** The few stoves that have not settled by then are followed more slowly; then at a crawl, which finds the region again. */
const SLOW_FROM = 60
const CRAWL_FROM = 120
const CRAWL_TO = 260

/** Closes the front on the air that comes to it as things stand. */
const closeFront = (w: Workspace, front: Front, place: FrontPlace, source: FrontSource): FrontOutcome => {
  const { plan, site, network, solver } = w
  const below = network.from[place.link] as number
  const burntShare = below === OUTSIDE ? 0 : (w.gasFraction[below] as number) * (1 + front.stoichiometricAir)
  place.airTemperature = below === OUTSIDE ? site.temperature : (w.temperature[below] as number)
  place.airShare = Math.max(0, 1 - burntShare)
  const through = Math.max(solver.flow[place.link] as number, NO_FLUX * plan.bed.area)
  return source.close((through * place.airShare) / (w.airDensity * plan.bed.area), place.airTemperature)
}

/** Takes the state a step further than this round did, towards where the rounds are heading. */
const speedUp = (w: Workspace, round: number): void => {
  const crawls = round >= CRAWL_FROM && round < CRAWL_TO
  if (round < FIRST_ROUNDS || round % FRESH_START === 0 || crawls) w.accelerator.reset()
  if (round < FIRST_ROUNDS) return
  w.packed.pack(w, w.gx)
  w.accelerator.next(w.x, w.gx, crawls ? 0.1 : round < SLOW_FROM ? 1 : 0.4)
  w.packed.unpack(w, w.x)
}

/** No state that stays: names the way whose flow the last rounds moved most. */
const restless = (w: Workspace): SteadyOutcome => {
  const { plan, solver, beforeLast } = w
  let most = 0
  let name = 'the fuel'
  for (const [k, link] of plan.links.entries()) {
    const change = Math.abs((solver.flow[k] as number) - (beforeLast[k] as number))
    if (change > most && link.kind !== 'gap') {
      most = change
      name = link.name
    }
  }
  return fail(
    'not settled',
    `No steady draught was found: the flow through ${name} keeps turning round. Such a stove may puff; give its air one clear way.`,
  )
}

const doesNotGlow = (reason: string): SteadyOutcome =>
  fail('does not glow', `The front does not keep itself alight: ${reason}.`)

/** Says why no air comes to the front: no hole is left below it, the wind is against it, or the draught. */
const frontOut = ({ plan, site }: Workspace, place: FrontPlace): SteadyOutcome => {
  const { bed, links } = plan
  const below = new Set(bed.segments.slice(0, place.segment + 1).map(({ link }) => links[link]?.from))
  const fed = links.some((link) => link.kind !== 'bed' && (below.has(link.to) || below.has(link.from)))
  if (!fed)
    return fail(
      'front out',
      'The front goes out when it sinks below the lowest hole that feeds it: no air comes from under it.',
    )
  return fail(
    'front out',
    site.wind.speed > 0
      ? 'In this wind no air rises through the fuel: it blows the fire out.'
      : 'No air rises through the fuel: the draught does not carry it there, so the front goes out.',
  )
}
