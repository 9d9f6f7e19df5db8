import { type Metres, type Millimetres, toMillimetres } from '#basis/units.ts'
import type { PatternOpening } from '#stove/model.ts'
import { around, type Box, grow } from '../box.ts'
import type { Drawing, Point, Shape } from '../drawing.ts'
import { type Label, labelShapes, openRoom, type Room, type Spot } from '../lettering/room.ts'
import { NOTE_SIZE } from '../lettering/sizes.ts'
import type { FaceOpening, FlatDisc } from './disc.ts'
import { faceNote, ringRadii } from './faceWording.ts'
import { CROSS_BEYOND, drilledHole } from './hole.ts'
import { flatVanes, type Polar, vaneShapes } from './vanes.ts'
import { bearingText, both } from './wording.ts'

/** Bare paper round everything [mm]. */
const MARGIN = 2
/** Under the disc, for the word FRONT where it has no room inside [mm]. */
const UNDER_DISC = 5
/** Arms of the cross in the middle of a disc [mm]. */
const CENTRE_ARM = 4

/** The front is at the foot of the drawing, as someone who stands before the stove has it. */
const polarAbout =
  (centre: Point, seen: FlatDisc['seen']): Polar =>
  (radius, bearing) => {
    const angle = (bearing * Math.PI) / 180
    const x = radius * Math.sin(angle)
    // Clockwise from above runs from the front to the left of someone who faces it.
    return { x: centre.x + (seen === 'from above' ? -x : x), y: centre.y - radius * Math.cos(angle) }
  }

const circle = (layer: 'mark' | 'cut' | 'paper', centre: Point, radius: number): Shape => ({
  kind: 'circle',
  layer,
  centre,
  radius,
})

const patternHoles = (pattern: PatternOpening, at: Polar, room: Room): readonly Shape[] => {
  const radius = toMillimetres(pattern.diameter) / 2
  return pattern.holes.flatMap((hole) => {
    const centre = at(toMillimetres(hole.radius), hole.bearing)
    room.blockCircle(centre, radius + CROSS_BEYOND)
    return drilledHole(centre, radius)
  })
}

const openingShapes = (opening: FaceOpening, at: Polar, room: Room): readonly Shape[] => {
  switch (opening.kind) {
    case 'pattern':
      return patternHoles(opening, at, room)
    case 'bore': {
      const radius = toMillimetres(opening.diameter) / 2
      room.blockCircle(at(0, 0), radius)
      return [circle('cut', at(0, 0), radius)]
    }
    case 'vanes': {
      const vanes = flatVanes(opening, at)
      for (const { cut } of vanes) room.block(around(cut))
      return vanes.flatMap(vaneShapes)
    }
  }
}

