import { higherHeatingValue, type UltimateAnalysis } from './composition.ts'

/** A fuel as it lies in the can. SI units, analysis on the dry basis. */
export interface Fuel {
  readonly key: string
  readonly label: string
  readonly analysis: UltimateAnalysis
  /** Dry, measured where there is a measurement [J/kg]. */
  readonly higherHeatingValue: number
  /** Wet basis, as usually bought or found [1]. */
  readonly moisture: number
  /** Sauter mean diameter 6V/S of a piece [m]. */
  readonly pieceDiameter: number
  /** As tipped into a can, as fired [kg/m³]. */
  readonly bulkDensity: number
  /** Share of the bed that is air [1]. */
  readonly voidFraction: number
  readonly source: string
}

/** Sauter diameter of a cylinder, 3DL/(D + 2L): six times volume over surface [m]. */
export const cylinderSauterDiameter = (diameter: number, length: number): number =>
  (3 * diameter * length) / (diameter + 2 * length)

/** Typical softwood, dry mass fractions, from memory; its heating value from Channiwala & Parikh. */
const softwood: UltimateAnalysis = { C: 0.505, H: 0.061, O: 0.428, N: 0.001, S: 0, ash: 0.005 }

/** Raveendran, Ganesh & Khilar, Fuel 74 (1995) 1812 [bib:raveendran1995]: analysis and measured heating value. */
const coconutShell: UltimateAnalysis = { C: 0.502, H: 0.057, O: 0.434, N: 0, S: 0, ash: 0.007 }
const subabul: UltimateAnalysis = { C: 0.482, H: 0.059, O: 0.451, N: 0, S: 0, ash: 0.009 }
const groundnutShell: UltimateAnalysis = { C: 0.483, H: 0.057, O: 0.394, N: 0.008, S: 0, ash: 0.059 }

const pelletSource =
  'ISO 17225-2 class A1 (secondary): moisture ≤ 10 %, bulk 600–750 kg/m³; piece density 1200 kg/m³ from memory'

const pellets = (key: string, label: string, diameter: number, length: number): Fuel => ({
  key,
  label,
  analysis: softwood,
  higherHeatingValue: higherHeatingValue(softwood),
  moisture: 0.08,
  pieceDiameter: cylinderSauterDiameter(diameter, length),
  bulkDensity: 650,
  voidFraction: 1 - 650 / 1200,
  source: pelletSource,
})

const rows: readonly Fuel[] = [
  pellets('pellets-6mm', 'wood pellets, 6 mm', 0.006, 0.015),
  pellets('pellets-8mm', 'wood pellets, 8 mm', 0.008, 0.02),
  {
    key: 'wood-chips',
    label: 'air-dry wood chips, about 20 × 12 × 6 mm',
    analysis: softwood,
    higherHeatingValue: higherHeatingValue(softwood),
    moisture: 0.14,
    // 6V/S of a 20 × 12 × 6 mm block.
    pieceDiameter: (6 * 20 * 12 * 6e-9) / (2 * (20 * 12 + 20 * 6 + 12 * 6) * 1e-6),
    bulkDensity: 210,
    voidFraction: 0.55,
    source: 'bulk density and void of air-dry chips in a can: from memory',
  },
  {
    key: 'twigs',
    label: 'twigs, about 10 mm thick and 40 mm long, tipped in',
    analysis: subabul,
    higherHeatingValue: 19.78e6,
    moisture: 0.14,
    pieceDiameter: cylinderSauterDiameter(0.01, 0.04),
    bulkDensity: 230,
    voidFraction: 0.6,
    source: 'analysis and heating value of subabul wood, Raveendran 1995; bulk density and void from memory',
  },
  {
    key: 'coconut-shell',
    label: 'broken coconut shell, about 15 mm pieces 4 mm thick',
    analysis: coconutShell,
    higherHeatingValue: 20.5e6,
    moisture: 0.1,
    pieceDiameter: (6 * 15 * 15 * 4e-9) / (2 * (15 * 15 + 2 * 15 * 4) * 1e-6),
    bulkDensity: 550,
    voidFraction: 0.55,
    source: 'analysis and heating value: Raveendran 1995; bulk density and void from memory',
  },
  {
    key: 'groundnut-shell',
    label: 'groundnut shells, halves',
    analysis: groundnutShell,
    higherHeatingValue: 18.65e6,
    moisture: 0.1,
    pieceDiameter: 0.005,
    bulkDensity: 90,
    voidFraction: 0.65,
    source: 'analysis and heating value: Raveendran 1995; size, bulk density and void from memory',
  },
]

export const fuelTable: ReadonlyMap<string, Fuel> = new Map(rows.map((fuel) => [fuel.key, fuel]))
