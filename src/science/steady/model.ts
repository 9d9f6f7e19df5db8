import { STANDARD_GRAVITY } from '#basis/constants.ts'
import type { Coefficients } from '#science/coefficients.ts'
import type { DraughtPlan } from '#science/draft/build.ts'
import { emptyNetwork, type Network, OUTSIDE } from '#science/draft/network.ts'
import { bed as bedShape } from '#science/draft/resistance.ts'
import { createSolver } from '#science/draft/solve.ts'
import { type Front, frontModel } from '#science/fire/front.ts'
import type { Fuel } from '#science/fuel/table.ts'
import { AIR, specificEnthalpy } from '#science/gas/blend.ts'
import { chemicalHeat, type GasBasis, mixtureGasConstant, mixtureTemperature } from '#science/gas/mixture.ts'
import { airViscosity } from '#science/gas/transport.ts'
import type { Site } from '#science/site.ts'

/**
 * The steady state of one stove at one place of the front: pressures, flows, temperatures and gas make together.
 * The network is balanced by Newton's method for given temperatures; temperatures and gas make follow the flows; the two
 * are repeated until neither moves. Hotter gas draws more air and more air makes more gas in nearly the same proportion,
 * so temperatures hardly depend on the flow and the repetition contracts quickly.
 */
export interface SteadyModel {
  solve(frontPosition: number): SteadyOutcome
}

export type SteadyOutcome = { readonly ok: true; readonly state: SteadyState } | { readonly ok: false; readonly failure: SteadyFailure }

export interface SteadyFailure {
  readonly code: 'front out' | 'does not glow' | 'not balanced' | 'not settled' | 'out of range' | 'balance not closed'
  readonly sentence: string
}

/** Arrays belong to the model and are overwritten by its next solve. */
export interface SteadyState {
  readonly front: Front
  /** Gauge pressure of each node [Pa]. */
  readonly pressure: Float64Array
  /** [K] */
  readonly temperature: Float64Array
  /** Mass fraction that came from the front [1]. */
  readonly gasFraction: Float64Array
  /** Flow of each link, positive from `from` to `to` [kg/s]. */
  readonly flow: Float64Array
  /** Density of the gas that passes each link [kg/m³]. */
  readonly density: Float64Array
  /** Dynamic viscosity of it [Pa s]. */
  readonly viscosity: Float64Array
  /** Pressure that drives each link, buoyancy included [Pa]. */
  readonly drive: Float64Array
  /** Dry fuel turned to gas and char [kg/s]. */
  readonly dryFuelRate: number
  /** Air through the fuel to the front [kg/s]. */
  readonly primaryAir: number
  /** Heat the flames set free [W]. */
  readonly flameHeat: number
  /** Heat that leaves the flames by radiation and the front through its wall [W]. */
  readonly heatLoss: number
  /** Heat carried into the gap's air [W]. */
  readonly preheat: number
  readonly iterations: number
  readonly newtonSteps: number
  /** Worst node imbalance over the largest flow [1]. */
  readonly massResidual: number
  /** Heat in minus heat out over the heat of the fuel [1]. */
  readonly energyResidual: number
}

const fail = (code: SteadyFailure['code'], sentence: string): SteadyOutcome => ({ ok: false, failure: { code, sentence } })

const MAX_ROUNDS = 120
/** Relative change of every temperature and flow below which the state has settled. */
const SETTLED = 1e-9
/** Superficial velocity below which the straight part of the front's law holds, and where the gas is best [m/s]. */
const SLOW_VELOCITY = 0.03
const BEST_VELOCITY = 0.09

export const airPerFuel = (velocity: number, coefficients: Coefficients): number => {
  const share = Math.min(1, Math.max(0, (velocity - SLOW_VELOCITY) / (BEST_VELOCITY - SLOW_VELOCITY)))
  return coefficients.airPerFuelSlow + share * (coefficients.airPerFuelBest - coefficients.airPerFuelSlow)
}

export interface SteadyInput {
  readonly plan: DraughtPlan
  readonly fuel: Fuel
  /** Wet basis [1]. */
  readonly moisture: number
  readonly site: Site
  readonly coefficients: Coefficients
}

