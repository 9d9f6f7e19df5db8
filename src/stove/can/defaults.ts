import { fromMillimetres, type Metres } from '#basis/units.ts'

/** A dimension taken where the maker did not measure, with where it comes from. */
export interface CanDefault {
  readonly value: Metres
  readonly meaning: string
  readonly provenance: string
}

/** Everything assumed about a can nobody measured, in one place. */
export const CAN_DEFAULTS = {
  diameterTolerance: {
    value: fromMillimetres(0.5),
    meaning: 'how far the diameter over the seam may be from the size code’s',
    provenance: 'from memory',
  },
  heightTolerance: {
    value: fromMillimetres(0.8),
    meaning: 'how far the height may be from the size code’s',
    provenance: 'from memory',
  },
  seamOverhang: {
    value: fromMillimetres(1.35),
    meaning: 'how far the double seam stands out beyond the body, on one side',
    // Two computed supports. With it the body’s inside is 3.0 to 3.2 mm below the code, and the median of the
    // trade’s nominal metric insides (603 is 153 mm and so on, from memory) is 3.2 mm below; a free fit of
    // diameter and height to the published capacities gives 2.5 mm, but trades it against the height.
    provenance: 'middle of 1.1 to 1.6 mm, from memory',
  },
  seamOverhangSpread: {
    value: fromMillimetres(0.25),
    meaning: 'how far the overhang may be from that, on one side',
    provenance: 'half of 1.1 to 1.6 mm, from memory',
  },
  seamHeight: {
    value: fromMillimetres(3.0),
    meaning: 'height of one double seam along the wall',
    provenance: 'middle of 2.8 to 3.2 mm, from memory',
  },
  countersink: {
    value: fromMillimetres(3.2),
    meaning: 'how deep a whole seamed end lies inside its edge',
    provenance: 'middle of 3.0 to 3.4 mm, from memory',
  },
  drawnCorner: {
    value: fromMillimetres(2.5),
    meaning: 'height of the rounded corner between the wall and bottom of a drawn can',
    provenance: 'from memory',
  },
  sideSeamWidth: {
    value: fromMillimetres(5),
    meaning: 'width of the welded overlap with the band beside it that weld and lacquer stiffen',
    provenance: 'from memory',
  },
} as const satisfies Readonly<Record<string, CanDefault>>

export interface WallClass {
  /** Largest diameter over the seam in this class [m]. */
  readonly upTo: Metres
  readonly bodyWall: Metres
  readonly endWall: Metres
  readonly provenance: string
}

const wallClass = (upTo: number, bodyWall: number, endWall: number, provenance: string): WallClass => ({
  upTo: fromMillimetres(upTo),
  bodyWall: fromMillimetres(bodyWall),
  endWall: fromMillimetres(endWall),
  provenance,
})

const HEAVIEST = wallClass(
  Number.POSITIVE_INFINITY,
  0.27,
  0.28,
  'middle of 0.24 to 0.30 mm for a gallon paint can; from memory',
)

/** Tin thickness by size of can. All of it lies in the trade’s light gauge, up to 0.49 mm. [bib:iso90] */
export const WALL_CLASSES: readonly WallClass[] = [
  wallClass(
    90,
    0.17,
    0.2,
    'middle of 0.14 to 0.20 mm for bodies of 73 to 83 mm, ends 0.18 to 0.28 mm; from memory',
  ),
  wallClass(140, 0.2, 0.22, 'between its neighbours; from memory'),
  wallClass(160, 0.23, 0.25, 'middle of 0.20 to 0.25 mm for size 603; from memory'),
  HEAVIEST,
]

/** The tin thickness expected of a can of this diameter over the seam [m]. */
export const wallClassOf = (seamDiameter: Metres): WallClass =>
  WALL_CLASSES.find(({ upTo }) => seamDiameter <= upTo) ?? HEAVIEST
