import type { PlacedPart } from '#stove/assembly/place.ts'
import { isSeamed } from '#stove/can/ends.ts'
import type { BandPart, CanPart, Opening } from '#stove/model.ts'
import { wallHoleSize } from '#stove/opening/row.ts'
import { type HalfPoint, mm } from './half.ts'
import { type Span, spanAbout, without } from './span.ts'

/** An upright wall where the cut goes through it. */
export interface CutWall {
  readonly part: string
  readonly form: 'can' | 'band'
  /** Middle of the tin, away from beads [mm]. */
  readonly radius: number
  readonly thickness: number
  readonly reach: Span
  /** Where rows pierce the cut, from the bottom up. */
  readonly holes: readonly WallGap[]
  /** Pieces of tin between the holes, along their middle. */
  readonly pieces: readonly (readonly HalfPoint[])[]
  /** Double seams, rolled outside the wall. */
  readonly seams: readonly SeamRoll[]
}

export interface WallGap extends Span {
  readonly opening: string
}

export interface SeamRoll {
  readonly inner: number
  readonly outer: number
  readonly reach: Span
}

/**
 * Depth and pitch of a rolled bead [mm]: the stove file says where beads are, not how deep; from memory of food
 * cans, and only for the eye.
 */
export const BEAD_DEPTH = 0.8
export const BEAD_PITCH = 6

const gapsOf = (openings: ReadonlyMap<string, Opening>, base: number): readonly WallGap[] =>
  [...openings]
    .flatMap(([opening, row]) =>
      row.kind === 'row'
        ? [{ opening, ...spanAbout(base + mm(row.height), mm(wallHoleSize(row.hole).axial)) }]
        : [],
    )
    .sort((a, b) => a.from - b.from)

const beadDepthAt = (z: number, beads: readonly Span[]): number => {
  const bead = beads.find(({ from, to }) => z >= from && z <= to)
  if (bead === undefined) return 0
  const waves = Math.max(1, Math.round((bead.to - bead.from) / BEAD_PITCH))
  const turn = (2 * Math.PI * waves * (z - bead.from)) / (bead.to - bead.from)
  return (BEAD_DEPTH * (1 - Math.cos(turn))) / 2
}

/** Points along a piece of wall: its ends, and enough between to show the beads. */
const pieceLine = (piece: Span, radius: number, beads: readonly Span[]): readonly HalfPoint[] => {
  const between = beads.flatMap(({ from, to }) => {
    const steps = Math.ceil(to - from)
    return Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)
  })
  const heights = [piece.from, ...between.filter((z) => z > piece.from && z < piece.to), piece.to]
  return heights.map((z) => ({ r: radius - beadDepthAt(z, beads), z }))
}

const canWall = ({ name, base, top }: PlacedPart, { can, openings }: CanPart): CutWall => {
  const [low, high] = [mm(base), mm(top)]
  const outer = mm(can.bodyDiameter.value) / 2
  const thickness = mm(can.bodyWall)
  const radius = outer - thickness / 2
  const beads = can.beads.map(({ from, to }) => ({ from: low + mm(from), to: low + mm(to) }))
  const holes = gapsOf(openings, low)
  const reach = { from: low, to: high }
  const seam = (from: number): SeamRoll => ({
    inner: outer,
    outer: mm(can.seamDiameter.value) / 2,
    reach: { from, to: from + mm(can.seamHeight) },
  })
  return {
    part: name,
    form: 'can',
    radius,
    thickness,
    reach,
    holes,
    pieces: without(reach, holes).map((piece) => pieceLine(piece, radius, beads)),
    seams: [
      ...(isSeamed(can.bottom) ? [seam(low)] : []),
      ...(isSeamed(can.top) ? [seam(high - mm(can.seamHeight))] : []),
    ].filter(({ inner, outer: rim }) => rim > inner),
  }
}

/** A band lies on the wall of its host: over its seam it would not go. */
const bandWall = ({ name, base, top }: PlacedPart, part: BandPart, host: CutWall): CutWall => {
  const thickness = mm(part.thickness)
  const radius = host.radius + host.thickness / 2 + thickness / 2
  const reach = { from: mm(base), to: mm(top) }
  const holes = gapsOf(part.openings, mm(base))
  return {
    part: name,
    form: 'band',
    radius,
    thickness,
    reach,
    holes,
    pieces: without(reach, holes).map(({ from, to }) => [
      { r: radius, z: from },
      { r: radius, z: to },
    ]),
    seams: [],
  }
}

/** Every upright wall of placed parts, in assembly order. */
export const cutWalls = (placed: readonly PlacedPart[]): readonly CutWall[] => {
  const walls: CutWall[] = []
  for (const at of placed) {
    if (at.part.form === 'can') walls.push(canWall(at, at.part))
    if (at.part.form !== 'band') continue
    const host = walls.find(({ part }) => part === at.placement.host)
    if (host !== undefined) walls.push(bandWall(at, at.part, host))
  }
  return walls
}
