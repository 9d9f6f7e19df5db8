import type { Degrees, Fraction, Metres } from '#basis/units.ts'

/**
 * The stove as the rest of the house sees it: SI numbers, every choice made, nothing left as text.
 * `stove/document` reads it from a stove file. Lengths are metres; heights on a part are measured
 * from that part's own bottom edge **as it stands in the stove**; bearings run clockwise seen from
 * above from the part's front mark.
 */
export interface Stove {
  readonly name: string
  readonly about: string
  /** In file order, keyed by the maker's own name for the part. */
  readonly parts: ReadonlyMap<string, Part>
  /** One placement a part, hosts before guests. */
  readonly assembly: readonly Placement[]
  readonly fuel: FuelCharge
  /** Outside diameter of the pot the stove is built for, or null for none [m]. */
  readonly potDiameter: Metres | null
  /** Space between the top rim and the pot, which stands on rods or screws; absent or 0: it sits on the rim [m]. */
  readonly potGap?: Metres
}

/** A length as measured: the true one lies within `value ± tolerance` [m]. */
export interface Measured {
  readonly value: Metres
  readonly tolerance: Metres
}

export type Part = CanPart | DiscPart | BandPart

export type CanRole = 'shell' | 'fuel can' | 'riser' | 'pot stand'
export type DiscRole = 'concentrator' | 'lid ring' | 'grate'

/** A can used as a wall of the stove, with its ends as they are left. */
export interface CanPart {
  readonly form: 'can'
  readonly role: CanRole
  /** As used: where the maker trimmed it, `height` is the trimmed height. */
  readonly can: Can
  readonly openings: ReadonlyMap<string, Opening>
}

/** A flat disc: concentrator, lid ring, grate. Openings lie in its face. */
export interface DiscPart {
  readonly form: 'disc'
  readonly role: DiscRole
  readonly diameter: Measured
  readonly thickness: Metres
  readonly openings: ReadonlyMap<string, Opening>
}

/** A strip of tin round a can: the damper. */
export interface BandPart {
  readonly form: 'band'
  readonly role: 'damper'
  readonly height: Metres
  readonly thickness: Metres
  readonly openings: ReadonlyMap<string, Opening>
}

/** A can, as bought and as measured, standing the way it stands in the stove. */
export interface Can {
  /** Size code such as `404x700`, where it came from one. */
  readonly code: string | null
  /** Outside, over the double seam (the size code's first figure); of a can that tapers, over the wider one [m]. */
  readonly seamDiameter: Measured
  /** Outside of the plain body; of a can that tapers, halfway up [m]. */
  readonly bodyDiameter: Measured
  /** Of a can that tapers; absent: its wall stands upright. */
  readonly taper?: Taper
  /** Over both seams (the size code's second figure) or as trimmed [m]. */
  readonly height: Measured
  readonly bodyWall: Metres
  readonly endWall: Metres
  readonly bottom: CanEnd
  readonly top: CanEnd
  /** Height of one double seam along the wall [m]. */
  readonly seamHeight: Metres
  /** Stretches of wall with rolled beads, heights from the bottom edge [m]. */
  readonly beads: readonly { readonly from: Metres; readonly to: Metres }[]
  /** Where the welded side seam runs, or null for a drawn can or an unknown one. */
  readonly sideSeam: Degrees | null
}

/** Outside of the plain body at either edge of the can as it stands, trimmed or not [m]. */
export interface Taper {
  readonly bottom: Measured
  readonly top: Measured
}

/**
 * One end of a can.
 * - `plain`: seamed on and whole; its panel lies `countersink` inside the edge.
 * - `drawn`: bottom of a two-piece can, whole, no seam; the panel is level with the edge.
 * - `pull-off`: panel torn out by its ring, a ledge is left round `opening`.
 * - `friction`: ring of a lever lid, lid off, hole of diameter `opening`.
 * - `open`: end cut out along the wall, seam still there, no ledge.
 * - `cut`: wall trimmed by snips, no seam.
 */
export type CanEnd =
  | { readonly kind: 'plain'; readonly countersink: Metres }
  | { readonly kind: 'drawn' }
  | { readonly kind: 'pull-off'; readonly opening: Measured }
  | { readonly kind: 'friction'; readonly opening: Measured }
  | { readonly kind: 'open' }
  | { readonly kind: 'cut' }

/**
 * What the maker says an opening is for. The geometry decides what the air does; a check says so
 * where the two disagree.
 * `passage` lets gas through (bore, vanes); `fixing` holds a screw or wire.
 */
export type Duty = 'intake' | 'primary' | 'secondary' | 'tertiary' | 'outlet' | 'passage' | 'fixing'

export type Opening = RowOpening | PatternOpening | BoreOpening | VanesOpening

/** A ring of equal openings in a wall. */
export interface RowOpening {
  readonly kind: 'row'
  readonly duty: Duty
  readonly hole: WallHole
  /** Positions round the can, left-out ones included. */
  readonly count: number
  /** Positions (1-based, from the first bearing, clockwise) that are not drilled. */
  readonly leftOut: readonly number[]
  /** Middle of the opening above the part's bottom edge [m]. */
  readonly height: Metres
  /** Where the maker measures that height from the top edge: advice is given in their own manner. */
  readonly measuredFrom?: 'top'
  /** Bearing of position 1, half-pitch stagger already in it [deg]. */
  readonly bearing: Degrees
}