/** A radius on its circle, on one line or two. */
const letterRadius = (radius: Metres, spots: readonly Point[], room: Room): readonly Shape[] => {
  const text = `r ${both(radius)}`
  const onOne = room.letter({ lines: [text], size: NOTE_SIZE, layer: 'dimension' }, spots)
  if (onOne.length > 0) return onOne
  const inTwo = text.replace(/\s\(/, '\n(').split('\n')
  return room.letter({ lines: inTwo, size: NOTE_SIZE, layer: 'dimension' }, spots)
}

/** Bolt circles, each with its radius where there is room on it. */
const boltCircles = (disc: FlatDisc, at: Polar, room: Room): readonly Shape[] =>
  disc.openings.flatMap(({ opening }) =>
    ringRadii(opening).flatMap((radius) => {
      const millimetres = toMillimetres(radius)
      const spots = Array.from({ length: 72 }, (_, index) => at(millimetres, 180 + index * 5))
      return [circle('mark', at(0, 0), millimetres), ...letterRadius(radius, spots, room)]
    }),
  )

/** How vanes are bent, said on the disc itself where there is room: outside their ring, else inside it. */
const bendLabels = (disc: FlatDisc, at: Polar, room: Room): readonly Shape[] =>
  disc.openings.flatMap(({ opening }) => {
    if (opening.kind !== 'vanes' || opening.angle === 0) return []
    const radii = [3, 4, 5, 7].flatMap((away) => [
      toMillimetres(opening.outerRadius) + away,
      toMillimetres(opening.innerRadius) - away,
    ])
    const centre = at(0, 0)
    // Along the ring, its head outwards on the upper half and inwards on the lower one.
    const along = (radius: number, bearing: number): Spot => {
      const spot = at(radius, bearing)
      const angle = (Math.atan2(spot.y - centre.y, spot.x - centre.x) * 180) / Math.PI
      return { ...spot, turn: spot.y >= centre.y - 1e-9 ? angle - 90 : angle + 90 }
    }
    const spots = radii
      .filter((radius) => radius > 0)
      .flatMap((radius) => Array.from({ length: 72 }, (_, index) => along(radius, 180 + index * 5)))
    return room.letter(
      { lines: [`bend ${opening.bend} ${bearingText(opening.angle)}`], size: NOTE_SIZE },
      spots,
    )
  })

const centreCross = (centre: Point): readonly Shape[] => [
  {
    kind: 'line',
    layer: 'dimension',
    from: { x: centre.x - CENTRE_ARM, y: centre.y },
    to: { x: centre.x + CENTRE_ARM, y: centre.y },
  },
  {
    kind: 'line',
    layer: 'dimension',
    from: { x: centre.x, y: centre.y - CENTRE_ARM },
    to: { x: centre.x, y: centre.y + CENTRE_ARM },
  },
]

/** Ticks every 30° inside the edge, a pointer at the front. */
const edgeMarks = (radius: number, at: Polar): readonly Shape[] => [
  ...Array.from({ length: 11 }, (_, index): Shape => {
    const bearing = (index + 1) * 30
    return { kind: 'line', layer: 'dimension', from: at(radius - 2.5, bearing), to: at(radius, bearing) }
  }),
  {
    kind: 'polyline',
    layer: 'dimension',
    closed: true,
    points: [at(radius - 4, 0), at(radius, 0.001 + 103 / radius), at(radius, -103 / radius)],
  },
]

const discShapes = (disc: FlatDisc, centre: Point): readonly Shape[] => {
  const at = polarAbout(centre, disc.seen)
  const bounds = {
    left: centre.x - disc.radius,
    right: centre.x + disc.radius,
    bottom: centre.y - disc.radius,
    top: centre.y + disc.radius,
  }
  const inside = ({ left, right, bottom, top }: Box): boolean =>
    [left, right].every((x) =>
      [bottom, top].every((y) => Math.hypot(x - centre.x, y - centre.y) < disc.radius),
    )
  const room = openRoom(bounds, inside)
  const openings = disc.openings.flatMap(({ opening }) => openingShapes(opening, at, room))
  room.blockCircle(centre, CENTRE_ARM)
  if (disc.openRadius > 0) room.blockCircle(centre, disc.openRadius)
  const told =
    disc.label === undefined
      ? []
      : room.letter(
          { lines: disc.label, size: NOTE_SIZE },
          [10, 13, -10].map((up) => ({ x: centre.x, y: centre.y + up })),
        )
  const front: Label = { lines: ['FRONT'], size: NOTE_SIZE }
  const frontInside = room.letter(
    front,
    [6.5, 8, 10].map((inward) => at(disc.radius - inward, 0)),
  )
  room.block(grow(around([at(disc.radius - 4, 0), at(disc.radius, 0)]), 2))
  return [
    circle(disc.stuff === 'tin' ? 'cut' : 'paper', centre, disc.radius),
    ...(disc.openRadius > 0 ? [circle('mark', centre, disc.openRadius)] : []),
    ...edgeMarks(disc.radius, at),
    ...openings,
    ...(frontInside.length > 0 ? frontInside : labelShapes(front, at(disc.radius + 3, 0))),
    ...told,
    ...bendLabels(disc, at, room),
    ...boltCircles(disc, at, room),
    ...centreCross(centre),
  ]
}

/** Draws a disc at true size. */
export const drawDisc = (disc: FlatDisc): Drawing => {
  const diameter = 2 * disc.radius
  const centre = { x: MARGIN + disc.radius, y: MARGIN + UNDER_DISC + disc.radius }
  return {
    title: disc.title,
    width: (diameter + 2 * MARGIN) as Millimetres,
    height: (diameter + UNDER_DISC + 2 * MARGIN) as Millimetres,
    shapes: discShapes(disc, centre),
    notes: [...disc.openings.map(({ name, opening }) => faceNote(name, opening, disc.seen)), ...disc.notes],
  }
}
