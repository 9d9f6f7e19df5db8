import { type Accelerator, createAccelerator } from '#basis/numerics/anderson.ts'
import { planElimination, type SparseElimination } from '#basis/numerics/sparseElimination.ts'
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
import { AIR, AIR_MOLES, specificEnthalpy, specificHeat } from '#science/gas/blend.ts'
import { type ViscosityRatio, viscosityRatio } from '#science/gas/viscosityRatio.ts'
import type { Site } from '#science/site.ts'
import { feltWind, type Wind, windPressureAtHole, windPressureAtTop } from '#science/weather/wind.ts'
import { type BedTable, emptyBed } from './bedTable.ts'
import type { FrontStream } from './frontStream.ts'
import { type HeatSystem, layOutHeat } from './heatSystem.ts'
import { type LinkTable, linkTable, meetingPlaces } from './linkTable.ts'
import { type Packing, packingOf } from './packing.ts'
import { filmScale } from './wallHeat.ts'
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
 * Link arrays are indexed as `plan.links`, node arrays as `plan.nodes` with the open air as one node more, the last.
 */
export interface Workspace extends SteadyInput {
  readonly network: Network
  readonly solver: NetworkSolver
  readonly table: LinkTable
  readonly bed: BedTable
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
  /** Both without the open air, for who only reads the answer. */
  readonly nodeTemperature: Float64Array
  readonly nodeGasFraction: Float64Array
  /** [J/kg], [J/(kg K)] */
  readonly enthalpy: Float64Array
  readonly specificHeat: Float64Array
  /** Heat still bound in each node's gas [J/kg], and heat set free there [W]. */
  readonly bound: Float64Array
  readonly burnt: Float64Array
  readonly density: Float64Array
  /** Of the gas that passes each link [kg/m³], [Pa s]. */
  readonly linkDensity: Float64Array
  readonly linkViscosity: Float64Array
  /** Scale of the two-way flow through each link [kg/s], and what goes each way [kg/s]; see `exchange.ts`. */
  readonly exchange: Float64Array
  readonly forward: Float64Array
  readonly back: Float64Array
  /** Share of what passes each link that goes forward, for the gas it is filled with [1]. */
  readonly share: Float64Array
  readonly fromFront: FrontStream
  /** Mass that comes into each node [kg/s], and the system that carries composition with it. */
  readonly inflow: Float64Array
  readonly flowElimination: SparseElimination
  readonly flowMatrix: Float64Array
  readonly flowMeets: Int32Array
  readonly flowDiagonal: Int32Array
  readonly walls: WallModel
  readonly heat: HeatSystem
  /** See `filmScale` [1/m]. */
  readonly filmPerConductivity: Float64Array
  /** Heat from each of the walls' contacts into the gas [W], and its slopes by the wall and, falling, by the gas [W/K]. */
  readonly contact: {
    readonly heat: Float64Array
    readonly byWall: Float64Array
    readonly byGas: Float64Array
  }
  /** Slope of what each of the walls' sides loses to the open air [W/K]. */
  readonly openSlope: Float64Array
  /** Of each of the walls' gaps: film on both sides [W/K], what of it the air can take [W/K], share that goes upwards [1]. */
  readonly gapTaken: {
    readonly film: Float64Array
    readonly conductance: Float64Array
    readonly share: Float64Array
  }
  /** Heat that the air of each gap link takes up [W]. */
  readonly gapHeat: Float64Array
  /** What the last round booked between gas and walls, into the gas [W]; and what every node takes from the open air [kg/s]. */
  readonly ledger: { fromWalls: number; trace: number }
  /** Pressure that drives each link, buoyancy included [Pa]. */
  readonly drive: Float64Array
  /** For `settle`: the round before. */
  readonly previousFlow: Float64Array
  readonly beforeLast: Float64Array
  readonly packed: Packing
  readonly x: Float64Array
  readonly gx: Float64Array
  readonly accelerator: Accelerator
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
const LIKE_AIR: ViscosityRatio = { constant: 1, slope: 0, curvature: 0 }

/** Rounds whose residuals the acceleration mixes. */
const ACCELERATION_DEPTH = 6

/** Lays out all arrays of a stove once; every solve after that writes into them. */
export const layOut = (given: SteadyInput): Workspace => {
  const { site, coefficients } = given
  const plan = site.wind.speed > 0 ? splitForWind(given.plan, site.wind.from) : given.plan
  const input = { ...given, plan }
  const airDensity = site.pressure / (AIR.gasConstant * site.temperature)
  const airEnthalpy = specificEnthalpy(AIR, site.temperature)
  const n = plan.nodes.length
  const m = plan.links.length
  const network = emptyNetwork(n, m)
  const ends = plan.links.map(({ from, to }) => [from, to] as const)
  for (const [k, [from, to]] of ends.entries()) {
    network.from[k] = from
    network.to[k] = to
  }
  const walls = layOutWalls(plan, site.temperature, coefficients)
  const flowElimination = planElimination(n, ends)
  const packed = packingOf(n, m, walls)
  /** One number a node, the open air's known. */
  const ofNodes = (ofAir: number): Float64Array => {
    const values = new Float64Array(n + 1)
    values[n] = ofAir
    return values
  }
  const temperature = ofNodes(site.temperature)
  const gasFraction = ofNodes(0)
  const wind = feltWind(site.wind, coefficients.windScreen)
  return {
    ...input,
    network,
    solver: createSolver(network),
    table: linkTable(plan, coefficients),
    bed: emptyBed(plan.bed.segments.length),
    airDensity,
    windHead: Float64Array.from(plan.links, (link) => windDrive(link, wind, airDensity, coefficients)),
    airEnthalpy,
    viscosity: viscosityOf(given),
    temperature,
    gasFraction,
    nodeTemperature: temperature.subarray(0, n),
    nodeGasFraction: gasFraction.subarray(0, n),
    enthalpy: ofNodes(airEnthalpy),
    specificHeat: ofNodes(specificHeat(AIR, site.temperature)),
    bound: ofNodes(0),
    burnt: ofNodes(0),
    density: ofNodes(airDensity),
    linkDensity: new Float64Array(m),
    linkViscosity: new Float64Array(m),
    exchange: new Float64Array(m),
    forward: new Float64Array(m),
    back: new Float64Array(m),
    share: new Float64Array(m).fill(1),
    fromFront: { made: 0, passedAir: 0, through: 0, heat: 0 },
    inflow: ofNodes(0),
    flowElimination,
    flowMatrix: new Float64Array(flowElimination.places),
    flowMeets: meetingPlaces(flowElimination, ends),
    flowDiagonal: Int32Array.from(plan.nodes, (_, i) => flowElimination.place(i, i)),
    walls,
    heat: layOutHeat(plan, walls),
    filmPerConductivity: filmScale(input),
    contact: {
      heat: new Float64Array(walls.contacts.length),
      byWall: new Float64Array(walls.contacts.length),
      byGas: new Float64Array(walls.contacts.length),
    },
    openSlope: new Float64Array(walls.open.length),
    gapTaken: {
      film: new Float64Array(walls.gaps.length),
      conductance: new Float64Array(walls.gaps.length),
      share: new Float64Array(walls.gaps.length),
    },
    gapHeat: new Float64Array(m),
    ledger: { fromWalls: 0, trace: 0 },
    drive: new Float64Array(m),
    previousFlow: new Float64Array(m),
    beforeLast: new Float64Array(m),
    packed,
    x: new Float64Array(packed.size),
    gx: new Float64Array(packed.size),
    accelerator: createAccelerator(packed.size, ACCELERATION_DEPTH),
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
