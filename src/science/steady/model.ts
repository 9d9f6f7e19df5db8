import type { Coefficients } from '#science/coefficients.ts'
import { OUTSIDE } from '#science/draft/network.ts'
import { type Front, frontModel } from '#science/fire/front.ts'
import { specificEnthalpy } from '#science/gas/blend.ts'
import type { GasBasis } from '#science/gas/mixture.ts'
import { setLinks } from './links.ts'
import { type FlameHeat, transport } from './transport.ts'
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
/** Rounds after which temperatures follow only half way, for the few stoves that swing. */
const PATIENCE = 25

/** Superficial velocity below which the straight part of the front's law holds, and where the gas is best [m/s]. */
const SLOW_VELOCITY = 0.03
const BEST_VELOCITY = 0.09

/** Primary air that turns a kilogram of dry fuel, rising from the straight part to the best gas [kg/kg]. */
export const airPerFuel = (velocity: number, coefficients: Coefficients): number => {
  const share = Math.min(1, Math.max(0, (velocity - SLOW_VELOCITY) / (BEST_VELOCITY - SLOW_VELOCITY)))
  return coefficients.airPerFuelSlow + share * (coefficients.airPerFuelBest - coefficients.airPerFuelSlow)
}

const startTemperatures = (w: Workspace, front: Front): void => {
  const { plan, site } = w
  w.solver.pressure.fill(0)
  w.solver.flow.fill(0)
  w.gapHeat.fill(0)
  for (const [i, node] of plan.nodes.entries()) {
    w.temperature[i] = node.space === 'flame' ? 1400 : site.temperature
    w.gasFraction[i] = node.space === 'flame' ? 1 / (1 + front.stoichiometricAir) : 0
    w.enthalpy[i] = w.airEnthalpy
  }
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
    if (!closed.ok) return fail('does not glow', `The front does not keep itself alight: ${closed.reason}.`)
    let front = closed.front
    let basis: GasBasis = { ...front, heat: front.gasHeat }
    startTemperatures(w, front)
    previousFlow.fill(0)
    const heat: FlameHeat = { released: 0, preheat: 0 }
    let newtonSteps = 0
    for (let round = 1; round <= MAX_ROUNDS; round++) {
      setLinks(w, basis, front, place)
      const report = solver.solve(network)
      newtonSteps += report.iterations
      if (report.status !== 'balanced')
        return fail(
          'not balanced',
          `The air network did not balance (${report.status}, imbalance ${report.residual.toExponential(1)}).`,
        )
      const primary = solver.flow[place.link] as number
      if (!(primary > NO_AIR))
        return fail('front out', 'No air rises through the fuel, so the front goes out.')

      const below = network.from[place.link] as number
      const airTemperature =
        below === OUTSIDE || (w.gasFraction[below] as number) > 0
          ? site.temperature
          : (w.temperature[below] as number)
      closed = model.close(airPerFuel(primary / (w.airDensity * plan.bed.area), coefficients), airTemperature)
      if (!closed.ok) return fail('does not glow', `The front does not keep itself alight: ${closed.reason}.`)
      front = closed.front
      basis = { ...front, heat: front.gasHeat }
      const gain = front.gas / front.airPerFuel
      let moved = Math.abs(gain - (network.gain[place.link] as number)) / gain

      previousTemperature.set(w.temperature)
      if (!transport(w, basis, front, place, heat))
        return fail('out of range', 'A temperature left the range of the gas data (200–3000 K).')
      let largest = 0
      for (const flow of solver.flow) largest = Math.max(largest, Math.abs(flow))
      for (const [k, flow] of solver.flow.entries()) {
        moved = Math.max(moved, Math.abs(flow - (previousFlow[k] as number)) / largest)
        previousFlow[k] = flow
      }
      if (moved < SETTLED) return finish(w, front, place, heat, { round, newtonSteps, mass: report.residual })
      if (round > PATIENCE)
        for (const [i, before] of previousTemperature.entries())
          w.temperature[i] = ((w.temperature[i] as number) + before) / 2
    }
    return fail('not settled', `Flows and temperatures did not settle in ${MAX_ROUNDS} rounds.`)
  }
  return { solve }
}

/** Checks the balances at the door and hands the state out. */
const finish = (
  w: Workspace,
  front: Front,
  place: FrontPlace,
  heat: FlameHeat,
  effort: { readonly round: number; readonly newtonSteps: number; readonly mass: number },
): SteadyOutcome => {
  const { network, solver, plan } = w
  const primaryAir = solver.flow[place.link] as number
  const dryFuelRate = primaryAir / front.airPerFuel
  const drive = new Float64Array(plan.links.length)
  let balance = dryFuelRate * (front.fuelEnthalpy - front.charEnthalpy - front.loss) + heat.preheat
  for (const lost of w.loss) balance -= lost
  const pressureAt = (node: number): number => (node === OUTSIDE ? 0 : (solver.pressure[node] as number))
  for (let k = 0; k < plan.links.length; k++) {
    const from = network.from[k] as number
    const to = network.to[k] as number
    const flow = solver.flow[k] as number
    drive[k] = pressureAt(from) - pressureAt(to) + (network.head[k] as number)
    if (from !== OUTSIDE && to !== OUTSIDE) continue
    const source = flow >= 0 ? from : to
    const fresh = k === place.link && flow > 0
    const enthalpy = fresh
      ? specificEnthalpy(front.unburnt, front.temperature)
      : source === OUTSIDE
        ? w.airEnthalpy
        : (w.enthalpy[source] as number)
    const amount = Math.abs(flow) * (fresh ? (network.gain[k] as number) : 1)
    balance += (source === OUTSIDE ? 1 : -1) * amount * enthalpy
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
      flameHeat: heat.released,
      preheat: heat.preheat,
      iterations: effort.round,
      newtonSteps: effort.newtonSteps,
      massResidual: effort.mass,
      energyResidual,
    },
  }
}
