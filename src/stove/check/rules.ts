/**
 * Every threshold of the checks, each with what it means and where it comes from. Lengths in metres,
 * angles in degrees, ratios plain. `read` values were read in their source; the rest says
 * `derived`, `from memory` or `common practice, no source`.
 */
export interface Rule {
  readonly value: number
  readonly unit: 'm' | 'deg' | '1'
  readonly meaning: string
  readonly provenance: string
}

/** A range outside which a check speaks. Either end may be open. */
export interface RangeRule {
  readonly low: number
  readonly high: number
  readonly unit: '1'
  readonly meaning: string
  readonly provenance: string
}

const rule = (value: number, unit: Rule['unit'], meaning: string, provenance: string): Rule => ({
  value,
  unit,
  meaning,
  provenance,
})

const range = (low: number, high: number, meaning: string, provenance: string): RangeRule => ({
  low,
  high,
  unit: '1',
  meaning,
  provenance,
})

const MEMORY = 'from memory'
const PRACTICE = 'common practice, no source'
/** Design tips of a die maker and sheet-metal guideline pages [bib:crenshaw]. */
const SHEET_METAL = 'read: sheet-metal guidelines [bib:crenshaw]'

/** Tin that has to stay. */
export const TIN = {
  holeToHole: rule(2, '1', 'least tin between two holes, in sheet thicknesses', SHEET_METAL),
  holeToEdge: rule(2, '1', 'least tin between a hole and a cut edge, in sheet thicknesses', SHEET_METAL),
  holeToFormed: rule(
    3,
    '1',
    'least tin between a hole and a seam, bead or bend, in sheet thicknesses',
    SHEET_METAL,
  ),
  smallestHole: rule(0.001, 'm', 'smallest hole, where the sheet is thinner than this', SHEET_METAL),
  fullWeb: rule(
    1,
    '1',
    'tin beside a hole that a hand drill leaves in peace, in hole widths',
    `workshop judgement; ${PRACTICE}`,
  ),
  poorWeb: rule(
    0.5,
    '1',
    'tin beside a hole that a hand drill is likely to tear, in hole widths',
    `workshop judgement; ${PRACTICE}`,
  ),
  snippedWeb: rule(0.003, 'm', 'tin between slits or vanes that snips leave whole', MEMORY),
  weldHalfWidth: rule(0.0005, 'm', 'half the lap of a welded side seam', MEMORY),
  edgeSlack: rule(
    0.0002,
    'm',
    'an opening this near the edge or nearer is meant to break through it',
    MEMORY,
  ),
} as const

/** Drills as hand tools have them. */
export const DRILL = {
  chuckDiameter: rule(0.04, 'm', 'outside of a keyless drill chuck', MEMORY),
  chuckCapacity: rule(0.013, 'm', 'widest bit of straight shank a hand drill takes', MEMORY),
  gripped: rule(0.025, 'm', 'length of a bit inside the chuck', MEMORY),
  drillHead: rule(0.045, 'm', 'length of the chuck before the wider body of the drill begins', MEMORY),
  stepLength: rule(0.005, 'm', 'length of one step of a step drill', MEMORY),
  stepRise: rule(0.002, 'm', 'growth of diameter from step to step', MEMORY),
  stepStart: rule(0.004, 'm', 'diameter of the first step', MEMORY),
  stepDrillLength: rule(0.08, 'm', 'overall length of a step drill', MEMORY),
  sameSize: rule(
    0.00005,
    'm',
    'two sizes this near are the same bit: the reach of h8',
    'read: ISO 286 h8 over 10 to 50 mm, at most 0.039 mm',
  ),
} as const

/** Overall length of jobber twist drills by diameter, DIN 338 sizes, from memory [m]. */
export const JOBBER_LENGTHS: readonly (readonly [diameter: number, length: number])[] = [
  [0.001, 0.034],
  [0.002, 0.049],
  [0.003, 0.061],
  [0.004, 0.075],
  [0.005, 0.086],
  [0.006, 0.093],
  [0.008, 0.117],
  [0.01, 0.133],
  [0.013, 0.151],
]

/** Heights of fuel and air. */
export const HEIGHTS = {
  fuelBelowSecondary: rule(0.01, 'm', 'free wall between the fuel line and the secondary holes', PRACTICE),
} as const

/** Parts on and in each other. */
export const FIT = {
  landing: rule(0.001, 'm', 'ledge a part needs all round to sit safely', MEMORY),
  touching: rule(0.0003, 'm', 'sideways overlap that still counts as touching', MEMORY),
  lifted: rule(0.001, 'm', 'overlap along the axis by which one part just lifts the other', MEMORY),
  slack: rule(0.001, 'm', 'gap all round that a squeezed can still grips', MEMORY),
  potOverhang: rule(0.005, 'm', 'ledge a pot needs all round', MEMORY),
} as const

/** The damper band. */
export const DAMPER = {
  fullyOpen: rule(0.98, '1', 'share of the intake that a fully open damper must leave open', PRACTICE),
  lap: rule(0.001, 'm', 'tin that must cover a closed hole all round', MEMORY),
  /** A half-millimetre slip in marking out hides more than this of a small hole. */
  closed: rule(0.05, '1', 'share of the intake that a closed damper may leave open', PRACTICE),
} as const

/** Standing up. */
export const STAND = {
  tipAngle: rule(
    12,
    'deg',
    'lean at which the bottom of the pot passes over the edge of the foot',
    'from memory: small appliances are tried on a slope of 10°, and the pot stands higher than its bottom',
  ),
} as const

/**
 * Area ratios. The flow of a natural draught is set by areas: in two openings in a row of areas a and
 * A, the share of the draught spent in the first is 1/(1 + (a/A)²), derived from Δp ∝ (ṁ/A)².
 */
export const AREAS = {
  far: rule(
    1.5,
    '1',
    'how many times outside its range a ratio has to be to disappoint for certain',
    PRACTICE,
  ),
  secondaryToBed: range(
    0.11,
    0.15,
    'secondary area over bed area',
    'derived: secondary air a natural draught of 1 to 3 Pa can push',
  ),
  primaryToSecondary: range(
    2,
    6,
    'primary over secondary hole area; makers often start from about four',
    PRACTICE,
  ),
  intakeToInner: range(
    1,
    Number.POSITIVE_INFINITY,
    'intake over primary plus secondary',
    'derived: equal areas spend half the draught in the intake',
  ),
  starvedIntake: rule(
    0.5,
    '1',
    'intake over primary plus secondary that spends 4/5 of the draught',
    'derived: 1/(1 + 0.5²)',
  ),
  passageToBed: range(0.15, 0.7, 'concentrator opening over bed area', MEMORY),
  outletToPassage: range(1, Number.POSITIVE_INFINITY, 'outlet over concentrator opening', PRACTICE),
  gapToSecondary: range(
    2,
    Number.POSITIVE_INFINITY,
    'gap between the cans over secondary area',
    'derived: twice the area spends 1/5 of the draught',
  ),
  leakToSecondary: range(
    0,
    0.25,
    'ring left open over the secondary row, over secondary area',
    'derived: openings side by side share the air by area, so this takes a fifth of it',
  ),
  underFloor: range(
    2,
    Number.POSITIVE_INFINITY,
    'gap under a perforated floor over its holes',
    'derived: twice the area spends 1/5 of the draught',
  ),
} as const
