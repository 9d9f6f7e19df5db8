import type { Can, CanPart, Opening, RowOpening, Stove, WallHole } from '#stove/model.ts'
import { apart, arcsOn, type Path, type Primitive, pathsOn, roundsOn, type Spot } from './primitive.ts'

/**
 * A wall worked out from the stove alone, and a flat pattern rolled up again into the wall it came from. Nothing
 * here asks the drawings how they were made: bearings are read from the front's pointer, heights from the
 * lower edge, and what is compared are places in space. Millimetres and degrees.
 */

/** Everything must lie within this of where it belongs, in space [mm]. The bar of the house: 0.05. */
export const TRUE = 0.05

const mm = (value: number): number => value * 1000

export interface WallFacts {
  readonly stuff: 'paper' | 'tin'
  /** Edges of the sheet above the part's bottom edge. */
  readonly low: number
  readonly high: number
  /** Outside of the body at those edges. */
  readonly lowDiameter: number
  readonly highDiameter: number
  readonly thickness: number
  readonly rows: readonly RowOpening[]
  readonly cuts: { readonly low: boolean; readonly high: boolean }
}

const rowsOf = (openings: ReadonlyMap<string, Opening>): readonly RowOpening[] =>
  [...openings.values()].filter((opening) => opening.kind === 'row')

const sizeOf = (hole: WallHole): { readonly wide: number; readonly high: number } => {
  switch (hole.shape) {
    case 'round':
      return { wide: mm(hole.diameter), high: mm(hole.diameter) }
    case 'window':
      return { wide: mm(hole.width), high: mm(hole.height) }
    case 'slit':
      return hole.along === 'axis'
        ? { wide: mm(hole.width), high: mm(hole.length) }
        : { wide: mm(hole.length), high: mm(hole.width) }
  }
}

const diameterAt = (can: Can, height: number): number => {
  const { taper, height: tall, bodyDiameter } = can
  if (taper === undefined) return mm(bodyDiameter.value)
  return mm(taper.bottom.value) + ((mm(taper.top.value) - mm(taper.bottom.value)) * height) / mm(tall.value)
}

/** Copy paper; what is glued on; paper shown over the highest opening. As docs/decisions/0006 has them. */
const PAPER = 0.1
const OVER_OPENINGS = 24

export const wallOfCan = ({ can, openings }: CanPart): WallFacts | null => {
  const rows = rowsOf(openings)
  const cuts = { low: can.bottom.kind === 'cut', high: can.top.kind === 'cut' }
  if (rows.length === 0 && !cuts.low && !cuts.high) return null
  const seam = (end: Can['top']): number =>
    end.kind === 'cut' || end.kind === 'drawn' ? 0 : mm(can.seamHeight)
  const low = seam(can.bottom)
  const end = mm(can.height.value) - seam(can.top)
  const used = Math.max(...rows.map((row) => mm(row.height) + sizeOf(row.hole).high / 2)) + OVER_OPENINGS
  const high = cuts.low || cuts.high ? end : Math.min(end, used)
  return {
    stuff: 'paper',
    low,
    high,
    lowDiameter: diameterAt(can, low),
    highDiameter: diameterAt(can, high),
    thickness: PAPER,
    rows,
    cuts,
  }
}

export const wallOfBand = (stove: Stove, name: string): WallFacts => {
  const placement = stove.assembly.find(({ part }) => part === name)
  const [band, host] = [stove.parts.get(name), stove.parts.get(placement?.host ?? '')]
  if (band?.form !== 'band' || host?.form !== 'can' || placement === undefined) throw new Error('no band')
  const raised = mm(placement.raised)
  return {
    stuff: 'tin',
    low: 0,
    high: mm(band.height),
    lowDiameter: diameterAt(host.can, raised),
    highDiameter: diameterAt(host.can, raised + mm(band.height)),
    thickness: mm(band.thickness),
    rows: rowsOf(band.openings),
    cuts: { low: false, high: false },
  }
}

/** A place on the rolled-up wall. */
export interface WallPlace {
  readonly bearing: number
  readonly height: number
}

