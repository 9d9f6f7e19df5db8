import { degrees, fraction, fromMillimetres as mm } from '#basis/units.ts'
import type {
  BandPart,
  BoreOpening,
  Can,
  CanEnd,
  CanPart,
  CanRole,
  DiscPart,
  DiscRole,
  Duty,
  Finding,
  Measured,
  Opening,
  Part,
  PatternOpening,
  PlaceKind,
  Placement,
  PolarPoint,
  RowOpening,
  Shelf,
  Stove,
  VanesOpening,
  WallHole,
} from '#stove/model.ts'

/**
 * A workbench for small stoves: millimetres in, a `Stove` out. Dimensions are made up for the arithmetic
 * of the tests and belong to no can on sale.
 */
const measured = (value: number, tolerance = 0): Measured => ({
  value: mm(value),
  tolerance: mm(tolerance),
})

export interface CanSpec {
  readonly body?: number
  readonly seam?: number
  readonly height?: number
  readonly tolerance?: number
  readonly wall?: number
  readonly bottom?: CanEnd
  readonly top?: CanEnd
  readonly beads?: readonly (readonly [from: number, to: number])[]
  readonly sideSeam?: number | null
}

/** Body 100 mm over a wall of 0.2 mm, seams 102.4 mm wide and 3 mm high, 120 mm high, top cut out. */
const can = (spec: CanSpec = {}): Can => {
  const { body = 100, height = 120, tolerance = 0, wall = 0.2 } = spec
  return {
    code: null,
    seamDiameter: measured(spec.seam ?? body + 2.4, tolerance),
    bodyDiameter: measured(body, tolerance),
    height: measured(height, tolerance),
    bodyWall: mm(wall),
    endWall: mm(wall),
    bottom: spec.bottom ?? plain,
    top: spec.top ?? { kind: 'open' },
    seamHeight: mm(3),
    beads: (spec.beads ?? []).map(([from, to]) => ({ from: mm(from), to: mm(to) })),
    sideSeam: spec.sideSeam === undefined || spec.sideSeam === null ? null : degrees(spec.sideSeam),
  }
}

export const plain: CanEnd = { kind: 'plain', countersink: mm(3) }
export const pullOff = (opening: number, tolerance = 0): CanEnd => ({
  kind: 'pull-off',
  opening: measured(opening, tolerance),
})

export type Openings = Readonly<Record<string, Opening>>

const mapOf = <T>(named: Readonly<Record<string, T>>): ReadonlyMap<string, T> =>
  new Map(Object.entries(named))

export const canPart = (role: CanRole, spec: CanSpec = {}, openings: Openings = {}): CanPart => ({
  form: 'can',
  role,
  can: can(spec),
  openings: mapOf(openings),
})

export const discPart = (
  role: DiscRole,
  diameter: number,
  openings: Openings = {},
  tolerance = 0,
): DiscPart => ({
  form: 'disc',
  role,
  diameter: measured(diameter, tolerance),
  thickness: mm(0.3),
  openings: mapOf(openings),
})

export const band = (height: number, openings: Openings = {}): BandPart => ({
  form: 'band',
  role: 'damper',
  height: mm(height),
  thickness: mm(0.2),
  openings: mapOf(openings),
})

export const round = (diameter: number): WallHole => ({
  shape: 'round',
  diameter: mm(diameter),
  bit: `${diameter} mm`,
})
export const window = (width: number, height: number, foot: 'square' | 'round' = 'square'): WallHole => ({
  shape: 'window',
  width: mm(width),
  height: mm(height),
  foot,
  bit: foot === 'round' ? `${width} mm` : null,
})
export const slit = (length: number, width: number, along: 'axis' | 'round'): WallHole => ({
  shape: 'slit',
  length: mm(length),
  width: mm(width),
  along,
})

/** A row: its duty, how many of what, and how high. */
export const row = (
  duty: Duty,
  count: number,
  hole: WallHole,
  height: number,
  more: { readonly bearing?: number; readonly leftOut?: readonly number[] } = {},
): RowOpening => ({
  kind: 'row',
  duty,
  hole,
  count,
  leftOut: more.leftOut ?? [],
  height: mm(height),
  bearing: degrees(more.bearing ?? 0),
})

/** Holes on rings of a face: radius in mm and how many. */
export const rings = (
  duty: Duty,
  diameter: number,
  onRings: readonly (readonly [radius: number, count: number])[],
  face: PatternOpening['face'] = 'bottom',
): PatternOpening => ({
  kind: 'pattern',
  duty,
  face,
  layout: 'rings',
  diameter: mm(diameter),
  bit: `${diameter} mm`,
  holes: onRings.flatMap(([radius, count]) =>
    Array.from(
      { length: count },
      (_, index): PolarPoint => ({ radius: mm(radius), bearing: degrees((360 * index) / count) }),
    ),
  ),
})

export const bore = (
  diameter: number,
  face: BoreOpening['face'] = 'face',
  duty: Duty = 'passage',
): BoreOpening => ({
  kind: 'bore',
  duty,
  face,
  diameter: mm(diameter),
})

export const vanes = (
  count: number,
  innerRadius: number,
  outerRadius: number,
  width: number,
  more: Partial<VanesOpening> = {},
): VanesOpening => ({
  kind: 'vanes',
  duty: 'passage',
  face: 'face',
  count,
  innerRadius: mm(innerRadius),
  outerRadius: mm(outerRadius),
  width: mm(width),
  angle: degrees(30),
  bend: 'up',
  hand: 'clockwise',
  bearing: degrees(0),
  ...more,
})

export const place = (
  part: string,
  kind: PlaceKind,
  host: string | null = null,
  more: { readonly raised?: number; readonly turned?: number } = {},
): Placement => ({
  part,
  place: kind,
  host,
  raised: mm(more.raised ?? 0),
  turned: degrees(more.turned ?? 0),
})

export const stove = (
  parts: Readonly<Record<string, Part>>,
  assembly: readonly Placement[],
  more: { readonly fuelLevel?: number; readonly pot?: number | null } = {},
): Stove => ({
  name: 'bench piece',
  about: 'Made up for a test.',
  parts: mapOf(parts),
  assembly,
  fuel: { kind: 'pellets', moisture: fraction(0.08), level: mm(more.fuelLevel ?? 60) },
  potDiameter: more.pot === undefined || more.pot === null ? null : mm(more.pot),
})

/** One can on the ground. */
export const lone = (part: Part): Stove => stove({ can: part }, [place('can', 'on ground')])

/** One disc on one can. */
export const disc = (part: DiscPart): Stove =>
  stove({ can: canPart('shell'), disc: part }, [place('can', 'on ground'), place('disc', 'sits on', 'can')])

export const shelf = (...sizes: readonly number[]): Shelf => ({
  bits: sizes.map((size) => ({ name: `${size} mm`, diameter: mm(size) })),
  cans: new Map(),
})

/** What a test compares: how bad, what, and where. */
export const brief = (findings: readonly Finding[]): readonly string[] =>
  findings.map(
    ({ severity, code, part, opening }) =>
      `${severity} ${code} ${part}${opening === null ? '' : `/${opening}`}`,
  )
