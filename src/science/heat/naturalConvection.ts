import { DRY_AIR_GAS_CONSTANT, STANDARD_GRAVITY } from '#basis/constants.ts'
import { quickAirConductivity, quickAirViscosity } from '#science/gas/transport.ts'
import type { FilmAir } from './filmAir.ts'
import type { ValidRange } from './range.ts'

/**
 * Rayleigh number of a body of size `length` [m] in a gas, expansion 1/T of an ideal gas [1].
 * Ra = g |ΔT| L³ Pr / (T_film ν²).
 */
export const rayleighNumber = (
  film: FilmAir,
  filmTemperature: number,
  difference: number,
  length: number,
): number =>
  (((STANDARD_GRAVITY * Math.abs(difference)) / filmTemperature) * length ** 3 * film.prandtl) /
  film.kinematicViscosity ** 2

/** Where the laminar form of Churchill & Chu holds; a can's wall has 1e3–1e7. */
export const LAMINAR_PLATE_RANGE: ValidRange = {
  of: 'free convection on an upright wall',
  quantity: 'Ra',
  from: 0,
  to: 1e9,
}

/** Where the full form of Churchill & Chu holds. */
export const UPRIGHT_PLATE_RANGE: ValidRange = { ...LAMINAR_PLATE_RANGE, to: 1e12 }

/**
 * Mean Nusselt number of an upright plate, on its height: the form for laminar flow [1]. Nu = 0.68 + 0.670
 * Ra^¼ / [1 + (0.492/Pr)^(9/16)]^(4/9), Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1323
 * [bib:churchill1975, eq. 9]; `LAMINAR_PLATE_RANGE`.
 */
export const verticalPlateNusselt = (rayleigh: number, prandtl: number): number =>
  0.68 + (0.67 * Math.sqrt(Math.sqrt(rayleigh))) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9)

/**
 * The same at any Rayleigh number, laminar or turbulent [1]. Nu = {0.825 + 0.387 Ra^(1/6) /
 * [1 + (0.492/Pr)^(9/16)]^(8/27)}² [bib:churchill1975]; `UPRIGHT_PLATE_RANGE`. Below 1e9 the laminar form is
 * a little better.
 */
export const verticalPlateFullNusselt = (rayleigh: number, prandtl: number): number =>
  (0.825 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2

/**
 * Whether an upright cylinder counts as a plate: D/L ≥ 35/Gr^¼, Incropera eq. 9.33, from memory. A can of 100
 * mm, 200 mm tall and at 250 °C, does (0.5 against 0.40); a riser of 60 mm as tall does not and loses some
 * per cent more than the plate.
 */
export const isPlateLike = (diameter: number, height: number, rayleigh: number, prandtl: number): boolean =>
  diameter / height >= 35 / (rayleigh / prandtl) ** 0.25

/** Prandtl number of air; 0.69–0.71 from 250 to 1000 K. */
const PRANDTL = 0.7
const PRANDTL_FACTOR = 0.67 / (1 + (0.492 / PRANDTL) ** (9 / 16)) ** (4 / 9)

/**
 * Heat transfer coefficient of an upright wall of height `height` [m] at `wall` in still air at `ambient` [K]
 * and `pressure` [Pa], properties at the film temperature [W/(m² K)]. `LAMINAR_PLATE_RANGE`. Written out,
 * with Pr = 0.7, because every wall of a stove asks for it in every round.
 */
export const verticalPlateCoefficient = (
  wall: number,
  ambient: number,
  height: number,
  pressure: number,
): number => {
  const film = (wall + ambient) / 2
  const kinematic = (quickAirViscosity(film) * DRY_AIR_GAS_CONSTANT * film) / pressure
  const rayleigh =
    (STANDARD_GRAVITY * PRANDTL * Math.abs(wall - ambient) * height * height * height) /
    (film * kinematic * kinematic)
  return ((0.68 + PRANDTL_FACTOR * Math.sqrt(Math.sqrt(rayleigh))) * quickAirConductivity(film)) / height
}
