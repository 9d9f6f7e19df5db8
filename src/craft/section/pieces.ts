import type { RandomStream } from '#basis/random.ts'
import type { FuelCharge } from '#stove/model.ts'
import type { FarPoint } from './beyond.ts'

/** One piece of fuel as the cut shows it: a rod or block with round or square ends. */
export interface FuelPiece {
  readonly middle: FarPoint
  /** Along its length, from the horizontal [rad]. */
  readonly angle: number
  readonly length: number
  readonly width: number
  readonly ends: 'round' | 'square'
}

interface PieceSize {
  readonly length: number
  readonly width: number
  readonly depth: number
  readonly ends: FuelPiece['ends']
}

/**
 * Size of one piece [mm], about as in the table of fuels. Only for the eye: nothing is worked out from it, and a fuel that
 * is not here is drawn as chips.
 */
const CHIPS: PieceSize = { length: 20, width: 12, depth: 6, ends: 'square' }
const SIZES: Readonly<Record<string, PieceSize>> = {
  'pellets-6mm': { length: 15, width: 6, depth: 6, ends: 'round' },
  'pellets-8mm': { length: 20, width: 8, depth: 8, ends: 'round' },
  'wood-chips': CHIPS,
  twigs: { length: 40, width: 10, depth: 10, ends: 'round' },
  'coconut-shell': { length: 15, width: 15, depth: 4, ends: 'square' },
  'groundnut-shell': { length: 22, width: 11, depth: 5, ends: 'round' },
  'bagasse-pellets': { length: 18, width: 8, depth: 8, ends: 'round' },
  'straw-pellets': { length: 18, width: 8, depth: 8, ends: 'round' },
}

const inMillimetres = (metres: number): number => 1000 * metres

/** The maker's own pieces where they were measured, else the fuel's usual. */
const sizeOf = ({ kind, own }: FuelCharge): PieceSize => {
  const pieces = own?.pieces ?? null
  if (pieces === null) return SIZES[kind] ?? CHIPS
  if (pieces.shape === 'block')
    return {
      length: inMillimetres(pieces.length),
      width: inMillimetres(pieces.width),
      depth: inMillimetres(pieces.thickness),
      ends: 'square',
    }
  const diameter = inMillimetres(pieces.diameter)
  return { length: inMillimetres(pieces.length), width: diameter, depth: diameter, ends: 'round' }
}

/** Pieces may touch but not overlap; this much is left between them [mm]. */
const PLAY = 0.25
/** Square corners stand out over a round end: a block's is set back by this share of its width only [1]. */
const SQUARE_END = 0.45

interface Capsule {
  readonly x: number
  readonly z: number
  readonly dx: number
  readonly dz: number
  /** Of the middle line. */
  readonly half: number
  readonly radius: number
}

const capsule = ({ middle, angle, length, width, ends }: FuelPiece): Capsule => {
  const half = Math.max(0, length - width * (ends === 'round' ? 1 : SQUARE_END)) / 2
  return { ...middle, dx: half * Math.cos(angle), dz: half * Math.sin(angle), half, radius: width / 2 }
}

/** Distance from a point to a capsule's middle line [mm]. */
const distanceTo = (x: number, z: number, to: Capsule): number => {
  const squared = to.dx * to.dx + to.dz * to.dz
  const along = squared === 0 ? 0 : ((x - to.x) * to.dx + (z - to.z) * to.dz) / squared
  const t = Math.max(-1, Math.min(1, along))
  return Math.hypot(x - to.x - t * to.dx, z - to.z - t * to.dz)
}

const cross = (ax: number, az: number, bx: number, bz: number): number => ax * bz - az * bx

/** Whether the middle lines cross. */
const linesCross = (a: Capsule, b: Capsule): boolean => {
  const side = (p: Capsule, x: number, z: number): number => Math.sign(cross(p.dx, p.dz, x - p.x, z - p.z))
  return (
    side(a, b.x - b.dx, b.z - b.dz) * side(a, b.x + b.dx, b.z + b.dz) < 0 &&
    side(b, a.x - a.dx, a.z - a.dz) * side(b, a.x + a.dx, a.z + a.dz) < 0
  )
}

/** Smallest distance between two middle lines [mm]: at an end of one of them, unless they cross. */
const apart = (a: Capsule, b: Capsule): number =>
  linesCross(a, b)
    ? 0
    : Math.min(
        distanceTo(a.x - a.dx, a.z - a.dz, b),
        distanceTo(a.x + a.dx, a.z + a.dz, b),
        distanceTo(b.x - b.dx, b.z - b.dz, a),
        distanceTo(b.x + b.dx, b.z + b.dz, a),
      )

/** How far a piece reaches up and down from its middle [mm]. */
export const pieceReach = ({ angle, length, width }: FuelPiece): number =>
  (Math.abs(Math.sin(angle)) * Math.max(0, length - width) + width) / 2

/** Whether two pieces come nearer than pieces may. */
const collide = (a: Capsule, b: Capsule): boolean => {
  const room = a.radius + b.radius + PLAY
  const far = room + a.half + b.half
  const [dx, dz] = [a.x - b.x, a.z - b.z]
  return dx * dx + dz * dz < far * far && apart(a, b) < room
}

const TRIES = 6000

/**
 * A filled bed as pieces of their true size, thrown in at random where they find room: tipped-in rods lie more flat
 * than upright, and some are met end on; sticks that were stood in stand. Middle of the bed's floor at the origin.
 */
export const fuelPieces = (
  fuel: FuelCharge,
  radius: number,
  depth: number,
  random: RandomStream,
): readonly FuelPiece[] => {
  const size = sizeOf(fuel)
  const stands = fuel.packing === 'upright'
  const pieces: FuelPiece[] = []
  const taken: Capsule[] = []
  for (let n = 0; n < TRIES; n += 1) {
    // Whole pieces first; later only what is cut short, and what is met end on, still finds room.
    const endOn = !stands && (n > TRIES * 0.7 || random.uniform() < 0.15)
    const shown = n > TRIES * 0.35 ? 0.6 : 1
    const length = (endOn ? size.width : size.length * shown) * random.between(0.82, 1.08)
    const width = size.depth * random.between(0.94, 1.06)
    const piece: FuelPiece = {
      middle: { x: random.between(-radius, radius), z: random.between(0, depth) },
      angle: stands ? Math.PI / 2 : (random.uniform() + random.uniform() - 1) * 1.15,
      length: Math.max(length, width),
      width,
      ends: size.ends,
    }
    const one = capsule(piece)
    const reachX = Math.abs(one.dx) + one.radius
    const reachZ = Math.abs(one.dz) + one.radius
    if (Math.abs(one.x) + reachX > radius - PLAY || one.z - reachZ < PLAY || one.z + reachZ > depth) continue
    if (taken.some((other) => collide(one, other))) continue
    pieces.push(piece)
    taken.push(one)
  }
  return pieces
}
