import type { Coefficients } from '#science/coefficients.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import { type Front, frontModel } from '#science/fire/front.ts'
import { specificEnthalpy } from '#science/gas/blend.ts'
import type { GasBasis } from '#science/gas/mixture.ts'
import { forwardFlow, setExchange } from './exchange.ts'
import { setLinks } from './links.ts'
import { transport } from './transport.ts'
import { balanceWalls } from './walls.ts'
import { type FrontPlace, layOut, placeFront, type SteadyInput, type Workspace } from './workspace.ts'

/**
 * The steady state of one stove at one place of the front: pressures, flows, temperatures and gas make together.
 * The network is balanced by Newton's method for given temperatures; temperatures and gas make follow the flows; the two
 * are repeated until neither moves. Hotter gas draws more air and more air makes more gas in nearly the same proportion,
 * so temperatures hardly depend on the flow and the repetition contracts quickly.
 */
export interface SteadyModel {
  /** `frontPosition` is 0 at the top of the fuel and 1 at its floor. */
  solve(frontPosition: number): SteadyOutcome
}

export type SteadyOutcome =
  | { readonly ok: true; readonly state: SteadyState }
  | { readonly ok: false; readonly failure: SteadyFailure }

export interface SteadyFailure {
  readonly code:
    | 'front out'
    | 'draws its own smoke'
    | 'does not glow'
    | 'not balanced'
    | 'not settled'
    | 'out of range'
    | 'balance not closed'
  readonly sentence: string
}

/** Arrays belong to the model and are overwritten by its next solve. */
export interface SteadyState {
  readonly front: Front
  /** Gauge pressure of each node at its height [Pa]. */
  readonly pressure: Float64Array
  /** [K] */
  readonly temperature: Float64Array
  /** Mass fraction that came from the front [1]. */
  readonly gasFraction: Float64Array
  /** Flow of each link, positive from `from` to `to` [kg/s]. */
  readonly flow: Float64Array
  /** Of the gas that passes each link [kg/m³], [Pa s]. */
  readonly density: Float64Array
  readonly viscosity: Float64Array
  /** Pressure that drives each link, buoyancy included [Pa]. */
  readonly drive: Float64Array
  /** Dry fuel turned to gas and char [kg/s]. */
  readonly dryFuelRate: number
  /** Air through the fuel to the front [kg/s]. */
  readonly primaryAir: number
  /** Heat the flames set free [W]. */
  readonly flameHeat: number
  /** Heat carried into the gap's air [W]. */
  readonly preheat: number
  /** Heat the outer walls give to the open air [W]. */
  readonly wallLoss: number
  /** Of each wall stretch [K]. */
  readonly wallTemperature: Float64Array
  readonly iterations: number
  readonly newtonSteps: number
  /** Worst node imbalance over the largest flow [1]. */
  readonly massResidual: number
  /** Heat in minus heat out over the heat of the fuel [1]. */
  readonly energyResidual: number
}

const fail = (code: SteadyFailure['code'], sentence: string): SteadyOutcome => ({
  ok: false,
  failure: { code, sentence },
})

const MAX_ROUNDS = 200
/** Relative change of flows and gas make below which the state has settled. */
const SETTLED = 1e-9
/** Air through the fuel below which there is no front to speak of [kg/s]. */
const NO_AIR = 1e-8
/** Walls that move by less than this have settled [K]. */
const WALLS_SETTLED = 1e-6
/** Rounds in a row without air through the fuel that put the front out. */
const OUT_AFTER = 4
/** Share of burnt gas in what comes to the front above which it is said to draw its own smoke [1]; a judgement. */
const SMOKE_DRAWN = 0.2
/** Rounds after which temperatures follow only half way, for the few stoves that swing. */
const PATIENCE = 40

/** Superficial velocity below which the straight part of the front's law holds, and where the gas is best [m/s]. */
const SLOW_VELOCITY = 0.03
const BEST_VELOCITY = 0.09

/** Primary air that turns a kilogram of dry fuel, rising from the straight part to the best gas [kg/kg]. */
export const airPerFuel = (velocity: number, coefficients: Coefficients): number => {
  const share = Math.min(1, Math.max(0, (velocity - SLOW_VELOCITY) / (BEST_VELOCITY - SLOW_VELOCITY)))
  return coefficients.airPerFuelSlow + share * (coefficients.airPerFuelBest - coefficients.airPerFuelSlow)
}

