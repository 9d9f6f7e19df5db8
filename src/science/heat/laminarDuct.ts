import type { ValidRange } from './range.ts'

/**
 * Developed laminar flow in a round tube whose wall has one temperature, or gives off one heat flux; exact
 * [1].
 */
export const TUBE_NUSSELT_ISOTHERMAL = 3.66
export const TUBE_NUSSELT_UNIFORM_FLUX = 48 / 11

/**
 * Developed laminar flow in a ring gap, one wall isothermal and the other insulated, on the hydraulic
 * diameter D_o − D_i. Incropera table 8.2 from memory for 0.05–0.5 and 1; those and the rest worked out by
 * `test/reference/generators/annulus.py`. Columns: D_i/D_o, Nu of the inner wall, Nu of the outer wall.
 */
const RING_NUSSELT: readonly (readonly [number, number, number])[] = [
  [0.05, 17.459, 4.057],
  [0.1, 11.559, 4.114],
  [0.25, 7.371, 4.232],
  [0.5, 5.738, 4.429],
  [0.6, 5.449, 4.513],
  [0.7, 5.24, 4.598],
  [0.8, 5.082, 4.685],
  [0.9, 4.959, 4.773],
  [1, 4.861, 4.861],
]

export const RING_RANGE: ValidRange = { of: 'heat in a ring gap', quantity: 'D_i/D_o', from: 0.05, to: 1 }

/** Laminar flow in a gap or tube. */
export const LAMINAR_DUCT_RANGE: ValidRange = {
  of: 'laminar flow in a gap',
  quantity: 'Re',
  from: 0,
  to: 2300,
}

/**
 * Nusselt number of one wall of a ring gap, developed laminar flow, on D_o − D_i [1]. Straight lines between
 * the rows, in D_i/D_o for the outer wall and in D_o/D_i for the inner, where it is nearly straight: within
 * 0.5 %. Below `RING_RANGE` the last line is carried on.
 */
export const ringNusselt = (diameterRatio: number, wall: 'inner' | 'outer'): number => {
  let i = 1
  while (i < RING_NUSSELT.length - 1 && diameterRatio > (RING_NUSSELT[i] as readonly number[])[0]!) i += 1
  const [ka, innerA, outerA] = RING_NUSSELT[i - 1] as readonly [number, number, number]
  const [kb, innerB, outerB] = RING_NUSSELT[i] as readonly [number, number, number]
  if (wall === 'outer') return outerA + ((outerB - outerA) * (diameterRatio - ka)) / (kb - ka)
  return innerA + ((innerB - innerA) * (1 / diameterRatio - 1 / ka)) / (1 / kb - 1 / ka)
}

export const RING_ENTRY_RANGE: ValidRange = {
  of: 'heat at the entry of a gap',
  quantity: 'Gz',
  from: 0,
  to: 1000,
}

/**
 * Mean Nusselt number over the first length x of a gap with one wall isothermal and the other insulated: the
 * gas comes in at one temperature with developed flow [1]. Nu = Nu∞ + 0.0789 Gz/(1 + 0.0478 Gz^⅔), Gz = Re Pr
 * D_h/x: Hausen's form, its two numbers fitted here to the exact series of
 * `test/reference/generators/annulus.py` for D_i/D_o 0.7–1; within 2.6 %, `RING_ENTRY_RANGE`. Where the flow
 * develops as well, the truth is some per cent higher.
 */
export const enteringNusselt = (developed: number, graetz: number): number =>
  developed + (0.0789 * graetz) / (1 + 0.0478 * Math.cbrt(graetz) ** 2)
