import type { Accelerator } from '#basis/numerics/anderson.ts'
import type { SparseElimination } from '#basis/numerics/sparseElimination.ts'
import type { Network } from '#science/draft/network.ts'
import type { NetworkSolver } from '#science/draft/solve.ts'
import type { ViscosityRatio } from '#science/gas/viscosityRatio.ts'
import type { BedTable } from './bedTable.ts'
import type { FrontStream } from './frontStream.ts'
import type { HeatSystem } from './heatSystem.ts'
import type { SteadyInput } from './input.ts'
import type { LinkTable } from './linkTable.ts'
import type { WallModel } from './wallModel.ts'

/** The state that one round of the iteration hands to the next, as one vector of like-scaled numbers. */
export interface Packing {
  readonly size: number
  pack(w: Workspace, into: Float64Array): void
  unpack(w: Workspace, from: Float64Array): void
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