/** A flat pattern with what it takes to roll it up. */
export interface Rolled {
  readonly place: (spot: Spot) => WallPlace
  readonly distance: (a: WallPlace, b: WallPlace) => number
  /** Unit vector up the wall at a place of the drawing. */
  readonly upAt: (spot: Spot) => Spot
  /** Bearing of the bare end. */
  readonly join: number
  readonly corners: { readonly start: Spot; readonly join: Spot }
}

const fault = (what: string, value: number, wanted: number): void => {
  if (!(Math.abs(value - wanted) <= TRUE)) throw new Error(`${what}: ${value} for ${wanted}`)
}

const frontOf = (items: readonly Primitive[]): Spot => {
  const tips = pathsOn(items, 'dimension').filter(({ points, closed }) => closed && points.length === 3)
  const tip = tips[0]?.points[2]
  if (tip === undefined) throw new Error('no pointer at the front')
  return tip
}

/** The strip's outline: a closed path whose first corner is its lower left. */
const outlineOf = (items: readonly Primitive[], stuff: WallFacts['stuff']): Path => {
  const [found] = pathsOn(items, stuff === 'tin' ? 'cut' : 'paper').filter(
    ({ points, closed }) => closed && points.length >= 6,
  )
  if (found === undefined) throw new Error('no outline')
  return found
}

const rollCylinder = (facts: WallFacts, items: readonly Primitive[]): Rolled => {
  const { points } = outlineOf(items, facts.stuff)
  const [start, join, end] = [points[0] as Spot, points[1] as Spot, points.at(-1) as Spot]
  const round = Math.PI * (facts.lowDiameter + facts.thickness)
  fault('once round', join.x - start.x, round)
  fault('height of the sheet', end.y - start.y, facts.high - facts.low)
  fault('a straight lower edge', join.y, start.y)
  const front = frontOf(items)
  const place = ({ x, y }: Spot): WallPlace => ({
    bearing: ((front.x - x) / round) * 360,
    height: facts.low + y - start.y,
  })
  return {
    place,
    distance: distanceOn(() => (facts.lowDiameter + facts.thickness) / 2),
    upAt: () => ({ x: 0, y: 1 }),
    join: place(start).bearing,
    corners: { start, join },
  }
}

const distanceOn =
  (radiusAt: (height: number) => number) =>
  (a: WallPlace, b: WallPlace): number => {
    const at = ({ bearing, height }: WallPlace): readonly [number, number, number] => {
      const [r, angle] = [radiusAt(height), (bearing * Math.PI) / 180]
      return [r * Math.cos(angle), r * Math.sin(angle), height]
    }
    const [p, q] = [at(a), at(b)]
    return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])
  }

/** A cone: its apex lies below where it widens upwards, above where it narrows. */
const rollCone = (facts: WallFacts, items: readonly Primitive[]): Rolled => {
  const rise = facts.high - facts.low
  const half = (facts.highDiameter - facts.lowDiameter) / 2
  const slant = Math.hypot(rise, half)
  const [sin, cos] = [Math.abs(half) / slant, rise / slant]
  const middle = (diameter: number): number => diameter / 2 + (facts.thickness / 2) * cos
  const lowReach = middle(facts.lowDiameter) / sin
  const way = Math.sign(half)
  const [lower] = arcsOn(items, facts.stuff === 'tin' ? 'cut' : 'paper')
  if (lower === undefined) throw new Error('no lower edge')
  const [one, other] = lower.ends
  const chord = apart(one, other) / 2
  fault('chord of the lower edge', chord, lowReach * Math.sin(Math.PI * sin))
  fault('a level chord', one.y, other.y)
  const sagitta = (radius: number): number => radius - Math.sqrt(Math.max(0, radius ** 2 - chord ** 2))
  fault('sagitta of the lower edge', sagitta(lower.radius), sagitta(lowReach))
  const apex: Spot = {
    x: (one.x + other.x) / 2,
    y: (one.y + other.y) / 2 - way * lowReach * Math.cos(Math.PI * sin),
  }
  const angle = ({ x, y }: Spot): number => Math.atan2(x - apex.x, way * (y - apex.y))
  const front = angle(frontOf(items))
  const place = (spot: Spot): WallPlace => ({
    bearing: (((front - angle(spot)) / sin) * 180) / Math.PI,
    height: facts.low + way * (apart(spot, apex) - lowReach) * cos,
  })
  const radiusAt = (height: number): number =>
    middle(facts.lowDiameter) + ((height - facts.low) * half) / rise
  const start = one.x < other.x ? one : other
  return {
    place,
    distance: distanceOn(radiusAt),
    upAt: (spot) => {
      const reach = apart(spot, apex) * way
      return { x: (spot.x - apex.x) / reach, y: (spot.y - apex.y) / reach }
    },
    join: place(start).bearing,
    corners: { start, join: one.x < other.x ? other : one },
  }
}

