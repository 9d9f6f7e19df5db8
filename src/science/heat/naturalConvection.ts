import { DRY_AIR_GAS_CONSTANT, STANDARD_GRAVITY } from '#basis/constants.ts'
import { airConductivity, airViscosity } from '#science/gas/transport.ts'

/** Prandtl number of air; 0.69–0.71 from 250 to 1000 K. */
const PRANDTL = 0.7

/**
 * Nusselt number of an upright plate in free air, Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1323, the form
 * for laminar flow: Nu = 0.68 + 0.670 Ra^¼ / [1 + (0.492/Pr)^(9/16)]^(4/9) [bib:churchill1975] [1]. Ra < 1e9; a can's wall has
 * 1e3–1e7. An upright cylinder counts as a plate while its diameter is above 35 L/Gr^¼ (about its own height here);
 * thinner ones lose a little more.
 */
export const verticalPlateNusselt = (rayleigh: number, prandtl: number): number =>
  0.68 + (0.67 * rayleigh ** 0.25) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9)

const PRANDTL_FACTOR = 0.67 / (1 + (0.492 / PRANDTL) ** (9 / 16)) ** (4 / 9)

/**
 * Heat transfer coefficient of an upright wall of height `height` [m] at `wall` in still air at `ambient` [K]
 * and `pressure` [Pa], properties at the film temperature [W/(m² K)].
 */
export const verticalPlateCoefficient = (
  wall: number,
  ambient: number,
  height: number,
  pressure: number,
): number => {
  const film = (wall + ambient) / 2
  const conductivity = airConductivity(film)
  const kinematic = (airViscosity(film) * DRY_AIR_GAS_CONSTANT * film) / pressure
  const rayleigh =
    (((STANDARD_GRAVITY * Math.abs(wall - ambient)) / film) * height ** 3 * PRANDTL) / kinematic ** 2
  return ((0.68 + PRANDTL_FACTOR * Math.sqrt(Math.sqrt(rayleigh))) * conductivity) / height
}
