import { onRule } from '#basis/text/bothUnits.ts'
import { fromMillimetres } from '#basis/units.ts'
import type { FuelPieces } from '#stove/model.ts'
import type { UltimateAnalysis } from './composition.ts'

/** One row of the fuel table: numbers as found, with the source of each. */
export interface FuelEntry {
  readonly key: string
  readonly label: string
  /** Dry, by mass. */
  readonly analysis: UltimateAnalysis
  /** Higher heating value, dry; null where it is worked out from the analysis [J/kg]. */
  readonly measuredHeatingValue: number | null
  /** Wet basis [1]. */
  readonly moisture: number
  readonly pieces: FuelPieces
  /** As fired [kg/m³]. */
  readonly pieceDensity: number
  /** As fired, tipped into a vessel this wide inside [kg/m³], [m]. */
  readonly bulkDensity: number
  readonly vesselDiameter: number
  readonly sources: Readonly<
    Record<'analysis' | 'heatingValue' | 'moisture' | 'pieces' | 'pieceDensity' | 'bulkDensity', string>
  >
}

const rod = (diameter: number, length: number): FuelPieces => ({
  shape: 'rod',
  diameter: fromMillimetres(diameter),
  length: fromMillimetres(length),
})

const block = (length: number, width: number, thickness: number): FuelPieces => ({
  shape: 'block',
  length: fromMillimetres(length),
  width: fromMillimetres(width),
  thickness: fromMillimetres(thickness),
})

const MEMORY = 'from memory'
const MEASURED = 'Raveendran, Ganesh & Khilar, Fuel 74 (1995) 1812 [bib:raveendran1995]'
const CORRELATED = 'from the analysis, Channiwala & Parikh, Fuel 81 (2002) 1051 [bib:channiwala2002]'

/** Typical softwood: from memory. */
const softwood: UltimateAnalysis = { C: 0.505, H: 0.061, O: 0.428, N: 0.001, S: 0, ash: 0.005 }

/** As measured [bib:raveendran1995]; sulphur is not given. */
const coconutShell: UltimateAnalysis = { C: 0.502, H: 0.057, O: 0.434, N: 0, S: 0, ash: 0.007 }
const subabul: UltimateAnalysis = { C: 0.482, H: 0.059, O: 0.451, N: 0, S: 0, ash: 0.009 }
const groundnutShell: UltimateAnalysis = { C: 0.483, H: 0.057, O: 0.394, N: 0.008, S: 0, ash: 0.059 }
const wheatStraw: UltimateAnalysis = { C: 0.475, H: 0.054, O: 0.358, N: 0.001, S: 0, ash: 0.112 }
const bagasse: UltimateAnalysis = { C: 0.438, H: 0.058, O: 0.471, N: 0.004, S: 0, ash: 0.029 }

/** Inside diameter of the small vessel in which pellets are weighed by ISO 17828: from memory [m]. */
const STANDARD_VESSEL = 0.167
/** A can as the numbers from memory were meant for [m]. */
const USUAL_CAN = 0.1
/** A heap, far from any wall, where densities are told by the cubic metre [m]. */
const HEAP = 1

/** Solid share of tipped chips [1]: 0.4 [bib:woodasfuel]; 0.33 loose to 0.42 compacted [bib:briggs1994]. */
const CHIP_SOLID = 0.4

/** Air-dry softwood: spruce and pine have 400–420 kg of dry matter a cubic metre [bib:woodasfuel], 14 % moist [kg/m³]. */
const SOFTWOOD_DENSITY = 475
/** Air-dry subabul, the middle of 500–650 [bib:subabulwood] [kg/m³]. */
const SUBABUL_DENSITY = 575

const woodPellets = (key: string, diameter: number, length: number): FuelEntry => ({
  key,
  label: `wood pellets, ${onRule(fromMillimetres(diameter))}`,
  analysis: softwood,
  measuredHeatingValue: null,
  moisture: 0.08,
  pieces: rod(diameter, length),
  pieceDensity: 1200,
  bulkDensity: 650,
  vesselDiameter: STANDARD_VESSEL,
  sources: {
    analysis: MEMORY,
    heatingValue: CORRELATED,
    moisture: 'at most 10 %, ISO 17225-2 class A1 (secondary) [bib:iso17225]; 8 % from memory',
    pieces:
      'diameter and 3.15–40 mm of length, ISO 17225-2 (secondary) [bib:iso17225]; the mean length from memory',
    pieceDensity: 'the middle of 1100–1300 (secondary) [bib:pelletproperties2007]',
    bulkDensity:
      'at least 600, ISO 17225-2 (secondary) [bib:iso17225]; 600–750 in trade [bib:pelletproperties2007]',
  },
})

