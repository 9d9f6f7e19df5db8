import type { FuelPieces } from '#stove/model.ts'
import { higherHeatingValue, type UltimateAnalysis } from './composition.ts'
import { sauterDiameter } from './pieces.ts'
import { type FuelEntry, fuelEntries } from './tableEntries.ts'

export { cylinderSauterDiameter } from './pieces.ts'

/** A fuel as it lies in the can. SI units, analysis on the dry basis. */
export interface Fuel {
  readonly key: string
  readonly label: string
  readonly analysis: UltimateAnalysis
  /** Dry, measured where there is a measurement [J/kg]. */
  readonly higherHeatingValue: number
  /** Wet basis, as usually bought or found; the densities are at this moisture [1]. */
  readonly moisture: number
  readonly pieces: FuelPieces
  /** Sauter mean diameter 6V/S of a piece [m]. */
  readonly pieceDiameter: number
  /** Weight of a piece over its volume, pores and all, as fired [kg/m³]. */
  readonly pieceDensity: number
  /** As tipped into a vessel of `vesselDiameter`, as fired [kg/m³]. */
  readonly bulkDensity: number
  /** Inside of the vessel the bulk density holds for; in a narrower one the fuel lies looser [m]. */
  readonly vesselDiameter: number
  /** Share of the bed that is air: 1 − bulk density over piece density [1]. */
  readonly voidFraction: number
  /** Where each number comes from. */
  readonly sources: FuelEntry['sources']
}

const fuelOfEntry = ({ key, ...entry }: FuelEntry): Fuel => ({
  key,
  label: entry.label,
  analysis: entry.analysis,
  higherHeatingValue: entry.measuredHeatingValue ?? higherHeatingValue(entry.analysis),
  moisture: entry.moisture,
  pieces: entry.pieces,
  pieceDiameter: sauterDiameter(entry.pieces),
  pieceDensity: entry.pieceDensity,
  bulkDensity: entry.bulkDensity,
  vesselDiameter: entry.vesselDiameter,
  voidFraction: 1 - entry.bulkDensity / entry.pieceDensity,
  sources: entry.sources,
})

export const fuelTable: ReadonlyMap<string, Fuel> = new Map(
  fuelEntries.map((entry) => [entry.key, fuelOfEntry(entry)]),
)
