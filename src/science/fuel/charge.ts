import { bad, good, type Outcome } from '#basis/problem.ts'
import type { Fraction } from '#basis/units.ts'
import type { FuelCharge, FuelPacking, OwnFuel, Stove } from '#stove/model.ts'
import { type BedResistance, standingResistance, tippedResistance } from './bedResistance.ts'
import { fitProblems, voidProblems } from './chargeProblems.ts'
import { finesFactor } from './fines.ts'
import { sauterDiameter, sphericity } from './pieces.ts'
import { type Fuel, fuelTable } from './table.ts'
import { LEAST_SPHERICITY, solidRatio } from './wallEffect.ts'

/**
 * The fuel as it lies in one can: densities and void between that can's walls and at the moisture it is burnt with,
 * and what the bed puts in the way of the air.
 */
export interface ChargedFuel extends Fuel {
  /** As it is burnt, wet basis [1]. */
  readonly moisture: number
  readonly packing: FuelPacking
  /** By weight [1]. */
  readonly fines: number
  /** How many times more the raw bed resists for its fines; in `resistance` already [1]. */
  readonly resistanceFactor: number
  /** Of the raw bed as it lies, fines and packing counted in. */
  readonly resistance: BedResistance
  /** What the maker should know of numbers used outside what they were measured for; sentences. */
  readonly cautions: readonly string[]
}

/** The fuel of the table that a charge names, or the problem that there is none. */
export const tableFuel = (kind: string, field: string): Outcome<Fuel> => {
  const fuel = fuelTable.get(kind)
  if (fuel !== undefined) return good(fuel)
  return bad({
    code: 'fuel.unknown',
    field,
    value: kind,
    allowed: [...fuelTable.keys()].join(', '),
    fix: 'Choose the fuel nearest to yours from this list.',
  })
}

/** Densities go with the water in the pieces: they are taken not to swell [kg/m³]. */
const atMoisture = (density: number, from: number, to: number): number => (density * (1 - from)) / (1 - to)

/** The fuel of the table, with what the maker measured put over it. */
const withOwn = (like: Fuel, own: OwnFuel | undefined): Fuel => {
  if (own === undefined) return like
  const moisture = own.moisture ?? like.moisture
  const pieces = own.pieces ?? like.pieces
  const pieceDensity = own.pieceDensity ?? atMoisture(like.pieceDensity, like.moisture, moisture)
  const bulkDensity = own.bulk?.density ?? (like.bulkDensity / like.pieceDensity) * pieceDensity
  return {
    ...like,
    label: own.name,
    moisture,
    pieces,
    pieceDiameter: own.pieces === null ? like.pieceDiameter : sauterDiameter(own.pieces),
    pieceDensity,
    bulkDensity,
    vesselDiameter: own.bulk?.vesselDiameter ?? like.vesselDiameter,
    voidFraction: 1 - bulkDensity / pieceDensity,
  }
}

/**
 * Share of a can that sticks fill where they are stood in by hand and nothing was weighed [1]: more than stacked
 * branches (0.25–0.45), less than stacked round wood (0.65–0.85) [bib:woodasfuel].
 */
const STANDING_SOLID = 0.55

/**
 * No wall effect for sticks that stand: a row of rods against a wall fills π/4 of its half-diameter strip, no less
 * than rods stood by hand fill elsewhere.
 */
const solidShare = (
  fuel: Fuel,
  own: OwnFuel | undefined,
  packing: FuelPacking,
  bedDiameter: number,
): number => {
  if (packing === 'upright') return own?.bulk == null ? STANDING_SOLID : own.bulk.density / fuel.pieceDensity
  return (fuel.bulkDensity / fuel.pieceDensity) * solidRatio(fuel.pieces, fuel.vesselDiameter, bedDiameter)
}

/** More ash than this sinters into lumps in a hot char bed: common practice, no source [1]. */
const CLINKER_ASH = 0.05

const percent = (share: number): string => `${Number((100 * share).toFixed(1))} %`

const cautionsOf = (fuel: Fuel, charge: FuelCharge): readonly string[] => {
  const { packing = 'tipped', fines = 0, own } = charge
  const cautions: string[] = []
  if (packing === 'tipped' && fuel.pieces.shape === 'block' && sphericity(fuel.pieces) < LEAST_SPHERICITY)
    cautions.push('The pieces are flatter than those whose lie beside a wall was measured.')
  if (packing === 'upright' && own?.bulk == null)
    cautions.push(
      `Sticks stood by hand are taken to fill ${percent(STANDING_SOLID)} of the can: weigh a filling to know.`,
    )
  if (fines > 0 && !fuel.key.includes('pellets'))
    cautions.push('How fines choke a bed was measured on pellets; the same is assumed here.')
  if (fuel.analysis.ash >= CLINKER_ASH)
    cautions.push(
      `The fuel leaves ${percent(fuel.analysis.ash)} of ash, which can clinker and close the floor.`,
    )
  return cautions
}

/**
 * The fuel of a charge as it lies in a can of `bedDiameter` inside [m]. Problems: a fuel that is not in the table,
 * pieces wider than the can, upright packing of what does not stand, a weighed filling that cannot be, fines beyond
 * what was measured.
 */
export const chargeFuel = (charge: FuelCharge, bedDiameter: number): Outcome<ChargedFuel> => {
  const { own, packing = 'tipped', fines = 0 } = charge
  const found = tableFuel(charge.kind, own === undefined ? 'fuel.kind' : 'fuel.own.like')
  if (!found.ok) return found
  const fuel = withOwn(found.value, own)
  const misfits = fitProblems(fuel.pieces, charge, bedDiameter)
  if (misfits.length > 0) return bad(...misfits)
  const solid = solidShare(fuel, own, packing, bedDiameter)
  const voidFraction = 1 - solid
  const impossible = voidProblems(fuel, charge, voidFraction)
  if (impossible.length > 0) return bad(...impossible)
  const moisture = charge.moisture ?? fuel.moisture
  const pieceDensity = atMoisture(fuel.pieceDensity, fuel.moisture, moisture)
  const factor = finesFactor(fines)
  const clean =
    packing === 'upright'
      ? standingResistance(voidFraction, fuel.pieces, Math.min(fuel.pieces.length, charge.level))
      : tippedResistance(voidFraction, fuel.pieceDiameter)
  return good({
    ...fuel,
    moisture,
    pieceDensity,
    bulkDensity: solid * pieceDensity,
    vesselDiameter: bedDiameter,
    voidFraction,
    packing,
    fines,
    resistanceFactor: factor,
    resistance: { viscous: factor * clean.viscous, inertial: factor * clean.inertial },
    cautions: cautionsOf(fuel, charge),
  })
}

/** Inside diameter of the can the fuel lies in [m]; null where no part is the fuel can. */
const fuelCanBore = (stove: Stove): number | null => {
  for (const part of stove.parts.values())
    if (part.form === 'can' && part.role === 'fuel can')
      return part.can.bodyDiameter.value - 2 * part.can.bodyWall
  return null
}

/** The fuel of a stove as it lies in its fuel can, at its own moisture or another, wet basis [1]. Problems: as `chargeFuel`. */
export const fuelOf = (stove: Stove, moisture: number | null = null): Outcome<ChargedFuel> => {
  const found = tableFuel(stove.fuel.kind, stove.fuel.own === undefined ? 'fuel.kind' : 'fuel.own.like')
  if (!found.ok) return found
  const charge = moisture === null ? stove.fuel : { ...stove.fuel, moisture: moisture as Fraction }
  return chargeFuel(charge, fuelCanBore(stove) ?? found.value.vesselDiameter)
}
