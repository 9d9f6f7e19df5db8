import { BadInput } from '#basis/problem.ts'
import type { CubicMetres, Kilograms, Metres } from '#basis/units.ts'
import type { BandPart, CanPart, DiscPart, Part, Placement } from '#stove/model.ts'
import { allStowages, type BandStowage, type LaidBand } from './bandStowage.ts'
import type { Bundle, BundleStep } from './bundle.ts'
import { bundleSentences, rattleOf } from './bundleSentence.ts'
import { lowestNesting, type Nesting, type Piece, restsOn } from './nesting.ts'
import { bandLength, partMass } from './partMass.ts'
import { packedPlay } from './rattle.ts'
import { canSolid, discSolid, type Solid, type SolidSize, upsideDown, widestRadius } from './solid.ts'

/** More would take minutes, and no stove of cans has as many. */
const MOST_PARTS = 12

interface Kit {
  readonly cans: ReadonlyMap<string, CanPart>
  readonly discs: ReadonlyMap<string, DiscPart>
  readonly bands: readonly LaidBand[]
}

const kitOf = (parts: ReadonlyMap<string, Part>, assembly: readonly Placement[]): Kit => {
  const cans = new Map<string, CanPart>()
  const discs = new Map<string, DiscPart>()
  const strips: [string, BandPart][] = []
  for (const [name, part] of parts)
    if (part.form === 'can') cans.set(name, part)
    else if (part.form === 'disc') discs.set(name, part)
    else strips.push([name, part])
  const widestBody = Math.max(0, ...[...cans.values()].map(({ can }) => can.bodyDiameter.value)) as Metres
  const bands = strips.map(([name, part]) => {
    const host = assembly.find(({ part: placed }) => placed === name)?.host ?? null
    const wornOn = host !== null && cans.has(host) ? host : null
    const body = wornOn === null ? widestBody : (cans.get(wornOn)?.can.bodyDiameter.value ?? widestBody)
    return { name, part, wornOn, length: bandLength(body, part.thickness) }
  })
  return { cans, discs, bands }
}

/** Both ways up, or one where turning changes nothing. */
const waysOf = (solid: Solid): readonly Solid[] => {
  const turned = upsideDown(solid)
  const keys = ({ rings }: Solid): string =>
    rings
      .map(({ inner, outer, bottom, top }) => [inner, outer, bottom, top].map((at) => at.toFixed(9)).join())
      .sort()
      .join(';')
  return keys(turned) === keys(solid) ? [solid] : [solid, turned]
}

const piecesOf = (
  { cans, discs }: Kit,
  stowages: readonly BandStowage[],
  size: SolidSize,
): readonly Piece[] => [
  ...[...cans].map(([name, part]) => {
    const solid = canSolid(part, size)
    const worn = stowages.flatMap((stowage) => (stowage.can === name ? [stowage.ring] : []))
    return { name, ways: waysOf({ ...solid, rings: [...solid.rings, ...worn] }) }
  }),
  ...[...discs].map(([name, part]) => ({ name, ways: waysOf(discSolid(part, size)) })),
  ...stowages.flatMap((stowage) =>
    stowage.where === 'alone' ? [{ name: stowage.band, ways: [stowage.hoop] }] : [],
  ),
]

/** Across the widest piece [m]; on one axis it is the bundle’s own width. */
const widthOf = (pieces: readonly Piece[]): number =>
  2 * Math.max(...pieces.flatMap(({ ways }) => ways.map(widestRadius)))

const cylinder = (diameter: number, height: number): number => (Math.PI / 4) * diameter ** 2 * height

const checkKit = (parts: ReadonlyMap<string, Part>): void => {
  if (parts.size >= 1 && parts.size <= MOST_PARTS) return
  throw new BadInput([
    {
      code: 'packing.parts',
      field: 'parts',
      value: String(parts.size),
      allowed: `1 to ${MOST_PARTS} parts`,
      fix: 'Pack a stove with fewer parts, or pack some of them by themselves.',
    },
  ])
}

interface Packed {
  readonly stowages: readonly BandStowage[]
  readonly nesting: Nesting
  readonly diameter: number
  readonly volume: number
}

const describe = (parts: ReadonlyMap<string, Part>, kit: Kit, packed: Packed): Bundle => {
  const { stowages, nesting } = packed
  const pieces = piecesOf(kit, stowages, 'largest tin')
  const nominal = piecesOf(kit, stowages, 'nominal')
  const solidsOf = (sized: readonly Piece[]) =>
    nesting.order.map(({ piece, way }) => (sized[piece]?.ways[way] ?? sized[piece]?.ways[0]) as Solid)
  const solids = solidsOf(pieces)
  const plays = packedPlay(nesting, solids, solidsOf(nominal))
  const nameAt = (place: number | null): string | null =>
    place === null ? null : (pieces[nesting.order[place]?.piece ?? -1]?.name ?? null)
  const steps = nesting.order.map(
    ({ way, base }, place): BundleStep => ({
      part: nameAt(place) as string,
      wayUp: way === 0 ? 'as it stands' : 'upside down',
      base: base as Metres,
      inside: nameAt(plays[place]?.heldBy ?? null),
      restsOn: nameAt(restsOn(nesting.order, solids, place)),
    }),
  )
  const bands = stowages.map(({ band, where, can }) => ({ band, where, can }))
  const lengths = new Map(kit.bands.map(({ name, length }) => [name, length]))
  const mass = [...parts].reduce(
    (sum, [name, part]) => sum + partMass(part, (lengths.get(name) ?? 0) as Metres),
    0,
  )
  return {
    steps,
    bands,
    diameter: packed.diameter as Metres,
    height: nesting.height as Metres,
    volume: packed.volume as CubicMetres,
    mass: mass as Kilograms,
    rattles: plays.flatMap((play) => rattleOf(play, steps)),
    sentences: bundleSentences(steps, bands),
  }
}

/**
 * The smallest bundle of a stove’s parts: height, diameter, volume and mass [m, m, m3, kg].
 *
 * Parts stand on one axis, either way up, each lowered in turn from above until it touches; bands are clasped
 * round a can or curled inside one. Over all orders, ways up and places of bands the smallest envelope is
 * found exactly. Side by side, tilted or forced packings are not looked at. Diameters are taken at the end of
 * their tolerance that makes it tightest, heights as measured. `assembly` says which can a band belongs on;
 * without it a band is as long as the widest can is round. Throws `BadInput` for no parts and for more than 12.
 */
export const smallestBundle = (
  parts: ReadonlyMap<string, Part>,
  assembly: readonly Placement[] = [],
): Bundle => {
  checkKit(parts)
  const kit = kitOf(parts, assembly)
  let best: Packed | null = null
  for (const stowages of allStowages(kit.bands, kit.cans)) {
    const pieces = piecesOf(kit, stowages, 'largest tin')
    const diameter = widthOf(pieces)
    // Lower than this it is smaller than the best bundle so far.
    const below: number = best === null ? Number.POSITIVE_INFINITY : best.volume / cylinder(diameter, 1)
    const nesting = lowestNesting(pieces, below)
    if (nesting !== null) best = { stowages, nesting, diameter, volume: cylinder(diameter, nesting.height) }
  }
  if (best === null) throw new RangeError('A part has a length that is not a number.')
  return describe(parts, kit, best)
}
