import type { Outcome } from '#basis/problem.ts'
import type { Metres } from '#basis/units.ts'
import { type BurnSetup, plainSetup } from '#science/answers/burn/setup.ts'
import { standardPressure } from '#science/atmosphere.ts'
import { fuelOf } from '#science/fuel/charge.ts'
import { mildDay, type Site } from '#science/site.ts'
import type { Wind } from '#science/weather/wind.ts'
import type { Stove } from '#stove/model.ts'

/** What a stove is burnt with and in, where that is not the file's. Plain data, SI units. */
export interface Conditions {
  /** Key of the fuel table; null: the file's fuel. */
  readonly fuel: string | null
  /** Wet basis; null: as the file or the fuel has it [1]. */
  readonly moisture: number | null
  /** Of the air [K]. */
  readonly temperature: number
  /** Above the sea [m]. */
  readonly altitude: number
  readonly wind: Wind
  readonly lid: boolean
  /** Another pot than the file's [m]; null: the file's. */
  readonly potDiameter: number | null
  /** A second batch in a stove that is hot from the first. */
  readonly hot: boolean
  /** The cans have been through a fire before. */
  readonly burntOff: boolean
}

/** A calm, mild day at sea level, with what the file says. */
export const usualConditions: Conditions = {
  fuel: null,
  moisture: null,
  temperature: mildDay.temperature,
  altitude: 0,
  wind: mildDay.wind,
  lid: true,
  potDiameter: null,
  hot: false,
  burntOff: true,
}

/** Air and wind where the stove stands, with the standard atmosphere's pressure. */
export const siteIn = ({ temperature, altitude, wind }: Conditions): Site => ({
  temperature,
  pressure: standardPressure(altitude),
  wind,
})

/**
 * Another fuel lies in the same can, as such fuel usually is: nothing that was measured of the file's own holds of it.
 * Problems: as `fuelOf`.
 */
export const withFuelKind = (stove: Stove, kind: string): Outcome<Stove> => {
  const other = { ...stove, fuel: { kind, level: stove.fuel.level, moisture: null } }
  const found = fuelOf(other)
  return found.ok ? { ok: true, value: other } : found
}

/** A stove that is built for no pot has nothing to change: the pot stands over it and leaves the draught alone. */
export const withPot = (stove: Stove, diameter: number | null): Stove =>
  diameter === null || stove.potDiameter === null ? stove : { ...stove, potDiameter: diameter as Metres }

/** The burn that a stove and its conditions ask for. Problems: of a fuel that does not go into this can. */
export const setupIn = (file: Stove, conditions: Conditions): Outcome<BurnSetup> => {
  const { fuel, moisture, potDiameter, hot, burntOff, lid } = conditions
  const fuelled = fuel === null ? { ok: true as const, value: file } : withFuelKind(file, fuel)
  if (!fuelled.ok) return fuelled
  const stove = withPot(fuelled.value, potDiameter)
  const plain = plainSetup(stove)
  return {
    ok: true,
    value: {
      ...plain,
      site: siteIn(conditions),
      moisture,
      hot,
      burntOff,
      wish: {
        ...plain.wish,
        lid,
        potDiameter: stove.potDiameter ?? potDiameter ?? plain.wish.potDiameter,
      },
    },
  }
}
