import type { Metres, SquareMetres } from '#basis/units.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import { bodyInside, floorHeight } from '#stove/can/ends.ts'
import type { CanPart, Stove } from '#stove/model.ts'

export interface PlacedCan extends PlacedPart {
  readonly part: CanPart
}

/** The fuel where it lies. Heights above the ground. */
export interface FuelBed {
  readonly can: PlacedCan
  /** What carries the fuel: the fuel can itself or a grate in it. */
  readonly carrier: PlacedPart
  readonly floor: Metres
  /** Fuel line: top of the fuel before it is lit. */
  readonly top: Metres
  /** Clear section of the fuel can. */
  readonly section: SquareMetres
}

/** The first can whose role is to hold the fuel; null where none is. */
export const fuelCanOf = (placed: readonly PlacedPart[]): PlacedCan | null => {
  const found = placed.find(({ part }) => part.form === 'can' && part.role === 'fuel can')
  return found === undefined ? null : (found as PlacedCan)
}

/** Upper face of whatever carries the fuel, the highest grate in the can before the can's own floor [m]. */
const carrierOf = (can: PlacedCan, placed: readonly PlacedPart[]): readonly [PlacedPart, number] | null => {
  const grates = placed
    .filter(
      ({ part, base, placement }) =>
        part.form === 'disc' && part.role === 'grate' && placement.host === can.name && base < can.top,
    )
    .sort((one, other) => other.top - one.top)
  const grate = grates[0]
  if (grate !== undefined) return [grate, grate.top]
  const floor = floorHeight(can.part.can)
  return floor === null ? null : [can, can.base + floor]
}

/** Where the fuel lies; null without a fuel can, or where that can has neither a floor nor a grate. */
export const fuelBedOf = (stove: Stove, placed: readonly PlacedPart[]): FuelBed | null => {
  const can = fuelCanOf(placed)
  const carried = can === null ? null : carrierOf(can, placed)
  if (can === null || carried === null) return null
  const [carrier, floor] = carried
  return {
    can,
    carrier,
    floor: floor as Metres,
    top: (floor + stove.fuel.level) as Metres,
    section: ((Math.PI / 4) * bodyInside(can.part.can).value ** 2) as SquareMetres,
  }
}