export const createSteadyModel = ({ plan, fuel, moisture, site, coefficients }: SteadyInput): SteadyModel => {
  const { nodes, links, bed } = plan
  const n = nodes.length
  const m = links.length
  const network: Network = emptyNetwork(n, m)
  for (const [k, link] of links.entries()) {
    network.from[k] = link.from
    network.to[k] = link.to
  }
  const solver = createSolver(n, m)
  const model = frontModel(fuel, moisture, site.temperature, coefficients)
  const airDensity = site.pressure / (AIR.gasConstant * site.temperature)
  const airEnthalpy = specificEnthalpy(AIR, site.temperature)

  const temperature = new Float64Array(n)
  const gasFraction = new Float64Array(n)
  const enthalpy = new Float64Array(n)
  const loss = new Float64Array(n)
  const nodeDensity = new Float64Array(n)
  const linkDensity = new Float64Array(m)
  const linkViscosity = new Float64Array(m)
  const drive = new Float64Array(m)
  const gapHeat = new Float64Array(m)
  const previousFlow = new Float64Array(m)

  const gapLinks = links.flatMap((link, k) => (link.kind === 'gap' && nodes[link.from]?.space === 'air' ? [k] : []))
  const gapLength = gapLinks.reduce((sum, k) => sum + (links[k]?.length ?? 0), 0)
  const segmentOf = new Int32Array(m).fill(-1)
  for (const [s, segment] of bed.segments.entries()) segmentOf[segment.link] = s

  const raw = (depth: number) => bedShape(bed.area, depth, fuel.voidFraction, fuel.pieceDiameter)
  const charred = (depth: number) =>
    bedShape(
      bed.area,
      depth * coefficients.charSettle,
      coefficients.charVoid,
      fuel.pieceDiameter * coefficients.charShrink,
    )

  const startState = (front: Front): void => {
    solver.pressure.fill(0)
    for (let i = 0; i < n; i++) {
      const node = nodes[i]
      const hot = node?.space === 'flame'
      temperature[i] = hot ? 1000 : node?.space === 'bed' ? site.temperature : site.temperature + 60
      gasFraction[i] = hot ? 0.5 / (1 + front.stoichiometricAir) : 0
    }
  }

  const solve = (frontPosition: number): SteadyOutcome => {
    // The front stands this far above the bed's base; the segment that holds it makes the gas.
    const frontHeight = (1 - frontPosition) * bed.depth
    const makes = bed.segments.findIndex((s) => frontHeight >= s.from && frontHeight <= s.to)
    const frontSegment = makes < 0 ? bed.segments.length - 1 : makes
    const making = bed.segments[frontSegment] as (typeof bed.segments)[number]

    let ratio = coefficients.airPerFuelSlow
    let closed = model.close(ratio, site.temperature)
    if (!closed.ok) return fail('does not glow', `The front does not keep itself alight: ${closed.reason}.`)
    let front = closed.front
    let basis: GasBasis = { ...front, heat: front.gasHeat }
    startState(front)
    previousFlow.fill(0)

    const upstreamDensity = (k: number, flow: number): number => {
      const node = (flow >= 0 ? network.from[k] : network.to[k]) as number
      return node === OUTSIDE ? airDensity : (nodeDensity[node] as number)
    }
    const upstreamTemperature = (k: number, flow: number): number => {
      const node = (flow >= 0 ? network.from[k] : network.to[k]) as number
      return node === OUTSIDE ? site.temperature : (temperature[node] as number)
    }

    const setLinks = (): void => {
      for (let i = 0; i < n; i++)
        nodeDensity[i] =
          site.pressure / (mixtureGasConstant(basis, gasFraction[i] as number) * (temperature[i] as number))
      const gasDensity = site.pressure / (front.unburnt.gasConstant * front.temperature)
      const gasViscosity = airViscosity(front.temperature)
      for (let k = 0; k < m; k++) {
        const link = links[k] as (typeof links)[number]
        const flow = solver.flow[k] as number
        const density = upstreamDensity(k, flow)
        const viscosity = airViscosity(upstreamTemperature(k, flow))
        linkDensity[k] = density
        linkViscosity[k] = viscosity
        const segment = segmentOf[k] as number
        let buoyancy = 0
        if (segment < 0) {
          network.linear[k] = (link.shape.viscous * viscosity) / density
          network.quadratic[k] = link.shape.inertial / density
          // Each node's column reaches from its own height to the passage; a gap is filled from upstream.
          const a = link.from
          const b = link.to
          if (link.kind === 'gap') {
            const mean = ((nodeDensity[a] as number) + (nodeDensity[b] as number)) / 2
            buoyancy = (airDensity - mean) * ((nodes[b]?.height ?? 0) - (nodes[a]?.height ?? 0))
          } else {
            if (a !== OUTSIDE) buoyancy += (airDensity - (nodeDensity[a] as number)) * (link.height - (nodes[a]?.height ?? 0))
            if (b !== OUTSIDE) buoyancy -= (airDensity - (nodeDensity[b] as number)) * (link.height - (nodes[b]?.height ?? 0))
          }
        } else {
          const { from, to } = bed.segments[segment] as (typeof bed.segments)[number]
          const rawDepth = Math.min(Math.max(frontHeight, from), to) - from
          const charDepth = to - from - rawDepth
          const gain = segment === frontSegment ? front.gas / ratio : 1
          const hotDensity = segment > frontSegment && flow >= 0 ? density : gasDensity
          const hotViscosity = segment > frontSegment && flow >= 0 ? viscosity : gasViscosity
          const cold = raw(rawDepth)
          const hot = charred(charDepth)
          // Raw fuel first, then char with the gas added: Δp = R_raw(ṁ) + R_char(gain·ṁ).
          network.linear[k] = (cold.viscous * viscosity) / density + (gain * hot.viscous * hotViscosity) / hotDensity
          network.quadratic[k] = cold.inertial / density + (gain * gain * hot.inertial) / hotDensity
          network.gain[k] = gain
          const top = link.to
          const reach = top === OUTSIDE ? bed.base + to : (nodes[top]?.height ?? 0)
          buoyancy =
            (airDensity - density) * rawDepth +
            (airDensity - hotDensity) * charDepth +
            (top === OUTSIDE ? 0 : (airDensity - (nodeDensity[top] as number)) * (reach - (bed.base + to)))
        }
        network.head[k] = buoyancy * STANDARD_GRAVITY
      }
    }

    /** Flow that enters node `to` (or `from` when reversed) by link k, in the front's segment the gas it became [kg/s]. */
    const received = (k: number): number => {
      const flow = solver.flow[k] as number
      return flow > 0 ? flow * (network.gain[k] as number) : -flow
    }

    let flameHeat = 0
    let preheat = 0

    /** Carries composition and enthalpy along the flows until they stop changing. */
    const transport = (): boolean => {
      for (let sweep = 0; sweep < 200; sweep++) {
        let change = 0
        let released = 0
        let hottest = site.temperature
        for (let i = 0; i < n; i++) {
          let mass = 0
          let gas = 0
          let heat = 0
          let bound = 0
          for (let k = 0; k < m; k++) {
            const flow = solver.flow[k] as number
            if (flow === 0) continue
            const into = (flow > 0 ? network.to[k] : network.from[k]) as number
            if (into !== i) continue
            const out = (flow > 0 ? network.from[k] : network.to[k]) as number
            const amount = received(k)
            let z = out === OUTSIDE ? 0 : (gasFraction[out] as number)
            let h = out === OUTSIDE ? airEnthalpy : (enthalpy[out] as number)
            if (k === making.link && flow > 0) {
              z = 1
              h = specificEnthalpy(front.unburnt, front.temperature)
            }
            mass += amount
            gas += amount * z
            heat += amount * h + (gapHeat[k] as number)
            bound += amount * chemicalHeat(basis, z)
          }
          if (mass <= 0) {
            // Dead end: it takes the temperature of the open air.
            gasFraction[i] = 0
            enthalpy[i] = airEnthalpy
            temperature[i] = site.temperature
            loss[i] = 0
            continue
          }
          const z = Math.min(1, gas / mass)
          const set = Math.max(0, bound - mass * chemicalHeat(basis, z))
          released += set
          loss[i] = set * coefficients.flameRadiation + (flameHeat > 0 ? (set / flameHeat) * preheat : 0)
          const h = (heat - (loss[i] as number)) / mass
          change = Math.max(change, Math.abs(z - (gasFraction[i] as number)), Math.abs(h - (enthalpy[i] as number)) / 1e6)
          gasFraction[i] = z
          enthalpy[i] = h
          const t = mixtureTemperature(basis, z, h, temperature[i] as number)
          if (!(t > 0)) return false
          temperature[i] = t
          if (nodes[i]?.space === 'flame' && t > hottest) hottest = t
        }
        flameHeat = released
        preheat = 0
        for (const k of gapLinks) {
          const link = links[k] as (typeof links)[number]
          const flow = Math.abs(solver.flow[k] as number)
          // What the wall can pass on at most: air no hotter than four fifths of the way to the flame.
          const most = flow * 1010 * 0.8 * Math.max(0, hottest - upstreamTemperature(k, solver.flow[k] as number))
          const heat = Math.min(most, (coefficients.gapPreheat * released * link.length) / gapLength)
          gapHeat[k] = heat
          preheat += heat
        }
        if (change < 1e-13) return true
      }
      return true
    }

    let newtonSteps = 0
    for (let round = 1; round <= MAX_ROUNDS; round++) {
      setLinks()
      const report = solver.solve(network)
      newtonSteps += report.iterations
      if (report.status !== 'balanced')
        return fail('not balanced', `The air network did not balance (${report.status}, imbalance ${report.residual.toExponential(1)}).`)
      const primary = solver.flow[making.link] as number
      if (!(primary > 1e-8))
        return fail('front out', 'No air rises through the fuel, so the front goes out.')

      const velocity = primary / (airDensity * bed.area)
      const wanted = airPerFuel(velocity, coefficients)
      const below = network.from[making.link] as number
      closed = model.close(wanted, below === OUTSIDE ? site.temperature : Math.min(600, temperature[below] as number))
      if (!closed.ok) return fail('does not glow', `The front does not keep itself alight: ${closed.reason}.`)
      front = closed.front
      ratio = wanted
      basis = { ...front, heat: front.gasHeat }
      const gainBefore = network.gain[making.link] as number
      const gain = front.gas / ratio

      if (!transport()) return fail('out of range', 'A temperature left the range of the gas data (200–3000 K).')
      let moved = Math.abs(gain - gainBefore) / gain
      let largest = 0
      for (let k = 0; k < m; k++) largest = Math.max(largest, Math.abs(solver.flow[k] as number))
      for (let k = 0; k < m; k++) {
        moved = Math.max(moved, Math.abs((solver.flow[k] as number) - (previousFlow[k] as number)) / largest)
        previousFlow[k] = solver.flow[k] as number
      }
      if (moved < SETTLED) return finish(round, newtonSteps, report.residual, primary)
    }
    return fail('not settled', `Flows and temperatures did not settle in ${MAX_ROUNDS} rounds.`)

    function finish(rounds: number, steps: number, massResidual: number, primary: number): SteadyOutcome {
      const dryFuelRate = primary / ratio
      let balance = dryFuelRate * (front.fuelEnthalpy - front.charEnthalpy - front.loss)
      let lost = dryFuelRate * front.loss
      for (let i = 0; i < n; i++) {
        lost += loss[i] as number
        balance -= loss[i] as number
      }
      balance += preheat
      for (let k = 0; k < m; k++) {
        const flow = solver.flow[k] as number
        drive[k] =
          (network.from[k] === OUTSIDE ? 0 : (solver.pressure[network.from[k] as number] as number)) -
          (network.to[k] === OUTSIDE ? 0 : (solver.pressure[network.to[k] as number] as number)) +
          (network.head[k] as number)
        if (network.from[k] === OUTSIDE) balance += flow > 0 ? flow * airEnthalpy : flow * (enthalpy[network.to[k] as number] as number)
        else if (network.to[k] === OUTSIDE)
          balance -=
            flow > 0
              ? k === making.link
                ? flow * (network.gain[k] as number) * specificEnthalpy(front.unburnt, front.temperature)
                : flow * (enthalpy[network.from[k] as number] as number)
              : flow * airEnthalpy
      }
      const energyResidual = balance / (dryFuelRate * fuel.higherHeatingValue)
      if (!(massResidual <= 1e-9) || !(Math.abs(energyResidual) <= 1e-6))
        return fail(
          'balance not closed',
          `Mass closes to ${massResidual.toExponential(1)} and energy to ${energyResidual.toExponential(1)}; 1e-9 and 1e-6 are wanted.`,
        )
      return {
        ok: true,
        state: {
          front,
          pressure: solver.pressure,
          temperature,
          gasFraction,
          flow: solver.flow,
          density: linkDensity,
          viscosity: linkViscosity,
          drive,
          dryFuelRate,
          primaryAir: primary,
          flameHeat,
          heatLoss: lost,
          preheat,
          iterations: rounds,
          newtonSteps: steps,
          massResidual,
          energyResidual,
        },
      }
    }
  }
  return { solve }
}
