import { toMillimetres } from '#basis/units.ts'
import { isSeamed } from '#stove/can/ends.ts'
import type { BandPlace, Bundle } from '#stove/fit/bundle.ts'
import { smallestBundle } from '#stove/fit/packing.ts'
import type { CanPart, Stove } from '#stove/model.ts'
import type { PartSolid } from './part.ts'
import { lowest, raised, roomOf, type Standing, upsideDown } from './poses.ts'

const standingAt = (solid: PartSolid, isTurned: boolean, base: number): Standing => {
  const own = roomOf(solid)
  const way = isTurned ? upsideDown(own) : own
  const z = base - lowest(way)
  return { solid, pose: { upsideDown: isTurned, z }, rings: raised(way, z), lift: 0 }
}

/** Bottom edge of a band on or in the can that carries it, in the can's own frame [mm]. */
const bandBase = (stove: Stove, { band, where }: BandPlace, { can }: CanPart): number => {
  const worn = stove.assembly.find(({ part, place }) => part === band && place === 'slips over')
  if (where === 'round' && worn !== undefined) return toMillimetres(worn.raised)
  const seam = isSeamed(can.bottom) ? toMillimetres(can.seamHeight) : 0
  const floor =
    can.bottom.kind === 'plain' ? toMillimetres(can.bottom.countersink) + toMillimetres(can.endWall) : 0
  return where === 'round' ? seam : Math.max(floor, seam)
}

/**
 * A band clasped round or curled up inside another can is rolled to that can's size. Only its diameter changes; where the
 * strip is longer than the can is round, the turns that lie on each other are drawn as one.
 */
const carriedRadius = ({ where }: BandPlace, { can }: CanPart, thickness: number): number => {
  const body = toMillimetres(can.bodyDiameter.value) / 2
  return where === 'round' ? body : body - toMillimetres(can.bodyWall) - thickness
}

/** A solid of a band rolled to another radius. */
export type Rolled = (name: string, radius: number) => PartSolid

/** The smallest bundle the parts make: what packs into what, which way up [mm]. Diameters and heights as measured. */
export const packed = (
  stove: Stove,
  solids: readonly PartSolid[],
  rolled: Rolled,
  bundle: Bundle = smallestBundle(stove.parts, stove.assembly),
): readonly Standing[] => {
  const solid = (name: string): PartSolid => solids.find((one) => one.name === name) as PartSolid
  const cans = bundle.steps.map(({ part, wayUp, base }) =>
    standingAt(solid(part), wayUp === 'upside down', toMillimetres(base)),
  )
  const bands = bundle.bands.flatMap((place): readonly Standing[] => {
    const host = cans.find((one) => one.solid.name === place.can)
    const band = stove.parts.get(place.band)
    if (host?.solid.part.form !== 'can' || band?.form !== 'band') return []
    const can = host.solid.part
    const radius = carriedRadius(place, can, toMillimetres(band.thickness))
    const own = rolled(place.band, radius)
    const base = bandBase(stove, place, can)
    const flip = host.pose.upsideDown === true
    const z = (host.pose.z ?? 0) + (flip ? -base : base)
    const way = flip ? upsideDown(own.rings) : own.rings
    return [{ solid: own, pose: { upsideDown: flip, z }, rings: raised(way, z), lift: 0 }]
  })
  return [...cans, ...bands]
}
