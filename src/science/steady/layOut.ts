import { createAccelerator } from '#basis/numerics/anderson.ts'
import { planElimination } from '#basis/numerics/sparseElimination.ts'
import type { Coefficients } from '#science/coefficients.ts'
import { emptyNetwork, OUTSIDE } from '#science/draft/network.ts'
import type { DraughtLink } from '#science/draft/plan.ts'
import { createSolver } from '#science/draft/solve.ts'
import { splitForWind } from '#science/draft/wind.ts'
import { frontModel } from '#science/fire/front.ts'
import { airPerFuel } from '#science/fire/source.ts'
import { TAR_ATOMS } from '#science/fire/tar.ts'
import { AIR, AIR_MOLES, specificEnthalpy, specificHeat } from '#science/gas/blend.ts'
import { type ViscosityRatio, viscosityRatio } from '#science/gas/viscosityRatio.ts'
import { feltWind, type Wind, windPressureAtHole, windPressureAtTop } from '#science/weather/wind.ts'
import { emptyBed } from './bedTable.ts'
import { layOutHeat } from './heatSystem.ts'
import type { SteadyInput } from './input.ts'
import { linkTable, meetingPlaces } from './linkTable.ts'
import { packingOf } from './packing.ts'
import { filmScale } from './wallHeat.ts'
import { layOutWalls } from './wallModel.ts'
import type { Workspace } from './workspace.ts'

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

/** Primary air over the bed's area at a usual front; only the viscosity of the gas hangs on it [m/s]. */
const TYPICAL_VELOCITY = 0.03
const LIKE_AIR: ViscosityRatio = { constant: 1, slope: 0, curvature: 0 }

/** Rounds whose residuals the acceleration mixes. */
const ACCELERATION_DEPTH = 6

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
