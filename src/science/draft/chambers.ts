import type { Profile, ProfilePlate, ProfileWall } from '#stove/assembly/profile.ts'

/**
 * The spaces of a stove. The half section is sliced at every height where a wall or a plate begins or ends; in each
 * slice the walls part the radius into bands. Bands that meet over their whole width are one chamber; bands that meet
 * over part of it, or meet the open air, are joined by a throat. So every layout of cans comes out by the same rule.
 */
export interface ChamberMap {
  readonly chambers: readonly Chamber[]
  readonly throats: readonly Throat[]
  /** Chamber beside a wall at a height, on its inner or outer side; null is the open air. */
  readonly beside: (part: string, height: number, side: 'inside' | 'outside') => Chamber | null
  /** Chamber just under or over a plate's plane at a radius; null is the open air; 'covered' behind other tin. */
  readonly across: (
    plate: ProfilePlate,
    radius: number,
  ) => { below: Chamber | null; above: Chamber | null } | 'covered'
}

export interface Chamber {
  readonly id: number
  readonly innerRadius: number
  readonly outerRadius: number
  readonly bottom: number
  readonly top: number
  /** The can whose wall bounds it on the outside. */
  readonly within: string
}

/** Free passage between two spaces one above the other. Null is the open air. */
export interface Throat {
  /** The plate whose bore is its rim, or null where a wall or a plate's outer edge bounds it. */
  readonly rim: ProfilePlate | null
  /** The plate whose outer edge it passes, or null. */
  readonly past: ProfilePlate | null
  readonly below: Chamber | null
  readonly above: Chamber | null
  readonly height: number
  /** [m²] */
  readonly area: number
  /** [m] */
  readonly hydraulicDiameter: number
}

interface Band {
  readonly slice: number
  readonly innerRadius: number
  /** Infinity for the open air. */
  readonly outerRadius: number
  readonly within: string
}

/** Heights closer than this are one height: tin lying on tin [m]. */
const SAME_HEIGHT = 6e-4
/** Gaps narrower than this are tin on tin [m]. */
const CONTACT = 1.5e-4
/** Bands that share at least this much of both their areas are one chamber. */
const SAME_BAND = 0.97

/** A height where the section changes, with the tin that lies on tin there. */
interface Plane {
  readonly height: number
  /** Highest height that still belongs to it: a disc lifts what stands on it by its own thickness. */
  readonly reach: number
}

const planesOf = (heights: readonly number[], plates: readonly ProfilePlate[]): Plane[] => {
  const discs = plates
    .map(({ height, thickness = 0 }) => ({ height, top: height + thickness }))
    .sort((a, b) => a.height - b.height)
  const planes: Plane[] = []
  for (const height of [...heights].sort((a, b) => a - b)) {
    if (height <= (planes[planes.length - 1]?.reach ?? Number.NEGATIVE_INFINITY)) continue
    let reach = height + SAME_HEIGHT
    for (const disc of discs)
      if (disc.height >= height && disc.height <= reach) reach = Math.max(reach, disc.top + SAME_HEIGHT)
    planes.push({ height, reach })
  }
  return planes
}

/** Bands between the walls that stand in a slice. */
const bandsOfSlice = (slice: number, walls: readonly ProfileWall[]): Band[] => {
  const here = [...walls].sort((a, b) => a.outerRadius - b.outerRadius)
  const bands: Band[] = []
  let inner = 0
  for (const wall of here) {
    if (wall.innerRadius > inner)
      bands.push({ slice, innerRadius: inner, outerRadius: wall.innerRadius, within: wall.part })
    inner = wall.outerRadius
  }
  bands.push({ slice, innerRadius: inner, outerRadius: Number.POSITIVE_INFINITY, within: '' })
  return bands
}

/** Parts of [inner, outer] that no plate of this plane covers. */
const uncovered = (
  inner: number,
  outer: number,
  plates: readonly ProfilePlate[],
): { inner: number; outer: number }[] => {
  let free = [{ inner, outer }]
  for (const plate of plates) {
    free = free.flatMap((piece) => {
      if (plate.outerRadius <= piece.inner || plate.innerRadius >= piece.outer) return [piece]
      const rest: { inner: number; outer: number }[] = []
      if (plate.innerRadius > piece.inner) rest.push({ inner: piece.inner, outer: plate.innerRadius })
      if (plate.outerRadius < piece.outer) rest.push({ inner: plate.outerRadius, outer: piece.outer })
      return rest
    })
  }
  return free.filter((piece) => piece.outer - piece.inner > CONTACT)
}

const ringArea = (inner: number, outer: number): number => Math.PI * (outer * outer - inner * inner)

/**
 * Finds chambers and throats. `cutsAt` adds slicing heights in the middle of the stove (the bottom and top of
 * the fuel bed), so that no chamber on the axis reaches across them.
 */
