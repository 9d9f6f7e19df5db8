import type { Problem } from '#basis/problem.ts'
import { long } from '#basis/text/bothUnits.ts'
import type { FuelCharge, FuelPacking, FuelPieces } from '#stove/model.ts'
import { MOST_FINES } from './fines.ts'
import { girth, isStick, STICK_SLENDERNESS } from './pieces.ts'
import type { Fuel } from './table.ts'
import { fewestAcross, piecesAcross } from './wallEffect.ts'

const percent = (share: number): string => `${Number((100 * share).toFixed(1))} %`
const density = (value: number): string => `${Math.round(value)} kg/m³`

const piecesField = ({ own }: FuelCharge): string =>
  own === undefined ? 'fuel.kind' : own.pieces === null ? 'fuel.own.like' : 'fuel.own.pieces'

const tooLarge = (pieces: FuelPieces, charge: FuelCharge, across: number): Problem => ({
  code: 'fuel.pieces-too-large',
  field: piecesField(charge),
  value: `pieces ${long(girth(pieces))} wide and ${long(pieces.length)} long, ${across.toFixed(2)} across the can`,
  allowed: `at least ${fewestAcross(pieces)} pieces side by side across the can`,
  fix: 'Break the fuel smaller, or take a wider can.',
})

/** What does not go into this can, or does not stand in it. */
export const fitProblems = (
  pieces: FuelPieces,
  charge: FuelCharge,
  bedDiameter: number,
): readonly Problem[] => {
  const { packing = 'tipped', fines = 0 } = charge
  const problems: Problem[] = []
  const across = packing === 'upright' ? bedDiameter / girth(pieces) : piecesAcross(pieces, bedDiameter)
  if (across < fewestAcross(pieces)) problems.push(tooLarge(pieces, charge, across))
  if (packing === 'upright' && !isStick(pieces))
    problems.push({
      code: 'fuel.not-sticks',
      field: 'fuel.packing',
      value: '"upright"',
      allowed: `"tipped" for pieces less than ${STICK_SLENDERNESS} times as long as they are wide`,
      fix: 'Write "tipped", or burn sticks.',
    })
  if (!(fines >= 0 && fines <= MOST_FINES))
    problems.push({
      code: 'fuel.fines',
      field: 'fuel.fines',
      value: percent(fines),
      allowed: `0 % to ${percent(MOST_FINES)}`,
      fix: 'Sieve the fuel: how it chokes beyond that has not been measured.',
    })
  return problems
}

/**
 * Share of a bed that can be air [1]. Least: rods in a honeycomb, 1 − π/√12, exact; tipped rods and blocks shaken down
 * come to about 0.3, from memory. Most: Ergun's equation was tested to 0.92.
 */
const LEAST_VOID: Readonly<Record<FuelPacking, number>> = {
  upright: 1 - Math.PI / Math.sqrt(12),
  tipped: 0.25,
}
const MOST_VOID = 0.95

/** A filling that cannot have been weighed right; `voidFraction` is what it would leave of air. */
export const voidProblems = (fuel: Fuel, charge: FuelCharge, voidFraction: number): readonly Problem[] => {
  const { packing = 'tipped', own } = charge
  const least = LEAST_VOID[packing]
  if (voidFraction >= least && voidFraction <= MOST_VOID) return []
  // Nothing was weighed: so few pieces lie beside each other that nearly all of the can is air.
  if (own?.bulk == null) return [tooLarge(fuel.pieces, charge, 1)]
  const tooDense = voidFraction < least
  const [low, high] = [(1 - MOST_VOID) * fuel.pieceDensity, (1 - least) * fuel.pieceDensity]
  const weighed = own.pieceDensity === null ? `${fuel.key} weighs` : 'this fuel weighs'
  const ofWood = tooDense ? 'heavy' : 'light'
  return [
    {
      code: tooDense ? 'fuel.too-dense' : 'fuel.too-loose',
      field: 'fuel.own.filling.weight',
      value: density((1 - voidFraction) * fuel.pieceDensity),
      allowed: `${density(Math.ceil(low))} to ${density(Math.floor(high))}, where a piece of ${weighed} ${density(fuel.pieceDensity)}`,
      fix: `Weigh a full vessel, without the vessel, and look at its volume; if the wood itself is ${ofWood}, weigh some pieces too ("weighed").`,
    },
  ]
}