export type WallHole =
  | { readonly shape: 'round'; readonly diameter: Metres; readonly bit: string | null }
  | {
      /** `foot`: `round` has its lower end drilled to a half circle of the window's width. */
      readonly shape: 'window'
      readonly width: Metres
      readonly height: Metres
      readonly foot: 'square' | 'round'
      readonly bit: string | null
    }
  | {
      readonly shape: 'slit'
      readonly length: Metres
      readonly width: Metres
      readonly along: 'axis' | 'round'
    }

/** Which flat face an opening lies in: an end of a can, or the face of a disc. */
export type Face = 'bottom' | 'top' | 'face'

/** Round holes that fill a disc. Every hole is placed when the file is read. */
export interface PatternOpening {
  readonly kind: 'pattern'
  readonly duty: Duty
  readonly face: Face
  readonly layout: 'rings' | 'hexagonal' | 'sunflower'
  readonly diameter: Metres
  readonly bit: string | null
  readonly holes: readonly PolarPoint[]
}

/** One round hole in the middle of a disc. */
export interface BoreOpening {
  readonly kind: 'bore'
  readonly duty: Duty
  readonly face: Face
  readonly diameter: Metres
}

/**
 * Radial slits whose tin is bent up or down along one radial edge. Each tongue reaches from
 * `innerRadius` to `outerRadius` and is `width` wide round the disc.
 */
export interface VanesOpening {
  readonly kind: 'vanes'
  readonly duty: Duty
  readonly face: Face
  readonly count: number
  readonly innerRadius: Metres
  readonly outerRadius: Metres
  readonly width: Metres
  /** Between tongue and disc; 0 is not bent [deg]. */
  readonly angle: Degrees
  readonly bend: 'up' | 'down'
  /** The way the gas is turned, seen from above. */
  readonly hand: 'clockwise' | 'anticlockwise'
  /** Bearing of the first hinge line. */
  readonly bearing: Degrees
}

export interface PolarPoint {
  readonly radius: Metres
  readonly bearing: Degrees
}

/**
 * - `on ground`: stands on the ground, or `raised` above it on feet.
 * - `stands in`: stands on the host's floor, or `raised` above it.
 * - `hangs in`: hangs by its own top rim from the host's top rim, ledge or ring.
 * - `sits on`: bottom edge on the host's top rim.
 * - `slips over`: round the outside of the host, bottom edge `raised` above the host's bottom edge.
 * - `slips into`: bottom edge `raised` above the host's bottom edge, held by the wall or fasteners.
 */
export type PlaceKind = 'on ground' | 'stands in' | 'hangs in' | 'sits on' | 'slips over' | 'slips into'

export interface Placement {
  readonly part: string
  readonly place: PlaceKind
  /** Null only for `on ground`. */
  readonly host: string | null
  readonly raised: Metres
  /** Turn of this part's front mark from the stove's front, clockwise from above. */
  readonly turned: Degrees
}

/** What lies in the fuel can. Keys that are left out take the usual: no fines, tipped in, the fuel of the table. */
export interface FuelCharge {
  /** Key in the fuel table of `science/fuel`; of an own fuel, the one it is most like. */
  readonly kind: string
  /** As it is burnt, wet basis. Null: the fuel table's. */
  readonly moisture: Fraction | null
  /** Top of the fuel above the floor it lies on [m]. */
  readonly level: Metres
  /** Broken bits and dust, by weight [1]. */
  readonly fines?: Fraction
  readonly packing?: FuelPacking
  readonly own?: OwnFuel
}

/** `tipped`: as it falls; `upright`: sticks stood on end side by side, so that air rises along the grain. */
export type FuelPacking = 'tipped' | 'upright'

/** What the maker measured of a fuel of their own; null where it was not, and the fuel it is like stands in. */
export interface OwnFuel {
  readonly name: string
  /** Of the fuel that was weighed, wet basis; its densities are at this moisture. */
  readonly moisture: Fraction | null
  /** From the weight of a filling. */
  readonly bulk: FuelBulk | null
  readonly pieces: FuelPieces | null
  /** Weight of one piece over its volume [kg/m³]. */
  readonly pieceDensity: number | null
}

/** A density as it lies, and the inside of the vessel it was weighed in: near a wall pieces lie looser. */
export interface FuelBulk {
  /** [kg/m³] */
  readonly density: number
  readonly vesselDiameter: Metres
}

/** A middling piece. */
export type FuelPieces =
  | { readonly shape: 'rod'; readonly diameter: Metres; readonly length: Metres }
  | { readonly shape: 'block'; readonly length: Metres; readonly width: Metres; readonly thickness: Metres }

/** What a check found. */
export interface Finding {
  /** `stop`: will not work or is dangerous; `warn`: will disappoint or is hard to make; `note`: worth knowing. */
  readonly severity: 'stop' | 'warn' | 'note'
  /** A stable word for programs, e.g. `spacing.neighbours`. */
  readonly code: string
  readonly part: string
  /** Null where it concerns the whole part. */
  readonly opening: string | null
  readonly sentence: string
  readonly fix: string
}

/** Bits and cans the maker owns. */
export interface Shelf {
  readonly bits: readonly Bit[]
  readonly cans: ReadonlyMap<string, Can>
}

/** A drill bit, or one step of a step drill. */
export interface Bit {
  /** As the trade names it: `6 mm`, `5/8 in`, `#7`, `letter E`. */
  readonly name: string
  readonly diameter: Metres
}
