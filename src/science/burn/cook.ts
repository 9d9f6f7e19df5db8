import type { Coefficients } from '#science/coefficients.ts'
import type { Hearth } from '#science/draft/plan.ts'
import { AIR, specificHeat } from '#science/gas/blend.ts'
import { CHAR_EMISSIVITY } from '#science/heat/emissivity.ts'
import { type Pot, potHeatCapacity } from '#science/pot/pot.ts'
import { type PotHeat, potHeat } from '#science/pot/potHeat.ts'
import { saturationTemperature } from '#science/pot/saturation.ts'
import type { Skirt } from '#science/pot/skirt.ts'
import { evaporationHeat, waterDensity, waterHeat } from '#science/pot/water.ts'
import type { Site } from '#science/site.ts'
import { feltWind } from '#science/weather/wind.ts'
import type { BurnStep } from './record.ts'

/** A pot of water over a burn. */
export interface Cooking {
  readonly pot: Pot
  /** [kg] */
  readonly water: number
  /** Of water and pot when put on [K]. */
  readonly start: number
  readonly skirt: Skirt | null
  /** When it is put on and, where it is, taken off, in seconds from lighting. */
  readonly on: readonly { readonly from: number; readonly to: number }[]
}

export interface Cooked {
  /** Water temperature at the end of every step of the burn [K]. */
  readonly waterTemperature: readonly number[]
  /** From the pot's going on to the boil, lighting to the boil [s]; null if it never boils. */
  readonly timeToBoil: number | null
  readonly boilsAt: number | null
  /** Boiling temperature there [K]. */
  readonly boilingPoint: number
  /** Heat that warmed water and what of it turned to steam [J]; kept below boiling counts as warmth only. */
  readonly heatToWater: number
  readonly heatToSteam: number
  readonly waterLeft: number
  /** When the pot is as good as dry, in seconds from lighting [s]; null if water is left. */
  readonly dryAt: number | null
  /** Part of the heat by way of bottom convection, bottom radiation and side [J]. */
  readonly gained: { readonly bottom: number; readonly radiation: number; readonly side: number }
}

/** Humidity of the air where none is given; from memory: a mild day [1]. */
const HUMIDITY = 0.6

/** Substeps within a step of the burn, so that water near boiling is followed closely [s]. */
const LONGEST = 10

/** With so little of the water left the bottom is bare in places: not followed further [1]. */
const DRY = 0.02

/**
 * Follows a pot over a burn already worked out. The pot does not act back on the draught: the heat it takes leaves gas
 * that has passed the flame already. That the pot closes the stand's top is in the burn itself.
 */
export const cook = (
  steps: readonly BurnStep[],
  cooking: Cooking,
  hearth: Hearth,
  site: Site,
  coefficients: Coefficients,
): Cooked => {
  const { pot, skirt } = cooking
  const boilingPoint = saturationTemperature(site.pressure)
  const capacity = potHeatCapacity(pot)
  const air = { temperature: site.temperature, pressure: site.pressure, humidity: HUMIDITY }
  const gap = Math.max(0.005, (hearth.potBottom ?? hearth.height + 0.05) - hearth.height)
  const firstOn = cooking.on[0]?.from ?? 0

  let temperature = cooking.start
  let water = cooking.water
  let heatToWater = 0
  let heatToSteam = 0
  let boilsAt: number | null = null
  let dryAt: number | null = null
  const gained = { bottom: 0, radiation: 0, side: 0 }
  const waterTemperature: number[] = []

  const heatNow = (step: BurnStep): PotHeat =>
    potHeat(
      {
        pot,
        waterMass: water,
        waterTemperature: temperature,
        gas: {
          massFlow: step.hearth.flueGas,
          temperature: step.outletTemperature,
          specificHeat: specificHeat(AIR, (step.outletTemperature + temperature) / 2),
        },
        openingDiameter: hearth.diameter,
        gap,
        flame: { radiated: step.hearth.flameRadiation, height: step.hearth.flameHeight },
        bodies:
          step.hearth.charGlow > 0
            ? [
                {
                  temperature: step.hearth.charTemperature,
                  area: (Math.PI / 4) * hearth.diameter ** 2,
                  emissivity: CHAR_EMISSIVITY,
                  viewOfPot: 0.5,
                },
              ]
            : [],
        skirt,
        air,
        windSpeed: feltWind(site.wind, coefficients.windScreen).speed,
      },
      coefficients,
    )

  for (const step of steps) {
    const pieces = Math.max(1, Math.ceil(step.duration / LONGEST))
    const dt = step.duration / pieces
    for (let i = 0; i < pieces; i++) {
      const now = step.time + (i + 0.5) * dt
      if (!cooking.on.some(({ from, to }) => now >= from && now < to)) continue
      if (water <= DRY * cooking.water) {
        dryAt ??= now - dt / 2
        continue
      }
      const heat = heatNow(step)
      gained.bottom += heat.bottomConvection * dt
      gained.radiation += heat.bottomRadiation * dt
      gained.side += heat.side * dt
      const net = heat.bottomConvection + heat.bottomRadiation + heat.side - heat.loss
      // Steam that leaves below boiling is a loss that still counts as heat into steam.
      heatToSteam += heat.evaporation * dt
      water -= heat.steam * dt
      const thermal = water * waterHeat(temperature) + capacity
      const warmer = temperature + (net * dt) / thermal
      if (warmer < boilingPoint) {
        heatToWater += water * waterHeat(temperature) * (warmer - temperature)
        temperature = warmer
        continue
      }
      const toBoil = Math.max(0, (thermal * (boilingPoint - temperature)) / Math.max(net, 1e-9))
      if (boilsAt === null) boilsAt = step.time + i * dt + Math.min(dt, toBoil)
      heatToWater += water * waterHeat(temperature) * (boilingPoint - temperature)
      const boiled = net * (dt - Math.min(dt, toBoil))
      heatToSteam += boiled
      water -= boiled / evaporationHeat(boilingPoint)
      temperature = boilingPoint
    }
    waterTemperature.push(temperature)
  }
  return {
    waterTemperature,
    timeToBoil: boilsAt === null ? null : boilsAt - firstOn,
    boilsAt,
    boilingPoint,
    heatToWater,
    heatToSteam,
    waterLeft: water,
    dryAt,
    gained,
  }
}

/** A plain aluminium pot with a lid for so much water: as wide as the stove is built for, filled to four fifths. */
export const potFor = (diameter: number, water: number, lid: boolean): Pot => {
  const wall = 0.001
  const inside = (Math.PI / 4) * (diameter - 2 * wall) ** 2
  const height = Math.max(0.06, water / waterDensity(293.15) / inside / 0.8 + wall)
  return { diameter, height, lid, wall, metal: 'aluminium' }
}
