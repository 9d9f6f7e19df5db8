import type { Metres } from '#basis/units.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import type { ProfilePlate } from '#stove/assembly/profile.ts'
import type { Opening } from '#stove/model.ts'
import { holeArea, holeCount, hydraulicDiameter } from '#stove/opening/area.ts'
import { placeRow } from '#stove/opening/row.ts'
import type { Chamber, ChamberMap, Throat } from './chambers.ts'
import { damperFreeShare } from './damper.ts'
import type { DraughtLink, Exposure } from './plan.ts'
import { holes, throat } from './resistance.ts'
import { chamberArea, chamberName } from './spaces.ts'

/** A link before its ends have node numbers. */
export interface Draft {
  readonly from: Chamber | 'bed' | null
  readonly to: Chamber | 'bed' | null
  readonly link: Omit<DraughtLink, 'from' | 'to'>
}

const thicknessAt = (placed: PlacedPart, opening: Opening): number => {
  if (placed.part.form !== 'can') return placed.part.thickness
  return opening.kind === 'row' ? placed.part.can.bodyWall : placed.part.can.endWall
}

/** A row of which a damper leaves less than a pinprick is shut; no band lies tighter on its can [m²]. */
const SHUT = 1e-7

/** Row of holes in a wall, behind a damper where one lies over it. */
export const wallOpening = (
  key: string,
  opening: Extract<Opening, { kind: 'row' }>,
  host: PlacedPart,
  bands: readonly PlacedPart[],
): Omit<DraughtLink, 'from' | 'to'> | null => {
  let share = 1
  for (const band of bands) share = Math.min(share, damperFreeShare(opening, host, band) ?? 1)
  const count = holeCount(opening)
  const area = holeArea(opening) * share
  if (count === 0 || area * count < SHUT) return null
  // A partly covered hole keeps its shape's proportion: 4A/P shrinks with the root of the area.
  const diameter = hydraulicDiameter(opening) * Math.sqrt(share)
  return {
    kind: 'opening',
    name: `${key} in ${host.name}`,
    part: host.name,
    opening: key,
    duty: opening.duty,
    height: host.base + opening.height,
    area: area * count,
    hydraulicDiameter: diameter,
    count,
    shape: holes(count, area, diameter, thicknessAt(host, opening)),
    length: 0,
    exposure: {
      kind: 'wall',
      bearings: placeRow(opening, 1 as Metres).map(({ bearing }) => bearing + host.turned),
    },
  }
}

const flatExposure = (below: Chamber | null, above: Chamber | null): Exposure | null =>
  above === null ? { kind: 'top' } : below === null ? { kind: 'under' } : null

/** Openings in a flat face: which chambers they join depends on where in the face they lie. */
export const faceOpenings = (
  key: string,
  opening: Extract<Opening, { kind: 'pattern' | 'vanes' }>,
  host: PlacedPart,
  plate: ProfilePlate,
  map: ChamberMap,
): Draft[] => {
  const radii =
    opening.kind === 'pattern'
      ? opening.holes.map((hole) => hole.radius as number)
      : Array.from({ length: opening.count }, () => (opening.innerRadius + opening.outerRadius) / 2)
  const groups = new Map<string, { below: Chamber | null; above: Chamber | null; count: number }>()
  for (const radius of radii) {
    const sides = map.across(plate, radius)
    if (sides === 'covered' || sides.below === sides.above) continue
    const id = `${sides.below?.id ?? 'open'}>${sides.above?.id ?? 'open'}`
    const group = groups.get(id) ?? { ...sides, count: 0 }
    groups.set(id, { ...group, count: group.count + 1 })
  }
  const one = holeArea(opening)
  const diameter = hydraulicDiameter(opening)
  return [...groups.values()]
    .filter(() => one > 1e-9)
    .map(({ below, above, count }) => ({
      from: below,
      to: above,
      link: {
        kind: 'opening' as const,
        name: `${key} in ${host.name}`,
        part: host.name,
        opening: key,
        duty: opening.duty,
        height: plate.height,
        area: one * count,
        hydraulicDiameter: diameter,
        count,
        shape: throat(one * count, diameter, chamberArea(below), chamberArea(above)),
        length: 0,
        exposure: flatExposure(below, above),
      },
    }))
}

const throatName = ({ below, above, past }: Throat, fuelCan: PlacedPart): string => {
  if (below === null) return above === null ? 'open air' : `open bottom of ${above.within}`
  if (above === null) return `open top of ${below.within}`
  if (past !== null) return `round the rim of ${past.part}`
  return `from ${chamberName(below, fuelCan)} up to ${chamberName(above, fuelCan)}`
}

/** A throat, named after its bore where it has one. */
export const throatLink = (
  t: Throat,
  placed: readonly PlacedPart[],
  fuelCan: PlacedPart,
): Omit<DraughtLink, 'from' | 'to'> => {
  const host = placed.find(({ name }) => name === t.rim?.part)
  const key = t.rim?.bore ?? null
  const bore = key === null || host === undefined ? undefined : host.part.openings.get(key)
  return {
    kind: bore === undefined ? 'throat' : 'opening',
    name: bore === undefined ? throatName(t, fuelCan) : `${key} in ${host?.name}`,
    part: host?.name ?? null,
    opening: bore === undefined ? null : key,
    duty: bore?.duty ?? null,
    height: t.height,
    area: t.area,
    hydraulicDiameter: t.hydraulicDiameter,
    count: 1,
    shape: throat(t.area, t.hydraulicDiameter, chamberArea(t.below), chamberArea(t.above)),
    length: 0,
    exposure: flatExposure(t.below, t.above),
  }
}