const start = (w: Workspace, front: Front): void => {
  const { plan, site, walls } = w
  w.solver.pressure.fill(0)
  w.solver.flow.fill(0)
  w.gapHeat.fill(0)
  w.wallHeat.fill(0)
  w.exchange.fill(0)
  walls.gapTemperature.fill(site.temperature)
  for (const [i, node] of plan.nodes.entries()) {
    w.temperature[i] = node.space === 'flame' ? 1300 : site.temperature
    w.gasFraction[i] = node.space === 'flame' ? 0.7 / (1 + front.stoichiometricAir) : 0
  }
  for (const [s, { inside }] of walls.stretches.entries())
    walls.temperature[s] =
      inside.kind === 'bed' || (inside.kind === 'node' && plan.nodes[inside.node]?.space === 'flame')
        ? 600
        : site.temperature + 30
}

export const createSteadyModel = (input: SteadyInput): SteadyModel => {
  const w = layOut(input)
  const { plan, site, network, solver, coefficients } = w
  const model = frontModel(input.fuel, input.moisture, site.temperature, coefficients)
  const previousFlow = new Float64Array(plan.links.length)
  const previousTemperature = new Float64Array(plan.nodes.length)

  const solve = (frontPosition: number): SteadyOutcome => {
    const place = placeFront(w, frontPosition)
    let closed = model.close(coefficients.airPerFuelSlow, site.temperature)
    if (!closed.ok) return doesNotGlow(closed.reason)
    let front = closed.front
    let basis: GasBasis = { ...front, heat: front.gasHeat }
    start(w, front)
    previousFlow.fill(0)
    let newtonSteps = 0
    let withoutAir = 0
    for (let round = 1; round <= MAX_ROUNDS; round++) {
      setLinks(w, basis, front, place)
      const report = solver.solve(network)
      newtonSteps += report.iterations
      if (report.status !== 'balanced')
        return fail(
          'not balanced',
          `The air network did not balance (${report.status}, imbalance ${report.residual.toExponential(1)}).`,
        )
      setExchange(w)
      const through = solver.flow[place.link] as number
      // A transient may stop the air; a front that stays without it is out.
      withoutAir = through > NO_AIR ? 0 : withoutAir + 1
      if (withoutAir >= OUT_AFTER) return frontOut(w, place)

      const below = network.from[place.link] as number
      place.airTemperature = below === OUTSIDE ? site.temperature : (w.temperature[below] as number)
      const burntShare =
        below === OUTSIDE ? 0 : (w.gasFraction[below] as number) * (1 + basis.stoichiometricAir)
      const airShare = Math.max(0, 1 - burntShare)
      const velocity = (Math.max(through, NO_AIR) * airShare) / (w.airDensity * plan.bed.area)
      closed = model.close(airPerFuel(velocity, coefficients), place.airTemperature)
      if (!closed.ok) return doesNotGlow(closed.reason)
      front = closed.front
      basis = { ...front, heat: front.gasHeat }
      const gain = (airShare * front.gas) / front.airPerFuel + (1 - airShare)
      let moved = Math.abs(gain - (network.gain[place.link] as number)) / gain
      place.airShare = airShare

      previousTemperature.set(w.temperature)
      const flameHeat = transport(w, basis, front, place)
      if (!(flameHeat >= 0))
        return fail('out of range', 'A temperature left the range of the gas data (200–3000 K).')
      const wallChange = balanceWalls(w, front, place, (Math.max(0, through) * airShare) / front.airPerFuel)
      let largest = 0
      for (const flow of solver.flow) largest = Math.max(largest, Math.abs(flow))
      for (const [k, flow] of solver.flow.entries()) {
        moved = Math.max(moved, Math.abs(flow - (previousFlow[k] as number)) / largest)
        previousFlow[k] = flow
      }
      if (moved < SETTLED && wallChange < WALLS_SETTLED && withoutAir === 0)
        return finish(w, front, place, flameHeat, { round, newtonSteps, mass: report.residual })
      if (round > PATIENCE)
        for (const [i, before] of previousTemperature.entries())
          w.temperature[i] = ((w.temperature[i] as number) + before) / 2
    }
    return fail('not settled', `Flows and temperatures did not settle in ${MAX_ROUNDS} rounds.`)
  }
  return { solve }
}

