import type { FilmAir } from '#science/heat/filmAir.ts'
import { together } from '#science/heat/forcedConvection.ts'
import { discLength, hotSideUpNusselt } from '#science/heat/horizontalPlate.ts'
import { rayleighNumber } from '#science/heat/naturalConvection.ts'
import type { ValidRange } from '#science/heat/range.ts'

/**
 * Convection from hot gas to a pot's flat bottom.
 *
 * The gas comes up through an opening of diameter d, a gap H under the bottom, turns and runs outward. At a
 * can stove Re_d is 300–1500: laminar, and below the 2000 from which the usual impinging-jet correlation
 * (Martin 1977) holds. So the boundary layer itself is followed instead: round the stagnation point the gas
 * speeds up as U = βr, farther out it runs as a wall jet at its own speed, or as fast as the gap makes it.
 * One integral formula covers all three. Buoyancy stirs as well (hot gas under a cold plate); the two are
 * combined as assisting mixed convection.
 */
export interface BottomFlow {
  /** [kg/s] */
  readonly massFlow: number
  /** Opening that the gas comes from [m]. */
  readonly openingDiameter: number
  /** From that opening's plane up to the bottom [m]. */
  readonly gap: number
  /** [m] */
  readonly potDiameter: number
}

/** Reynolds number of the opening, within which a laminar layer may be taken. */
export const UNDER_POT_RANGE: ValidRange = {
  of: 'laminar flow under the pot',
  quantity: 'Re_d',
  from: 100,
  to: 2000,
}

/** Reynolds number of the gas in its opening, on its diameter: 4ṁ/(πdμ) [1]. */
export const openingReynolds = ({ massFlow, openingDiameter }: BottomFlow, viscosity: number): number =>
  (4 * massFlow) / (Math.PI * openingDiameter * viscosity)

/** Rings that the bottom is cut into; 16 come within 1.5 % of 2000. */
const RINGS = 16

/**
 * Developed laminar flow between two discs, the lower one insulated, on twice the gap; laminar duct table.
 */
const CHANNEL_NUSSELT = 4.861

/**
 * Gas speed along the bottom at a radius over its speed in the opening [1]. A free jet turns with βd/u =
 * `gradient`, up to its own speed; a narrow gap squeezes it, by continuity r/(2H) within the opening and
 * d²/(8rH) outside. Added as squares.
 */
const speedShare = (radius: number, diameter: number, gap: number, gradient: number): number => {
  const free = Math.min(1, (gradient * radius) / diameter)
  const inside = radius / (2 * gap)
  const squeezed = radius <= diameter / 2 ? inside : (diameter * diameter) / (8 * radius * gap)
  return Math.sqrt(free * free + squeezed * squeezed)
}

/**
 * Heat conductance of the whole bottom, ∫h dA [W/K]. `gradient` is βd/u of the free jet, `potJetGradient` of
 * the coefficient table; `film` and `filmTemperature` are between gas and pot, `difference` is gas − pot [K].
 *
 * St = 0.418 μ^½ G^0.435 R / (∫ G^1.87 R² dx)^½, G = ρU: Kays & Crawford's integral of the laminar energy
 * equation for a body of revolution at Pr 0.7, from memory; at a stagnation point it gives Nu = 0.646
 * (βd²/ν)^½ where the exact similarity solution has 0.665.
 */
export const bottomConductance = (
  flow: BottomFlow,
  film: FilmAir,
  filmTemperature: number,
  difference: number,
  gradient: number,
): number => {
  const { massFlow, openingDiameter: d, gap, potDiameter } = flow
  const flux = massFlow / ((Math.PI / 4) * d * d)
  const edge = potDiameter / 2
  const channel = (CHANNEL_NUSSELT * film.conductivity) / (2 * gap)
  const length = discLength(potDiameter)
  const free =
    (hotSideUpNusselt(rayleighNumber(film, filmTemperature, difference, length)) * film.conductivity) / length
  const step = edge / RINGS
  let integral = 0
  let conductance = 0
  for (let i = 0; i < RINGS; i++) {
    const r = (i + 0.5) * step
    const g = flux * speedShare(r, d, gap, gradient)
    // Up to the middle of this ring: half of it is added before, half after. In the first ring G grows as r:
    // ∫ r^3.87 = r^4.87/4.87.
    const here = g ** 1.87 * r * r
    const upTo = i === 0 ? (here * r) / 4.87 : integral + 0.5 * step * here
    // A flow so faint that its powers vanish has no layer of its own.
    const layer =
      upTo > 0
        ? (0.418 * Math.sqrt(film.viscosity) * g ** 1.435 * r * film.specificHeat) / Math.sqrt(upTo)
        : 0
    // Once the layer fills the gap, the developed channel is the least there is.
    const forced = massFlow > 0 ? Math.max(layer, channel) : 0
    conductance += together(forced, free) * 2 * Math.PI * r * step
    integral = i === 0 ? (here * r * (step / r) ** 4.87) / 4.87 : integral + step * here
  }
  return conductance
}