/** Pellets of farm residues: less dense and less even than those of wood. */
const residuePellets = (
  key: string,
  label: string,
  analysis: UltimateAnalysis,
  measuredHeatingValue: number,
): FuelEntry => ({
  key,
  label,
  analysis,
  measuredHeatingValue,
  moisture: 0.09,
  pieces: rod(8, 18),
  pieceDensity: 1150,
  bulkDensity: 600,
  vesselDiameter: STANDARD_VESSEL,
  sources: {
    analysis: MEASURED,
    heatingValue: `measured, ${MEASURED}`,
    moisture: MEMORY,
    pieces: MEMORY,
    pieceDensity: MEMORY,
    bulkDensity: MEMORY,
  },
})

export const fuelEntries: readonly FuelEntry[] = [
  woodPellets('pellets-6mm', 6, 15),
  woodPellets('pellets-8mm', 8, 20),
  {
    key: 'wood-chips',
    label: 'air-dry softwood chips, about 20 × 12 × 6 mm (13/16 × 1/2 × 1/4 in)',
    analysis: softwood,
    measuredHeatingValue: null,
    moisture: 0.14,
    pieces: block(20, 12, 6),
    pieceDensity: SOFTWOOD_DENSITY,
    bulkDensity: CHIP_SOLID * SOFTWOOD_DENSITY,
    vesselDiameter: HEAP,
    sources: {
      analysis: MEMORY,
      heatingValue: CORRELATED,
      moisture: 'air-dry, from memory',
      pieces: MEMORY,
      pieceDensity: 'spruce and pine, 400–420 kg of dry matter a cubic metre (secondary) [bib:woodasfuel]',
      bulkDensity:
        'solid share 0.4 (secondary) [bib:woodasfuel]; 0.33 loose, 0.42 compacted [bib:briggs1994]',
    },
  },
  {
    key: 'subabul-chips',
    label: 'air-dry subabul chips, about 20 × 12 × 6 mm (13/16 × 1/2 × 1/4 in)',
    analysis: subabul,
    measuredHeatingValue: 19.78e6,
    moisture: 0.14,
    pieces: block(20, 12, 6),
    pieceDensity: SUBABUL_DENSITY,
    bulkDensity: CHIP_SOLID * SUBABUL_DENSITY,
    vesselDiameter: HEAP,
    sources: {
      analysis: MEASURED,
      heatingValue: `measured, ${MEASURED}`,
      moisture: 'air-dry, from memory',
      pieces: MEMORY,
      pieceDensity: '500–650 air-dry (secondary) [bib:subabulwood]',
      bulkDensity:
        'solid share of chips 0.4 (secondary) [bib:woodasfuel]; 0.33 loose, 0.42 compacted [bib:briggs1994]',
    },
  },
  {
    key: 'twigs',
    label: 'twigs, about 10 mm (3/8 in) thick and 40 mm (1 9/16 in) long',
    analysis: subabul,
    measuredHeatingValue: 19.78e6,
    moisture: 0.14,
    pieces: rod(10, 40),
    pieceDensity: SUBABUL_DENSITY,
    bulkDensity: 230,
    vesselDiameter: USUAL_CAN,
    sources: {
      analysis: `subabul wood, ${MEASURED}`,
      heatingValue: `subabul wood, measured, ${MEASURED}`,
      moisture: 'air-dry, from memory',
      pieces: MEMORY,
      pieceDensity: 'subabul, 500–650 air-dry (secondary) [bib:subabulwood]',
      bulkDensity: MEMORY,
    },
  },
  {
    key: 'coconut-shell',
    label: 'broken coconut shell, pieces of about 15 mm (19/32 in), 4 mm (5/32 in) thick',
    analysis: coconutShell,
    measuredHeatingValue: 20.5e6,
    moisture: 0.1,
    pieces: block(15, 15, 4),
    // 1.31 soaked with 26 % of water is 1.04 dry, at 10 % moisture 1.155.
    pieceDensity: 1155,
    bulkDensity: 550,
    vesselDiameter: USUAL_CAN,
    sources: {
      analysis: MEASURED,
      heatingValue: `measured, ${MEASURED}`,
      moisture: '11–13 % as delivered (secondary) [bib:decosta2017]; a little drier from memory',
      pieces: MEMORY,
      pieceDensity: 'worked out from specific gravity and water absorption (secondary) [bib:decosta2017]',
      bulkDensity: MEMORY,
    },
  },
  {
    key: 'groundnut-shell',
    label: 'groundnut shells, halves',
    analysis: groundnutShell,
    measuredHeatingValue: 18.65e6,
    moisture: 0.1,
    pieces: block(25, 14, 2),
    pieceDensity: 260,
    bulkDensity: 90,
    vesselDiameter: USUAL_CAN,
    sources: {
      analysis: MEASURED,
      heatingValue: `measured, ${MEASURED}`,
      moisture: MEMORY,
      pieces: MEMORY,
      pieceDensity: MEMORY,
      bulkDensity: MEMORY,
    },
  },
  residuePellets('bagasse-pellets', 'bagasse pellets, 8 mm (5/16 in)', bagasse, 16.29e6),
  residuePellets('straw-pellets', 'wheat straw pellets, 8 mm (5/16 in)', wheatStraw, 17.99e6),
]
