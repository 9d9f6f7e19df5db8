import { type PlacedPart, placeParts } from '#stove/assembly/place.ts'
import { potPlace } from '#stove/assembly/pot.ts'
import { type Profile, type ProfilePlate, profileOf } from '#stove/assembly/profile.ts'
import type { Stove } from '#stove/model.ts'
import { openingArea } from '#stove/opening/area.ts'
import { type Chamber, mapChambers, type Throat } from './chambers.ts'
import { number } from './number.ts'
import { type Draft, faceOpenings, throatLink, wallOpening } from './passages.ts'
import type { Hearth, PlanOutcome } from './plan.ts'
import { fail, prune } from './prune.ts'
import { wallStretches } from './walls.ts'

/** The floor the fuel lies on: a grate in the fuel can, or the can's own bottom [m]. */
const floorUnderFuel = (
  stove: Stove,
  fuelCan: PlacedPart,
  profile: Profile,
  placed: readonly PlacedPart[],
) => {
  const grate = placed.find(
    ({ part, placement, name }) =>
      part.form === 'disc' &&
      part.role === 'grate' &&
      placement.host === fuelCan.name &&
      stove.parts.has(name),
  )
  if (grate !== undefined) return profile.plates.find((plate) => plate.part === grate.name) ?? null
  return profile.plates.find((plate) => plate.part === fuelCan.name && plate.face === 'bottom') ?? null
}

/** Name of the pot in the profile; a maker's names have no dot. */
const POT = '.pot'

/** Level, closed ground under the stove. */
const GROUND: ProfilePlate = {
  part: 'ground',
  face: null,
  bore: null,
  innerRadius: 0,
  outerRadius: 10,
  height: 0,
}

/** The pot as a plate, where there is one. */
const potPlate = (stove: Stove, placed: readonly PlacedPart[]): ProfilePlate[] => {
  const pot = potPlace(stove, placed)
  return pot === null
    ? []
    : [
        {
          part: POT,
          face: null,
          bore: null,
          innerRadius: 0,
          outerRadius: pot.diameter / 2,
          height: pot.bottom,
        },
      ]
}

/** Gas that leaves under a pot that stands on rods passes the ring between rim and pot, however wide the can is open. */
const underPot = (t: Throat, stove: Stove, placed: readonly PlacedPart[]): Throat => {
  const pot = potPlace(stove, placed)
  if (pot === null || t.above !== null || t.below === null) return t
  const gap = pot.bottom - pot.rim
  if (gap <= 0 || Math.abs(t.height - pot.rim) > 1e-3) return t
  const ring = 2 * Math.PI * t.below.outerRadius * gap
  return ring < t.area ? { ...t, area: ring, hydraulicDiameter: 2 * gap } : t
}

const vanesOf = (concentrator: PlacedPart | undefined, plate: ProfilePlate | undefined): Hearth['vanes'] => {
  for (const opening of concentrator?.part.openings.values() ?? [])
    if (opening.kind === 'vanes')
      return {
        hubRatio: opening.innerRadius / opening.outerRadius,
        tongueAngle: opening.angle,
        area: openingArea(opening),
        boreArea: Math.PI * (plate?.innerRadius ?? 0) ** 2,
      }
  return null
}

/** Where the flame comes out: the bore of the concentrator, else the mouth of the fuel can. */
const hearthOf = (
  stove: Stove,
  placed: readonly PlacedPart[],
  profile: Profile,
  fuelCan: PlacedPart,
): Hearth => {
  const pot = profile.plates.find((plate) => plate.part === POT)
  const concentrator = placed.find(({ part }) => part.form === 'disc' && part.role === 'concentrator')
  const plate = profile.plates.find(({ part, innerRadius }) => part === concentrator?.name && innerRadius > 0)
  const body = fuelCan.part.form === 'can' ? fuelCan.part.can.bodyDiameter.value : 0
  return {
    height: plate?.height ?? fuelCan.top,
    diameter: plate === undefined ? body : 2 * plate.innerRadius,
    potBottom: pot?.height ?? null,
    potDiameter: pot === undefined ? null : stove.potDiameter,
    vanes: vanesOf(concentrator, plate),
  }
}

/**
 * Turns a stove into a network: one function for every layout.
 */
export const planDraught = (stove: Stove): PlanOutcome => {
  const outcome = placeParts(stove)
  if (!outcome.ok)
    return fail('no fuel can', outcome.problems[0]?.fix ?? 'The assembly does not hold together.')
  const placed = outcome.value
  const fuelCan = placed.find(({ part }) => part.form === 'can' && part.role === 'fuel can')
  if (fuelCan === undefined || fuelCan.part.form !== 'can')
    return fail('no fuel can', 'No part is the fuel can, so there is nowhere to put the fuel.')
  const bare = profileOf(placed)
  const floor = floorUnderFuel(stove, fuelCan, bare, placed)
  if (floor === null)
    return fail(
      'no floor under the fuel',
      `Nothing holds the fuel in ${fuelCan.name}: its bottom is open and no grate stands in it.`,
    )
  const base = floor.height
  const depth = Math.min(stove.fuel.level, fuelCan.top - base)
  const profile: Profile = { walls: bare.walls, plates: [GROUND, ...bare.plates, ...potPlate(stove, placed)] }
  const map = mapChambers(profile, [base, base + depth])

  const bedRadius = fuelCan.part.can.bodyDiameter.value / 2 - fuelCan.part.can.bodyWall
  const bedArea = Math.PI * bedRadius * bedRadius
  const isBed = (chamber: Chamber | null): boolean =>
    chamber !== null &&
    chamber.innerRadius === 0 &&
    chamber.within === fuelCan.name &&
    chamber.bottom >= base - 1e-4 &&
    chamber.top <= base + depth + 1e-4
  const side = (chamber: Chamber | null): Chamber | 'bed' | null => (isBed(chamber) ? 'bed' : chamber)

  const drafts: Draft[] = []
  const bands = placed.filter(({ part }) => part.form === 'band')
  for (const host of placed) {
    if (host.part.form === 'band') continue
    for (const [key, opening] of host.part.openings) {
      if (opening.kind === 'row') {
        const link = wallOpening(key, opening, host, bands)
        if (link === null) continue
        const outside = side(map.beside(host.name, link.height, 'outside'))
        const inside = side(map.beside(host.name, link.height, 'inside'))
        if (outside !== inside) drafts.push({ from: outside, to: inside, link })
        continue
      }
      // A bore is the inner edge of its plate and comes out as a throat.
      if (opening.kind === 'bore') continue
      const plate = profile.plates.find((p) => p.part === host.name && p.face === opening.face)
      if (plate === undefined) continue
      drafts.push(
        ...faceOpenings(key, opening, host, plate, map).map((draft) => ({
          from: side(draft.from as Chamber | null),
          to: side(draft.to as Chamber | null),
          link: draft.link,
        })),
      )
    }
  }
  for (const t of map.throats) {
    const from = side(t.below)
    const to = side(t.above)
    // The fuel's own top is no throat: the bed links are the way up.
    const bedTop = Math.abs(t.height - (base + depth)) < 1e-4
    if (from === to || (bedTop && (from === 'bed' || to === 'bed'))) continue
    drafts.push({ from, to, link: throatLink(underPot(t, stove, placed), placed, fuelCan) })
  }

  const numbered = number(drafts, map, fuelCan, { base, depth, area: bedArea })
  return prune({
    ...numbered,
    walls: wallStretches(profile, map, numbered, isBed),
    hearth: hearthOf(stove, placed, profile, fuelCan),
  })
}
