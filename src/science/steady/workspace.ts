import { type Accelerator, createAccelerator } from '#basis/numerics/anderson.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { emptyNetwork, type Network, OUTSIDE } from '#science/draft/network.ts'
import type { DraughtLink, DraughtPlan } from '#science/draft/plan.ts'
import { createSolver, type NetworkSolver } from '#science/draft/solve.ts'
import { splitForWind } from '#science/draft/wind.ts'
import type { Front } from '#science/fire/front.ts'
import { frontModel } from '#science/fire/front.ts'
import { airPerFuel } from '#science/fire/source.ts'
import { TAR_ATOMS } from '#science/fire/tar.ts'
import type { ChargedFuel } from '#science/fuel/charge.ts'
import { AIR, AIR_MOLES, specificEnthalpy } from '#science/gas/blend.ts'
import { type ViscosityRatio, viscosityRatio } from '#science/gas/viscosityRatio.ts'
import type { Site } from '#science/site.ts'
import { type Wind, windPressureAtHole, windPressureAtTop } from '#science/weather/wind.ts'
import { type Packing, packingOf } from './packing.ts'
import { layOutWalls, type WallModel } from './wallModel.ts'

export interface SteadyInput {
  readonly plan: DraughtPlan
  /** As it lies in the fuel can. */
  readonly fuel: ChargedFuel
  readonly site: Site
  readonly coefficients: Coefficients
  /** The cans have been through a fire: their tin has run off and the steel is dark. */
  readonly burntOff: boolean
}

/**
 * Everything the steady state is worked out in, laid out once a stove: the inner loop allocates next to nothing.
 * Node arrays are indexed as `plan.nodes`, link arrays as `plan.links`.
 */
export interface Workspace extends SteadyInput {
  readonly network: Network
  readonly solver: NetworkSolver
  readonly airDensity: number
  /** What the wind adds to each link's drive [Pa]. */
  readonly windHead: Float64Array
  readonly airEnthalpy: number
  /** Of the fuel's raw and burnt gas, over air's. */
  readonly viscosity: { readonly unburnt: ViscosityRatio; readonly burnt: ViscosityRatio }
  /** [K] */
  readonly temperature: Float64Array
  /** Mass fraction that came from the front [1]. */
  readonly gasFraction: Float64Array
  /** [J/kg] */
  readonly enthalpy: Float64Array
  /** Heat set free at each node [W]. */
  readonly burnt: Float64Array
  /** From each node's gas to its walls: conductance [W/K], and that times the walls' temperatures [W]. */
  readonly wallConductance: Float64Array
  readonly wallDrive: Float64Array
  readonly density: Float64Array
  /** Of the gas that passes each link [kg/m³], [Pa s]. */
  readonly linkDensity: Float64Array
  readonly linkViscosity: Float64Array
  /** Scale of the two-way flow through each link [kg/s]; see `exchange.ts`. */
  readonly exchange: Float64Array
  /** Share of what passes each link that goes forward, for the gas it is filled with [1]. */
  readonly share: Float64Array
  /** Heat that the air of each gap link takes up [W]. */
  readonly gapHeat: Float64Array
  /** It is conductance [W/K] times wall [K] less what comes in; that goes on upwards by the share [1]. */
  readonly gapConductance: Float64Array
  readonly gapWall: Float64Array
  readonly gapShare: Float64Array
  /** Ring gaps that air rises in. */
  readonly gapLinks: readonly number[]
  readonly walls: WallModel
  /** What the last `transport` booked between gas and walls, into the gas [W]. */
  readonly ledger: { fromWalls: number }
  /** For `settle`: the round before. */
  readonly previousFlow: Float64Array
  readonly beforeLast: Float64Array
  readonly packed: Packing
  readonly x: Float64Array
  readonly gx: Float64Array
  readonly accelerator: Accelerator
  /** For `transport`: flow matrix, its eliminated copy, mass that comes into each node [kg/s] and heat with it [W]. */
  readonly matrix: Float64Array
  readonly eliminated: Float64Array
  readonly inflow: Float64Array
  readonly heatIn: Float64Array
  /** cp of each node's gas [J/(kg K)] and T − h/cp [K], about the temperature before. */
  readonly heat: Float64Array
  readonly reference: Float64Array
  /** Which segment of the bed a link is, −1 for the others. */
  readonly segmentOf: Int32Array
}

/** The gas of a typical front of this fuel; how it shifts with the air flow moves its viscosity by less than 1 %. */
const viscosityOf = ({ fuel, site, coefficients }: SteadyInput): Workspace['viscosity'] => {
  const airRatio = airPerFuel(TYPICAL_VELOCITY, fuel.moisture, coefficients)
  const closed = frontModel(fuel, fuel.moisture, site.temperature, coefficients).close(
    airRatio,
    site.temperature,
  )
  if (!closed.ok) return { unburnt: LIKE_AIR, burnt: LIKE_AIR }
  const { moles } = closed.front
  const { tar, ...gases } = moles
  const carbon = moles.CO + moles.CO2 + moles.CH4 + tar * TAR_ATOMS.C
  const water = moles.H2O + moles.H2 + 2 * moles.CH4 + (tar * TAR_ATOMS.H) / 2
  const air = closed.front.stoichiometricAir * closed.front.gas
  return {
    // Tar has no transport data and is 1 % of the gas by moles.
    unburnt: viscosityRatio(gases),
    burnt: viscosityRatio({
      CO2: carbon,
      H2O: water,
      N2: moles.N2 + air * AIR_MOLES.N2,
      Ar: moles.Ar + air * AIR_MOLES.Ar,
    }),
  }
}