export const mapChambers = (profile: Profile, cutsAt: readonly number[] = []): ChamberMap => {
  const planes = planesOf(
    [
      ...profile.walls.flatMap((wall) => [wall.bottom, wall.top]),
      ...profile.plates.map((plate) => plate.height),
      ...cutsAt,
    ],
    profile.plates,
  )
  const heights = planes.map(({ height }) => height)
  const planeOf = (height: number): number => planes.findIndex(({ reach }) => height <= reach)
  const platesAt = heights.map((_, plane) =>
    profile.plates.filter((plate) => planeOf(plate.height) === plane),
  )
  const cutPlanes = new Set(cutsAt.map(planeOf))

  const slices: Band[][] = []
  for (let s = 0; s + 1 < heights.length; s++) {
    const here = profile.walls.filter((wall) => planeOf(wall.bottom) <= s && planeOf(wall.top) > s)
    slices.push(bandsOfSlice(s, here))
  }

  // Union of bands into chambers.
  const parent = new Map<Band, Band>()
  const rootOf = (band: Band): Band => {
    let root = band
    for (let next = parent.get(root); next !== undefined && next !== root; next = parent.get(root))
      root = next
    return root
  }
  const meetings: { lower: Band; upper: Band; plane: number; inner: number; outer: number }[] = []
  const openAir: Band = { slice: -1, innerRadius: 0, outerRadius: Number.POSITIVE_INFINITY, within: '' }
  for (let plane = 0; plane < heights.length; plane++) {
    const below = slices[plane - 1] ?? [openAir]
    const above = slices[plane] ?? [openAir]
    const plates = platesAt[plane] ?? []
    for (const lower of below) {
      for (const upper of above) {
        const inner = Math.max(lower.innerRadius, upper.innerRadius)
        const outer = Math.min(lower.outerRadius, upper.outerRadius)
        if (outer - inner <= CONTACT || outer === Number.POSITIVE_INFINITY) continue
        const pieces = uncovered(inner, outer, plates)
        if (pieces.length === 0) continue
        const free = pieces.reduce((sum, piece) => sum + ringArea(piece.inner, piece.outer), 0)
        const bothInside = Number.isFinite(lower.outerRadius) && Number.isFinite(upper.outerRadius)
        const same =
          bothInside &&
          !(lower.innerRadius === 0 && cutPlanes.has(plane)) &&
          free >= SAME_BAND * ringArea(lower.innerRadius, lower.outerRadius) &&
          free >= SAME_BAND * ringArea(upper.innerRadius, upper.outerRadius)
        if (same) parent.set(rootOf(upper), rootOf(lower))
        else for (const piece of pieces) meetings.push({ lower, upper, plane, ...piece })
      }
    }
  }

  const members = new Map<Band, Band[]>()
  for (const band of slices.flat()) {
    if (!Number.isFinite(band.outerRadius)) continue
    const root = rootOf(band)
    members.set(root, [...(members.get(root) ?? []), band])
  }
  const chamberOfRoot = new Map<Band, Chamber>()
  for (const [root, bands] of members) {
    const first = Math.min(...bands.map((band) => band.slice))
    const last = Math.max(...bands.map((band) => band.slice))
    chamberOfRoot.set(root, {
      id: chamberOfRoot.size,
      innerRadius: root.innerRadius,
      outerRadius: root.outerRadius,
      bottom: heights[first] as number,
      top: heights[last + 1] as number,
      within: root.within,
    })
  }
  const chamberOf = (band: Band | undefined): Chamber | null =>
    band === undefined || !Number.isFinite(band.outerRadius)
      ? null
      : (chamberOfRoot.get(rootOf(band)) ?? null)

  const throats: Throat[] = []
  for (const { lower, upper, plane, inner, outer } of meetings) {
    const below = chamberOf(lower)
    const above = chamberOf(upper)
    if (below === above) continue
    const rim = (platesAt[plane] ?? []).find(
      (plate) => plate.bore !== null && Math.abs(plate.innerRadius - outer) < CONTACT,
    )
    throats.push({
      below,
      above,
      rim: rim ?? null,
      past: (platesAt[plane] ?? []).find((plate) => Math.abs(plate.outerRadius - inner) < CONTACT) ?? null,
      height: heights[plane] as number,
      area: ringArea(inner, outer),
      // 4A/P of a ring, or the diameter of a disc.
      hydraulicDiameter: 2 * (outer - inner),
    })
  }

  const sliceAt = (height: number): number => {
    for (let s = 0; s < slices.length; s++)
      if (height >= (heights[s] as number) && height < (heights[s + 1] as number)) return s
    return -1
  }
  const bandAt = (slice: number, radius: number): Band | undefined =>
    slices[slice]?.find((band) => radius >= band.innerRadius && radius < band.outerRadius)

  return {
    chambers: [...chamberOfRoot.values()],
    throats,
    beside: (part, height, side) => {
      const wall = profile.walls.find((w) => w.part === part && w.bottom <= height && height <= w.top)
      const slice = sliceAt(height)
      if (wall === undefined || slice < 0) return null
      const radius = side === 'inside' ? wall.innerRadius - 1e-6 : wall.outerRadius + 1e-6
      return chamberOf(bandAt(slice, radius))
    },
    across: (plate, radius) => {
      const plane = planeOf(plate.height)
      const hidden = (platesAt[plane] ?? []).some(
        (other) =>
          other !== plate &&
          other.part !== plate.part &&
          radius > other.innerRadius &&
          radius < other.outerRadius,
      )
      if (hidden) return 'covered'
      return {
        below: chamberOf(bandAt(plane - 1, radius)),
        above: chamberOf(bandAt(plane, radius)),
      }
    },
  }
}
