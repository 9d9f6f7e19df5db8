import { STANDARD_GRAVITY } from '#basis/constants.ts'
import { AIR, specificHeat } from '#science/gas/blend.ts'
import { isInside, type ValidRange } from '#science/heat/range.ts'

/** Air that the flame draws. */
export interface FlameAir {
  /** [K] */
  readonly temperature: number
  /** [kg/m³] */
  readonly density: number
}

/**
 * Dimensionless power of a fire of power Q and source diameter D: Q* = Q/(ρ c T √(gD) D²), Zukoski [1].
 * Campfires 1 or so, jets over 1000; a can stove 0.3–3.
 */
export const dimensionlessPower = (power: number, diameter: number, air: FlameAir): number =>
  power /
  (air.density *
    specificHeat(AIR, air.temperature) *
    air.temperature *
    Math.sqrt(STANDARD_GRAVITY * diameter) *
    diameter ** 2)

/** Where Heskestad's height holds, PD 7974-1:2019 table 1 (read in a public implementation). */
export const HESKESTAD_RANGE: ValidRange = {
  of: 'flame height',
  quantity: 'Q*',
  from: 0.12,
  to: 12000,
}

/** Where Zukoski's holds: natural gas on burners of 10–50 cm, same table. */
export const ZUKOSKI_RANGE: ValidRange = { of: 'flame height', quantity: 'Q*', from: 0, to: 40 }

/**
 * Smallest burner that either was measured on; a can stove's bore is smaller, its flame less turbulent and
 * so, if anything, taller [m].
 */
const SMALLEST_BURNER = 0.1

/**
 * Mean flame height over a source, in still air, where the flame is there half the time [m]. Heskestad 1984,
 * 2002: L/D = −1.02 + 15.6 N^(1/5), N = c T/(g ρ² (H/r)³) · Q²/D⁵ [bib:heskestad1984], from memory; L = 0.235
 * Q^0.4 − 1.02 D in kW and metres of common air. `power` is what the gas still has to burn there [W],
 * `heatPerAir` the heat it releases per kilogram of air it needs, H/r, 2.9–3.2 MJ/kg for all common gases.
 * `HESKESTAD_RANGE`. Zero where the formula goes below: the flame breaks up into tongues at the surface.
 */
export const heskestadFlameHeight = (
  power: number,
  diameter: number,
  air: FlameAir,
  heatPerAir: number,
): number => {
  const n =
    ((specificHeat(AIR, air.temperature) * air.temperature) /
      (STANDARD_GRAVITY * air.density ** 2 * heatPerAir ** 3)) *
    (power ** 2 / diameter ** 5)
  return Math.max(0, diameter * (15.6 * n ** 0.2 - 1.02))
}

/**
 * The same by Zukoski 1984 for natural gas, as in PD 7974-1:2019 clause 8.3.2 (read in a public
 * implementation): L/D = 40 Q*² below 0.15, 3.3 Q*^⅔ to 1, 3.3 Q*^⅖ to 40 [m]. `ZUKOSKI_RANGE`; a second
 * opinion.
 */
export const zukoskiFlameHeight = (power: number, diameter: number, air: FlameAir): number => {
  const q = dimensionlessPower(power, diameter, air)
  if (q < 0.15) return diameter * 40 * q * q
  return diameter * 3.3 * q ** (q < 1 ? 2 / 3 : 2 / 5)
}

export interface FlameOverSource {
  /** Above the source [m]. */
  readonly height: number
  readonly dimensionlessPower: number
  /**
   * How far it would rise beyond the pot's bottom; below zero the tip stays under it [m]. Null without a pot.
   */
  readonly overPot: number | null
  readonly strikesPot: boolean
  /** Outside what the correlation was measured with. */
  readonly outside: readonly ValidRange[]
}

/**
 * The flame over a concentrator or riser [m]. `potGap` is from the source up to the pot, null for none;
 * `factor` is `flameHeight` of the coefficient table. No power, no flame.
 */
export const flameOverSource = (
  power: number,
  diameter: number,
  air: FlameAir,
  heatPerAir: number,
  potGap: number | null,
  factor: number,
): FlameOverSource => {
  const q = dimensionlessPower(power, diameter, air)
  const height = power > 0 ? factor * heskestadFlameHeight(power, diameter, air, heatPerAir) : 0
  const overPot = potGap === null ? null : height - potGap
  return {
    height,
    dimensionlessPower: q,
    overPot,
    strikesPot: overPot !== null && power > 0 && overPot >= 0,
    outside: [
      ...(power > 0 && !isInside(HESKESTAD_RANGE, q) ? [HESKESTAD_RANGE] : []),
      ...(diameter < SMALLEST_BURNER ? [SMALL_SOURCE] : []),
    ],
  }
}

/** A source narrower than any that was measured. */
const SMALL_SOURCE: ValidRange = {
  of: 'flame height',
  quantity: 'source diameter, m',
  from: SMALLEST_BURNER,
  to: 10,
}