const TYPICAL_VELOCITY = 0.03
const LIKE_AIR: ViscosityRatio = { constant: 1, slope: 0, curvature: 0, error: 0 }

/** Rounds whose residuals the acceleration mixes. */
const ACCELERATION_DEPTH = 5

export const layOut = (given: SteadyInput): Workspace => {
  const { site, coefficients } = given
  const plan = site.wind.speed > 0 ? splitForWind(given.plan, site.wind.from) : given.plan
  const input = { ...given, plan }
  const airDensity = site.pressure / (AIR.gasConstant * site.temperature)
  const n = plan.nodes.length
  const m = plan.links.length
  const network = emptyNetwork(n, m)
  const segmentOf = new Int32Array(m).fill(-1)
  for (const [s, segment] of plan.bed.segments.entries()) segmentOf[segment.link] = s
  for (const [k, link] of plan.links.entries()) {
    network.from[k] = link.from
    network.to[k] = link.to
  }
  const gapLinks = plan.links.flatMap((link, k) => (link.kind === 'gap' ? [k] : []))
  const packed = packingOf(n, m, plan.walls.length, gapLinks)
  return {
    ...input,
    network,
    solver: createSolver(n, m),
    airDensity,
    windHead: Float64Array.from(plan.links, (link) => windDrive(link, site.wind, airDensity, coefficients)),
    airEnthalpy: specificEnthalpy(AIR, site.temperature),
    viscosity: viscosityOf(given),
    temperature: new Float64Array(n),
    gasFraction: new Float64Array(n),
    enthalpy: new Float64Array(n),
    burnt: new Float64Array(n),
    wallConductance: new Float64Array(n),
    wallDrive: new Float64Array(n),
    density: new Float64Array(n),
    linkDensity: new Float64Array(m),
    linkViscosity: new Float64Array(m),
    exchange: new Float64Array(m),
    share: new Float64Array(m).fill(1),
    gapHeat: new Float64Array(m),
    gapConductance: new Float64Array(m),
    gapWall: new Float64Array(m),
    gapShare: new Float64Array(m),
    gapLinks,
    walls: layOutWalls(plan, site.temperature),
    previousFlow: new Float64Array(m),
    beforeLast: new Float64Array(m),
    packed,
    x: new Float64Array(packed.size),
    gx: new Float64Array(packed.size),
    accelerator: createAccelerator(packed.size, ACCELERATION_DEPTH),
    ledger: { fromWalls: 0 },
    matrix: new Float64Array(n * n),
    eliminated: new Float64Array(n * n),
    inflow: new Float64Array(n),
    heatIn: new Float64Array(n),
    heat: new Float64Array(n),
    reference: new Float64Array(n),
    segmentOf,
  }
}

/** Wind pressure at a link's open end, towards its other end [Pa]. */
const windDrive = (
  { exposure, from, to }: DraughtLink,
  wind: Wind,
  airDensity: number,
  coefficients: Coefficients,
): number => {
  if (exposure === null || wind.speed === 0 || exposure.kind === 'under') return 0
  if (from !== OUTSIDE && to !== OUTSIDE) return 0
  const pressure =
    exposure.kind === 'top'
      ? windPressureAtTop(wind, airDensity, coefficients.windOpenTop)
      : windPressureAtHole(wind, exposure.bearings[0] ?? 0, airDensity, coefficients.windSuctionShare)
  return from === OUTSIDE ? pressure : -pressure
}

/** Where the front stands and what it makes, for one round of the iteration. */
export interface FrontPlace {
  /** Of the front above the bed's base [m]. */
  readonly height: number
  /** The bed link that turns air to gas. */
  readonly link: number
  readonly segment: number
  /** Of what comes to it: share that is air, not gas burnt before [1], and its temperature [K]. */
  airShare: number
  airTemperature: number
  /** Share of the bed's area that glows: below 1 while the fire spreads; the other air passes by [1]. */
  readonly active: number
  /** Char still there over the char the front left [1]. */
  readonly charLeft: number
}

/** Mass that leaves the front's stretch of the bed for each kilogram that enters it [kg/kg]. */
export const gainOf = ({ airShare, active }: FrontPlace, front: Front): number =>
  1 + (airShare * active * (front.gas - front.airPerFuel)) / front.airPerFuel

/** `position` is 0 at the top of the fuel, 1 at its floor. */
export const placeFront = (
  { plan: { bed }, site }: Workspace,
  position: number,
  active = 1,
  charLeft = 1,
): FrontPlace => {
  const height = (1 - position) * bed.depth
  const found = bed.segments.findIndex((s) => height >= s.from && height <= s.to)
  const segment = found < 0 ? bed.segments.length - 1 : found
  return {
    height,
    segment,
    link: bed.segments[segment]?.link ?? 0,
    airShare: 1,
    airTemperature: site.temperature,
    active,
    charLeft,
  }
}
