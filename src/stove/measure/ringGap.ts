import type { Metres, SquareMetres } from '#basis/units.ts'
import type { PlacedPart } from '#stove/assembly/place.ts'
import type { Profile, ProfilePlate, ProfileWall } from '#stove/assembly/profile.ts'

/** The gap between a can and the next wall round it. */
export interface RingGap {
  readonly inner: string
  readonly outer: string
  /** Where the two walls stand side by side, above the ground. */
  readonly from: Metres
  readonly to: Metres
  /** Section between plain walls. */
  readonly section: SquareMetres
  /** Free ring at the top, between the two rims or what lies on them; 0 where it is closed. */
  readonly atTop: SquareMetres
}

interface Ring {
  readonly inner: number
  readonly outer: number
}

const ringArea = ({ inner, outer }: Ring): number => Math.PI * (outer ** 2 - inner ** 2)

/** Tin on tin: sheets that touch are drawn up to this much apart [m]. */
const TOUCHING = 5e-4

const subtract = (free: readonly Ring[], plate: Ring): readonly Ring[] =>
  free.flatMap(({ inner, outer }) => {
    if (plate.outer <= inner || plate.inner >= outer) return [{ inner, outer }]
    const rest: Ring[] = []
    if (plate.inner > inner + TOUCHING) rest.push({ inner, outer: plate.inner })
    if (plate.outer < outer - TOUCHING) rest.push({ inner: plate.outer, outer })
    return rest
  })

/** The bore in a plate's face: what lies round another can has a hole for it. */
const boreRadius = (placed: readonly PlacedPart[], { part, face }: ProfilePlate): number => {
  let radius = 0
  for (const opening of placed.find(({ name }) => name === part)?.part.openings.values() ?? [])
    if (opening.kind === 'bore' && opening.face === face) radius = Math.max(radius, opening.diameter / 2)
  return radius
}

/** What the plates near a height leave of a ring [m²]. */
const freeAt = (ring: Ring, height: number, profile: Profile, placed: readonly PlacedPart[]): number =>
  profile.plates
    .filter((plate) => Math.abs(plate.height - height) <= TOUCHING)
    .map((plate) => ({
      inner: Math.max(plate.innerRadius, boreRadius(placed, plate)),
      outer: plate.outerRadius,
    }))
    .reduce<readonly Ring[]>(subtract, [ring])
    .reduce((sum, free) => sum + ringArea(free), 0)

/**
 * The free section of a gap between two heights, at the tightest place: seams, rings and discs that reach
 * into it count, two that touch count together [m²].
 */
export const tightestSection = (
  gap: Pick<RingGap, 'inner' | 'outer'>,
  from: number,
  to: number,
  profile: Profile,
  placed: readonly PlacedPart[],
): SquareMetres => {
  const ring = ringOf(gap, profile)
  if (ring === null) return 0 as SquareMetres
  const heights = profile.plates
    .map(({ height }) => height)
    .filter((height) => height >= from - TOUCHING && height <= to + TOUCHING)
  return Math.min(
    ringArea(ring),
    ...heights.map((height) => freeAt(ring, height, profile, placed)),
  ) as SquareMetres
}

const ringOf = ({ inner, outer }: Pick<RingGap, 'inner' | 'outer'>, { walls }: Profile): Ring | null => {
  const own = walls.find(({ part }) => part === inner)
  const round = walls.find(({ part }) => part === outer)
  return own === undefined || round === undefined
    ? null
    : { inner: own.outerRadius, outer: round.innerRadius }
}

/** The nearest wall round another over some of its height. */
const roundOf = (own: ProfileWall, walls: readonly ProfileWall[]): ProfileWall | null =>
  walls
    .filter(
      (wall) =>
        wall.part !== own.part &&
        wall.innerRadius >= own.outerRadius - TOUCHING &&
        Math.min(wall.top, own.top) - Math.max(wall.bottom, own.bottom) > TOUCHING,
    )
    .sort((one, other) => one.innerRadius - other.innerRadius)[0] ?? null

/** Every gap between a can and the nearest wall round it, in assembly order. */
export const ringGaps = (profile: Profile, placed: readonly PlacedPart[]): readonly RingGap[] =>
  profile.walls.flatMap((own) => {
    const round = roundOf(own, profile.walls)
    if (round === null || round.innerRadius - own.outerRadius <= TOUCHING) return []
    const from = Math.max(own.bottom, round.bottom)
    const to = Math.min(own.top, round.top)
    const pair = { inner: own.part, outer: round.part }
    const ring = { inner: own.outerRadius, outer: round.innerRadius }
    return [
      {
        ...pair,
        from: from as Metres,
        to: to as Metres,
        section: ringArea(ring) as SquareMetres,
        atTop: freeAt(ring, to, profile, placed) as SquareMetres,
      },
    ]
  })
