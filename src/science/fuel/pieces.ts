import type { FuelPieces } from '#stove/model.ts'

/** Sauter diameter of a cylinder, 3DL/(D + 2L): six times volume over surface [m]. */
export const cylinderSauterDiameter = (diameter: number, length: number): number =>
  (3 * diameter * length) / (diameter + 2 * length)

/** Across the length of a piece: area [m²] and the way round it [m]. */
export const crossSection = (pieces: FuelPieces): { readonly area: number; readonly perimeter: number } =>
  pieces.shape === 'rod'
    ? { area: (Math.PI / 4) * pieces.diameter ** 2, perimeter: Math.PI * pieces.diameter }
    : { area: pieces.width * pieces.thickness, perimeter: 2 * (pieces.width + pieces.thickness) }

/** Volume of one piece [m³]. */
const pieceVolume = (pieces: FuelPieces): number => crossSection(pieces).area * pieces.length

/** Sauter diameter of a piece, six times its volume over its surface [m]. */
export const sauterDiameter = (pieces: FuelPieces): number => {
  if (pieces.shape === 'rod') return cylinderSauterDiameter(pieces.diameter, pieces.length)
  const { length, width, thickness } = pieces
  return 3 / (1 / length + 1 / width + 1 / thickness)
}

/** Diameter of the ball with the volume of a piece [m]. */
export const equalVolumeDiameter = (pieces: FuelPieces): number =>
  Math.cbrt((6 * pieceVolume(pieces)) / Math.PI)

/** Surface of the ball of equal volume over the surface of the piece, Wadell's sphericity [1]. */
export const sphericity = (pieces: FuelPieces): number => sauterDiameter(pieces) / equalVolumeDiameter(pieces)

/** The middle one of the three sizes of a piece: the hole it goes through, end first [m]. */
export const girth = (pieces: FuelPieces): number => {
  const sizes =
    pieces.shape === 'rod'
      ? [pieces.diameter, pieces.diameter, pieces.length]
      : [pieces.length, pieces.width, pieces.thickness]
  return sizes.sort((a, b) => a - b)[1] as number
}

/** A piece this many times as long as it is wide can be stood on end: common practice, no source. */
export const STICK_SLENDERNESS = 3

/** Whether a piece is a stick, which can be stood upright. */
export const isStick = (pieces: FuelPieces): boolean => {
  const width = pieces.shape === 'rod' ? pieces.diameter : Math.max(pieces.width, pieces.thickness)
  return pieces.length >= STICK_SLENDERNESS * width
}