const isCone = (facts: WallFacts): boolean => Math.abs(facts.highDiameter - facts.lowDiameter) > 0.001

const rollUp = (facts: WallFacts, items: readonly Primitive[]): Rolled =>
  isCone(facts) ? rollCone(facts, items) : rollCylinder(facts, items)

interface Wanted {
  readonly at: WallPlace
  readonly hole: WallHole
  readonly leftOut: boolean
}

const wantedOf = ({ rows }: WallFacts): readonly Wanted[] =>
  rows.flatMap((row) =>
    Array.from({ length: row.count }, (_, index) => ({
      at: { bearing: row.bearing + (360 * index) / row.count, height: mm(row.height) },
      hole: row.hole,
      leftOut: row.leftOut.includes(index + 1),
    })),
  )

/** Middle, width and height of a rectangle that stands on a wall, and how far it leans from upright [mm over its height]. */
const rectangleOf = (points: readonly Spot[], up: (spot: Spot) => Spot) => {
  const [a, b, c, d] = points as [Spot, Spot, Spot, Spot]
  const middle = { x: (a.x + b.x + c.x + d.x) / 4, y: (a.y + b.y + c.y + d.y) / 4 }
  const sides = [apart(a, b), apart(b, c), apart(c, d), apart(d, a)]
  const way = up(middle)
  // How far each side and end is from running along or across "up".
  const lean = Math.max(
    ...[
      [b, c],
      [d, a],
    ].map(([p, q]) =>
      Math.abs(((q as Spot).x - (p as Spot).x) * way.y - ((q as Spot).y - (p as Spot).y) * way.x),
    ),
    ...[
      [a, b],
      [c, d],
    ].map(([p, q]) =>
      Math.abs(((q as Spot).x - (p as Spot).x) * way.x + ((q as Spot).y - (p as Spot).y) * way.y),
    ),
  )
  return { middle, sides, lean }
}

