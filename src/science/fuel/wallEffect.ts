import type { FuelPieces } from '#stove/model.ts'
import { equalVolumeDiameter, sphericity } from './pieces.ts'

/**
 * Mean void of a packed tube, ε = floor + rise/(D/d + shift)², d the ball of equal volume: Benyahia & O'Neill,
 * Particul. Sci. Technol. 23 (2005) 169, read in the docstrings of a published program [bib:benyahia2005].
 * Solid cylinders: 1.7 < D/d < 26.3, mean error 1.6 %. Any shape: 1.5 < D/d < 50, sphericity 0.42–1, 5.2 %.
 */
const ROD = { floor: 0.373, rise: 1.703, shift: 0.611, narrowest: 1.7 }
const ANY = { rise: 1.0814, shift: 0.1226, narrowest: 1.5 }
export const LEAST_SPHERICITY = 0.42

const law = (pieces: FuelPieces) =>
  pieces.shape === 'rod'
    ? ROD
    : { ...ANY, floor: 0.1504 + 0.2024 / Math.max(LEAST_SPHERICITY, sphericity(pieces)) }

/** How many pieces, as balls of equal volume, go side by side across a can [1]. */
export const piecesAcross = (pieces: FuelPieces, diameter: number): number =>
  diameter / equalVolumeDiameter(pieces)

/** Fewest pieces across a can that the correlation was made for [1]. */
export const fewestAcross = (pieces: FuelPieces): number => law(pieces).narrowest

/**
 * Mean void of pieces tipped into a can, the wall's looser layer counted in [1]. Held where fewer pieces than
 * `fewestAcross` go across; where more do than were tested, it tends to the void far from any wall.
 */
export const meanVoid = (pieces: FuelPieces, diameter: number): number => {
  const { floor, rise, shift, narrowest } = law(pieces)
  return floor + rise / (Math.max(narrowest, piecesAcross(pieces, diameter)) + shift) ** 2
}

/**
 * What fills the can in one of diameter `to`, over what fills it in one of diameter `from` [1]. Real fuels lie looser
 * than the clean pieces of the correlation; only its ratio is used, so that bulk density and solid share change alike
 * and the pieces keep their density.
 */
export const solidRatio = (pieces: FuelPieces, from: number, to: number): number =>
  (1 - meanVoid(pieces, to)) / (1 - meanVoid(pieces, from))