const doesNotGlow = (reason: string): SteadyOutcome =>
  fail('does not glow', `The front does not keep itself alight: ${reason}.`)

/** Says why no air comes to the front: the draught is against it, or no hole is left below it. */
const frontOut = ({ plan }: Workspace, place: FrontPlace): SteadyOutcome => {
  const { bed, links } = plan
  const below = new Set(bed.segments.slice(0, place.segment + 1).map(({ link }) => links[link]?.from))
  const fed = links.some((link) => link.kind !== 'bed' && (below.has(link.to) || below.has(link.from)))
  return fail(
    'front out',
    fed
      ? 'No air rises through the fuel: the draught does not carry it there, so the front goes out.'
      : 'The front goes out when it sinks below the lowest hole that feeds it: no air comes from under it.',
  )
}

/** Checks the balances at the door and hands the state out. */
const finish = (
  w: Workspace,
  front: Front,
  place: FrontPlace,
  flameHeat: number,
  effort: { readonly round: number; readonly newtonSteps: number; readonly mass: number },
): SteadyOutcome => {
  const { network, solver, plan } = w
  if (1 - place.airShare > SMOKE_DRAWN)
    return fail(
      'draws its own smoke',
      'The fuel draws burnt gas instead of air: flue gas comes down the gap and up through the fuel.',
    )
  const through = solver.flow[place.link] as number
  const primaryAir = through * place.airShare
  const dryFuelRate = primaryAir / front.airPerFuel
  const drive = new Float64Array(plan.links.length)
  let balance = dryFuelRate * (front.fuelEnthalpy - front.charEnthalpy - front.loss)
  for (let i = 0; i < plan.nodes.length; i++)
    balance -= (w.burnt[i] as number) * w.coefficients.flameRadiation
  balance += w.ledger.fromWalls
  const pressureAt = (node: number): number => (node === OUTSIDE ? 0 : (solver.pressure[node] as number))
  for (let k = 0; k < plan.links.length; k++) {
    const from = network.from[k] as number
    const to = network.to[k] as number
    const flow = solver.flow[k] as number
    drive[k] = pressureAt(from) - pressureAt(to) + (network.head[k] as number)
    if (from !== OUTSIDE && to !== OUTSIDE) continue
    const forward = forwardFlow(flow, w.exchange[k] as number)
    const inner = from === OUTSIDE ? to : from
    const inward = from === OUTSIDE ? forward : forward - flow
    const outward = from === OUTSIDE ? forward - flow : forward
    balance += inward * w.airEnthalpy
    if (k === place.link)
      balance -=
        primaryAir * (front.gas / front.airPerFuel) * specificEnthalpy(front.unburnt, front.temperature) +
        (through - primaryAir) * specificEnthalpy(front.burnt, place.airTemperature)
    else balance -= outward * (w.enthalpy[inner] as number)
  }
  const energyResidual = balance / (dryFuelRate * w.fuel.higherHeatingValue)
  if (!(effort.mass <= 1e-9) || !(Math.abs(energyResidual) <= 1e-6))
    return fail(
      'balance not closed',
      `Mass closes to ${effort.mass.toExponential(1)} and energy to ${energyResidual.toExponential(1)}; 1e-9 and 1e-6 are wanted.`,
    )
  return {
    ok: true,
    state: {
      front,
      pressure: solver.pressure,
      temperature: w.temperature,
      gasFraction: w.gasFraction,
      flow: solver.flow,
      density: w.linkDensity,
      viscosity: w.linkViscosity,
      drive,
      dryFuelRate,
      primaryAir,
      flameHeat,
      preheat: w.gapHeat.reduce((sum, heat) => sum + heat, 0),
      wallLoss: w.walls.outward.reduce((sum, heat) => sum + heat, 0),
      wallTemperature: w.walls.temperature,
      iterations: effort.round,
      newtonSteps: effort.newtonSteps,
      massResidual: effort.mass,
      energyResidual,
    },
  }
}