/** Whether an opening runs over the end of the sheet, where it is drawn in parts. */
const crosses = (facts: WallFacts, { join }: Rolled, { at, hole }: Wanted): boolean => {
  const around = Math.PI * Math.min(facts.lowDiameter, facts.highDiameter)
  const off = ((((at.bearing - join + 180) % 360) + 360) % 360) - 180
  return Math.abs((off / 360) * around) < sizeOf(hole).wide / 2 + 0.2
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= TRUE

/**
 * Compares everything on a flat wall with the stove: every opening there, in its place, of its size, and
 * nothing else. Throws a sentence where something is off; gives how many openings were compared.
 */
export const compareWall = (facts: WallFacts, items: readonly Primitive[]): number => {
  const rolled = rollUp(facts, items)
  const wanted = wantedOf(facts)
  const drilled = roundsOn(items, 'drill')
  const outline = isCone(facts) ? null : outlineOf(items, facts.stuff)
  const windows = pathsOn(items, 'cut').filter(
    (path) => path.points.length === 4 && path.points !== outline?.points && !isOverlap(path, rolled),
  )
  const used = new Set<Primitive>()
  const matches = (spot: Spot, at: WallPlace): boolean => rolled.distance(rolled.place(spot), at) <= TRUE

  for (const one of wanted) {
    const { at, hole, leftOut } = one
    const { wide, high } = sizeOf(hole)
    const parted = crosses(facts, rolled, one)
    const say = (what: string): never => {
      throw new Error(
        `${what} at ${at.bearing.toFixed(2)}°, ${at.height.toFixed(2)} mm up, ${wide.toFixed(2)} by ${high.toFixed(2)}`,
      )
    }
    const layer = leftOut ? 'mark' : 'cut'
    const rectangles = leftOut ? pathsOn(items, 'mark').filter(({ points }) => points.length === 4) : windows
    const rectangle = (fromMiddle: number, tall: number): boolean =>
      rectangles.filter((path) => {
        const { middle, sides, lean } = rectangleOf(path.points, rolled.upAt)
        const up = rolled.upAt(middle)
        const centre = { x: middle.x - up.x * fromMiddle, y: middle.y - up.y * fromMiddle }
        const [width, height] = path.closed || leftOut ? [sides[0], sides[1]] : [sides[1], sides[0]]
        const right = near(width as number, wide) && near(height as number, tall) && matches(centre, at)
        if (!right) return false
        if (path.closed && lean > TRUE) say('an opening that leans')
        used.add(path)
        return true
      }).length > 0
    if (hole.shape === 'round') {
      const circles = leftOut ? roundsOn(items, 'mark') : drilled
      const found = circles.filter(({ centre, radius }) => near(2 * radius, wide) && matches(centre, at))
      for (const circle of found) used.add(circle)
      if (found.length === 0 && !parted) say(`no ${leftOut ? 'crossed-out place' : 'hole'}`)
      continue
    }
    if (hole.shape === 'slit' || hole.foot === 'square' || leftOut) {
      if (!rectangle(0, high) && !parted) say(`no opening on ${layer}`)
      continue
    }
    // A round foot: a half circle of the width at the lower end, the sides and top from its middle up.
    const foot = (spot: Spot): boolean => {
      const up = rolled.upAt(spot)
      const lift = high / 2 - wide / 2
      return matches({ x: spot.x + up.x * lift, y: spot.y + up.y * lift }, at)
    }
    const feet = [...drilled, ...arcsOn(items, 'cut')].filter(
      ({ centre, radius }) => near(2 * radius, wide) && foot(centre),
    )
    for (const one of feet) used.add(one)
    if (feet.length === 0 && !parted) say('no round foot')
    if (!rectangle(wide / 4, high - wide / 2) && !parted) say('no window over its foot')
  }
  for (const circle of drilled) if (!used.has(circle)) throw new Error('a hole that the stove does not have')
  for (const path of windows) if (!used.has(path)) throw new Error('a window that the stove does not have')
  compareEdges(facts, rolled, items)
  return wanted.length
}

/** The slanted overlap of a wall that tapers is a path of four corners too: it begins where the ends meet. */
const isOverlap = ({ points }: Path, { corners }: Rolled): boolean =>
  apart(points[0] as Spot, corners.join) < TRUE

/** Edges: both as far up as they should be all the way, and drawn as cuts where the can is cut off there. */
const compareEdges = (facts: WallFacts, rolled: Rolled, items: readonly Primitive[]): void => {
  const heights = (spots: readonly Spot[]): readonly number[] =>
    spots.map((spot) => rolled.place(spot).height)
  const along = (height: number) =>
    items.filter((item) => {
      if (item.layer !== 'cut') return false
      const ends =
        item.kind === 'arc' ? item.ends : item.kind === 'path' && item.points.length === 2 ? item.points : []
      const [a, b] = ends
      if (a === undefined || b === undefined) return false
      const isRound = Math.abs(Math.abs(rolled.place(a).bearing - rolled.place(b).bearing) - 360) < 0.1
      return isRound && heights(ends).every((one) => near(one, height))
    })
  if (facts.cuts.low && along(facts.low).length !== 1) throw new Error('no cut along the lower edge')
  if (facts.cuts.high && along(facts.high).length !== 1) throw new Error('no cut along the upper edge')
  if (facts.stuff === 'paper' && !facts.cuts.low && !facts.cuts.high)
    if (along(facts.low).length + along(facts.high).length > 0) throw new Error('a cut nobody asked for')
  if (!isCone(facts)) return
  const edges = arcsOn(items, facts.stuff === 'tin' ? 'cut' : 'paper').filter(
    ({ radius }) => radius > facts.lowDiameter,
  )
  for (const { ends } of edges)
    for (const height of heights(ends))
      if (!near(height, facts.low) && !near(height, facts.high)) throw new Error(`an edge at ${height} mm`)
  // The ends of either edge lie on one another when the sheet is rolled up.
  const { start, join } = rolled.corners
  if (rolled.distance(rolled.place(start), rolled.place(join)) > TRUE) throw new Error('the ends do not meet')
}
