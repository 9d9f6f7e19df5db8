import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { type QuantityKey, quantity } from '#basis/quantities.ts'
import { closely } from '#basis/text/bothUnits.ts'
import { formatQuantity } from '#basis/text/format.ts'
import { allowedRange, withinRange } from '#basis/text/range.ts'
import { type Fraction, fraction, type Metres } from '#basis/units.ts'
import { bodyInside, floorHeight } from '#stove/can/ends.ts'
import type { Can, FuelBulk, FuelCharge, FuelPieces, OwnFuel, Part, Placement } from '#stove/model.ts'
import type { FuelRead, OwnFuelRead } from './fuelSchema.ts'
import { type Place, problemAt, within } from './place.ts'

/** Upper side of what the fuel lies on, above the bottom edge of the fuel can [m]. */
const fuelFloor = (
  fuelCan: string,
  placements: readonly Placement[],
  parts: ReadonlyMap<string, Part>,
): number => {
  const grate = placements.find(({ part, host }) => {
    const on = parts.get(part)
    return host === fuelCan && on?.form === 'disc' && on.role === 'grate'
  })
  const can = parts.get(fuelCan)
  const bottom = can?.form === 'can' ? (floorHeight(can.can) ?? 0) : 0
  if (grate === undefined) return bottom
  const disc = parts.get(grate.part)
  const thickness = disc?.form === 'disc' ? disc.thickness : 0
  return (grate.place === 'stands in' ? bottom : 0) + grate.raised + thickness
}

const levelProblems = (
  level: Metres,
  name: string,
  can: Can,
  placements: readonly Placement[],
  parts: ReadonlyMap<string, Part>,
  fuel: Place,
): readonly Problem[] => {
  const room = can.height.value - fuelFloor(name, placements, parts)
  return level <= room
    ? []
    : [
        problemAt(
          within(fuel, 'level'),
          'fuel.above-can',
          `at most ${closely(Math.max(0, room))}, the room in "${name}" above what the fuel lies on`,
          'The level is that of the fuel’s top above the floor it lies on: measure again, or take a taller can.',
        ),
      ]
}

/** A number worked out from several fields, or the problem that it cannot be. */
const workedOut = (
  value: number,
  key: QuantityKey,
  place: Place,
  code: string,
  fix: string,
): Outcome<number> =>
  withinRange(value, quantity(key))
    ? good(value)
    : bad(problemAt(place, code, allowedRange(quantity(key)), fix, formatQuantity(value, key)))

/** Oven-dry method: what the sample lost over what it weighed, so on the wet basis [1]. */
const moistureOf = (dried: NonNullable<OwnFuelRead['dried']>, place: Place): Outcome<Fraction> => {
  const lost = (dried.before - dried.after) / dried.before
  const share = workedOut(
    lost,
    'fuelMoisture',
    place,
    'fuel.too-wet',
    'Weigh again; fuel as wet as that has to be dried before it burns.',
  )
  return share.ok ? good(fraction(share.value)) : share
}

const piecesOf = (read: NonNullable<OwnFuelRead['pieces']>): FuelPieces =>
  'diameter' in read
    ? { shape: 'rod', diameter: read.diameter, length: read.length }
    : { shape: 'block', length: read.length, width: read.width, thickness: read.thickness }

const volumeOf = (pieces: FuelPieces): number =>
  pieces.length *
  (pieces.shape === 'rod' ? (Math.PI / 4) * pieces.diameter ** 2 : pieces.width * pieces.thickness)

const pieceDensityOf = (read: NonNullable<OwnFuelRead['pieces']>, place: Place): Outcome<number | null> => {
  if (read.weighed === undefined) return good(null)
  const { count, weight } = read.weighed
  return workedOut(
    weight / (count * volumeOf(piecesOf(read))),
    'particleDensity',
    within(place, 'weighed', 'weight'),
    'fuel.piece-density',
    'Weight of the pieces over their volume: count them again, and look at their size.',
  )
}

/** A vessel of which only the volume is known is taken to be as wide as it is high [m]. */
const widthOf = (volume: number): Metres => Math.cbrt((4 * volume) / Math.PI) as Metres

const bulkOf = (
  { weight, volume }: NonNullable<OwnFuelRead['filling']>,
  level: Metres,
  can: Can,
  place: Place,
): Outcome<FuelBulk> => {
  const inside = bodyInside(can).value
  const filled = volume ?? (Math.PI / 4) * inside ** 2 * level
  const density = workedOut(
    weight / filled,
    'bulkDensity',
    within(place, 'weight'),
    'fuel.bulk-density',
    volume === undefined
      ? 'Weight of the fuel over the room in the fuel can up to the fuel level: weigh again, or look at "level".'
      : 'Weight of the fuel over the volume: look at both again.',
  )
  if (!density.ok) return density
  return good({ density: density.value, vesselDiameter: volume === undefined ? inside : widthOf(volume) })
}

const ownOf = (
  read: OwnFuelRead,
  level: Metres,
  moistureGiven: Fraction | null,
  can: Can,
  place: Place,
): Outcome<OwnFuel> => {
  const none = good(null)
  const at = (part: 'filling' | 'dried' | 'pieces'): Place => within(place, part)
  const moisture = read.dried === undefined ? good(moistureGiven) : moistureOf(read.dried, at('dried'))
  const bulk = read.filling === undefined ? none : bulkOf(read.filling, level, can, at('filling'))
  const pieceDensity = read.pieces === undefined ? none : pieceDensityOf(read.pieces, at('pieces'))
  if (!moisture.ok || !bulk.ok || !pieceDensity.ok)
    return bad(...[moisture, bulk, pieceDensity].flatMap((one) => (one.ok ? [] : one.problems)))
  const [asLies, asPiece] = [bulk.value?.density ?? null, pieceDensity.value]
  if (asLies !== null && asPiece !== null && asLies >= asPiece)
    return bad(
      problemAt(
        within(at('filling'), 'weight'),
        'fuel.denser-than-pieces',
        `less than ${formatQuantity(asPiece, 'particleDensity')}, which the weighed pieces have`,
        'There is air between pieces, so a filling weighs less than solid wood: weigh both again.',
        formatQuantity(asLies, 'bulkDensity'),
      ),
    )
  return good({
    name: read.name,
    moisture: moisture.value,
    bulk: bulk.value,
    pieces: read.pieces === undefined ? null : piecesOf(read.pieces),
    pieceDensity: asPiece,
  })
}

/** The fuel in its can. Without a fuel can, which is told elsewhere, there is nothing to weigh it in. */
export const readFuel = (
  read: FuelRead,
  placements: readonly Placement[],
  parts: ReadonlyMap<string, Part>,
  place: Place,
): Outcome<FuelCharge | null> => {
  const found = [...parts].find(([, part]) => part.role === 'fuel can')
  if (found === undefined || found[1].form !== 'can') return good(null)
  const [name, { can }] = found
  const given = read.moisture ?? null
  const own =
    read.own === undefined ? undefined : ownOf(read.own, read.level, given, can, within(place, 'own'))
  const problems = [
    ...levelProblems(read.level, name, can, placements, parts, place),
    ...(own?.ok === false ? own.problems : []),
  ]
  if (problems.length > 0 || own?.ok === false) return bad(...problems)
  return good({
    kind: read.own?.like ?? (read.kind as string),
    moisture: own?.value.moisture ?? given,
    level: read.level,
    ...(read.fines === undefined ? {} : { fines: read.fines }),
    ...(read.packing === undefined ? {} : { packing: read.packing }),
    ...(own === undefined ? {} : { own: own.value }),
  })
}
