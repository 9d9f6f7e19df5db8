import { filmAir } from './filmAir.ts'
import { rayleighNumber } from './naturalConvection.ts'
import type { ValidRange } from './range.ts'

/**
 * The size these correlations are written on: area over perimeter of the plate; a quarter of a disc's
 * diameter [m].
 */
export const discLength = (diameter: number): number => diameter / 4

export const HOT_SIDE_UP_RANGE: ValidRange = {
  of: 'free convection over a hot level plate',
  quantity: 'Ra',
  from: 1e4,
  to: 1e11,
}

export const HOT_SIDE_DOWN_RANGE: ValidRange = {
  of: 'free convection under a hot level plate',
  quantity: 'Ra',
  from: 1e4,
  to: 1e9,
}

/**
 * Mean Nusselt number over a level plate that is hotter than the gas above it, or under one that is colder
 * than the gas below: a hot lid, a pot over hot gas [1]. Nu = 0.54 Ra^¼ (1e4–1e7), 0.15 Ra^⅓ (1e7–1e11),
 * Incropera eqs 9.30–9.31 from memory (Lloyd & Moran 1974). The larger of the two is taken, so that nothing
 * jumps where they meet (Ra = 4.7e6, where the text jumps by 6 % at 1e7).
 */
export const hotSideUpNusselt = (rayleigh: number): number =>
  Math.max(0.54 * Math.sqrt(Math.sqrt(rayleigh)), 0.15 * Math.cbrt(rayleigh))

/**
 * Mean Nusselt number under a level plate that is hotter than the gas below it, or over one that is colder:
 * the gas lies stratified [1]. Nu = 0.52 Ra^(1/5) (1e4–1e9), Incropera eq. 9.32 in recent editions, from
 * memory; older ones have 0.27 Ra^¼, which is within 25 % from 1e5 to 1e8.
 */
export const hotSideDownNusselt = (rayleigh: number): number => 0.52 * rayleigh ** 0.2

/**
 * Heat transfer coefficient of a level disc in still air [W/(m² K)]. `faces` is the way the disc looks; a
 * disc colder than the air is a hot one turned over.
 */
export const discCoefficient = (
  disc: number,
  ambient: number,
  diameter: number,
  faces: 'up' | 'down',
  pressure: number,
): number => {
  const temperature = (disc + ambient) / 2
  const film = filmAir(temperature, pressure)
  const length = discLength(diameter)
  const rayleigh = rayleighNumber(film, temperature, disc - ambient, length)
  const stirs = disc > ambient === (faces === 'up')
  return ((stirs ? hotSideUpNusselt(rayleigh) : hotSideDownNusselt(rayleigh)) * film.conductivity) / length
}
