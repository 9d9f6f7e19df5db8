import { OUTSIDE } from '#science/draft/network.ts'
import type { Front } from '#science/fire/front.ts'
import { COLDEST, HOTTEST } from '#science/gas/mixture.ts'
import type { FrontPlace } from './frontPlace.ts'
import type { Workspace } from './workspace.ts'

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

/** Arrays and front belong to the model and are overwritten by its next solve. */
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
  /** Scale of the two-way flow through each link [kg/s]; see `exchange.ts`. */
  readonly exchange: Float64Array
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

/** A steady state that there is not, with the sentence for the maker. */
export const fail = (code: SteadyFailure['code'], sentence: string): SteadyOutcome => ({
  ok: false,
  failure: { code, sentence },
})

/** Flux of primary air that blows the front out [kg/(m² s)]; from memory. */
const BLOW_OUT_FLUX = 0.5
/** Share of burnt gas in what comes to the front above which it is said to draw its own smoke [1]; a judgement. */
const SMOKE_DRAWN = 0.2

/** Does so much burnt gas come to the front with the air that it is said to draw its own smoke? */
export const isSmoky = ({ airShare }: FrontPlace): boolean => 1 - airShare > SMOKE_DRAWN

/** The failure of a front that draws its own smoke. */
export const drawsSmoke = (): SteadyOutcome =>
  fail(
    'draws its own smoke',
    'The fuel draws burnt gas instead of air: flue gas comes down the gap and up through the fuel.',
  )

const sumOf = (values: Float64Array): number => {
  let sum = 0
  for (let i = 0; i < values.length; i++) sum += values[i] as number
  return sum
}

/** Checks the balances at the door and hands the state out. */
export const finish = (
  w: Workspace,
  front: Front,
  place: FrontPlace,
  effort: { readonly round: number; readonly newtonSteps: number; readonly mass: number },
): SteadyOutcome => {
  const { network, solver, plan } = w
  if (isSmoky(place)) return drawsSmoke()
  for (const temperature of w.temperature)
    if (temperature <= COLDEST || temperature >= HOTTEST)
      return fail('out of range', 'A temperature left the range of the gas data (200–3000 K).')
  const through = solver.flow[place.link] as number
  const primaryAir = through * place.airShare
  const dryFuelRate = (primaryAir * place.active) / front.airPerFuel
  if (primaryAir / plan.bed.area > BLOW_OUT_FLUX)
    return fail('front out', 'So much air rises through the fuel that it blows the front out.')
  const { drive, table, forward, back } = w
  const air = plan.nodes.length
  let balance = dryFuelRate * (front.fuelEnthalpy - front.charEnthalpy - front.loss - front.glow)
  let flameHeat = 0
  for (let i = 0; i < air; i++) flameHeat += w.burnt[i] as number
  balance += w.ledger.fromWalls - w.coefficients.flameRadiation * flameHeat
  const pressureAt = (node: number): number => (node === OUTSIDE ? 0 : (solver.pressure[node] as number))
  for (let k = 0; k < plan.links.length; k++) {
    const from = table.from[k] as number
    const to = table.to[k] as number
    drive[k] =
      pressureAt(network.from[k] as number) -
      pressureAt(network.to[k] as number) +
      (network.head[k] as number)
    if (from !== air && to !== air) continue
    const inward = (from === air ? forward[k] : back[k]) as number
    const outward = (from === air ? back[k] : forward[k]) as number
    balance += inward * w.airEnthalpy
    if (k === place.link) balance -= w.fromFront.heat
    else balance -= outward * (w.enthalpy[from === air ? to : from] as number)
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
      temperature: w.nodeTemperature,
      gasFraction: w.nodeGasFraction,
      flow: solver.flow,
      exchange: w.exchange,
      density: w.linkDensity,
      viscosity: w.linkViscosity,
      drive,
      dryFuelRate,
      primaryAir,
      flameHeat,
      preheat: sumOf(w.gapHeat),
      wallLoss: sumOf(w.walls.outward),
      wallTemperature: w.walls.temperature,
      iterations: effort.round,
      newtonSteps: effort.newtonSteps,
      massResidual: effort.mass,
      energyResidual,
    },
  }
}
