import { orThrow } from '#basis/problem.ts'
import type { QuantityKey } from '#basis/quantities.ts'
import { type PlacedPart, placeParts } from '#stove/assembly/place.ts'
import { bodyInside, isSeamed } from '#stove/can/ends.ts'
import { bandLength, partMass } from '#stove/fit/partMass.ts'
import type { Opening, RowOpening, Stove } from '#stove/model.ts'
import { holeCount } from '#stove/opening/area.ts'
import type { Measure, MeasureKind } from './measure.ts'

type Told = Pick<Measure, 'label' | 'how' | 'planned'> & { readonly readings?: number }

const measure = (
  kind: MeasureKind,
  quantity: QuantityKey,
  path: readonly string[],
  { readings = 0, ...told }: Told,
): Measure => ({
  kind,
  quantity,
  path,
  part: path[0] === 'parts' ? (path[1] ?? null) : null,
  opening: path[2] === 'openings' ? (path[3] ?? null) : null,
  readings: readings === 0 ? null : readings,
  ...told,
})

const rowSizes = ({ hole }: RowOpening, at: readonly string[]): readonly Measure[] => {
  switch (hole.shape) {
    case 'round':
      return [
        measure('hole diameter', 'holeDiameter', [...at, 'diameter'], {
          label: 'hole diameter',
          how: 'Across a middling hole, then up it; burr taken off.',
          planned: hole.diameter,
          readings: 2,
        }),
      ]
    case 'window':
      return [
        measure('window width', 'windowWidth', [...at, 'window', 'width'], {
          label: 'window width',
          how: 'Of two windows, round the can.',
          planned: hole.width,
          readings: 2,
        }),
        measure('window height', 'windowHeight', [...at, 'window', 'height'], {
          label: 'window height',
          how: 'Of the same two windows, foot to top.',
          planned: hole.height,
          readings: 2,
        }),
      ]
    case 'slit':
      return [
        measure('slit length', 'slitLength', [...at, 'slit', 'length'], {
          label: 'slit length',
          how: 'Of two slits, the long way.',
          planned: hole.length,
          readings: 2,
        }),
        measure('slit width', 'slitWidth', [...at, 'slit', 'width'], {
          label: 'slit width',
          how: 'Of the same two slits, with feeler or calliper.',
          planned: hole.width,
          readings: 2,
        }),
      ]
  }
}

const openingMeasures = (opening: Opening, at: readonly string[]): readonly Measure[] => {
  const counted = (kind: MeasureKind, label: string): Measure =>
    measure(kind, 'patternCount', [...at, 'count'], {
      label,
      how: 'Count those that are really cut.',
      planned: holeCount(opening),
    })
  switch (opening.kind) {
    case 'row':
      return [
        counted('row count', 'openings cut'),
        ...rowSizes(opening, at),
        measure('opening height', 'holeHeight', [...at, 'height'], {
          label: 'height to the centre',
          how: 'From the part’s bottom edge, as it stands, to the middle of an opening; the mean of a few.',
          planned: opening.height,
        }),
        measure('first bearing', 'bearing', [...at, 'bearing'], {
          label: 'bearing of opening 1',
          how: 'From the front mark, clockwise seen from above.',
          planned: opening.bearing,
        }),
      ]
    case 'pattern':
      return [
        counted('pattern count', 'holes drilled'),
        measure('hole diameter', 'holeDiameter', [...at, 'diameter'], {
          label: 'hole diameter',
          how: 'Across a middling hole, two ways; burr taken off.',
          planned: opening.diameter,
          readings: 2,
        }),
      ]
    case 'bore':
      return [
        measure('bore diameter', 'boreDiameter', [...at, 'diameter'], {
          label: 'bore',
          how: 'Across the bore, then at right angles to that.',
          planned: opening.diameter,
          readings: 2,
        }),
      ]
    case 'vanes':
      return [
        counted('vane count', 'vanes bent'),
        measure('vane angle', 'vaneAngle', [...at, 'angle'], {
          label: 'vane angle',
          how: 'Between the disc and a tongue: the mean of a few.',
          planned: opening.angle,
        }),
      ]
  }
}

/** The nearest can round a can, over at least half its height; null for none. */
const canRound = (inner: PlacedPart, placed: readonly PlacedPart[]): PlacedPart | null => {
  const { part } = inner
  if (part.form !== 'can') return null
  const around = placed.flatMap((other) => {
    if (other.part.form !== 'can' || other.name === inner.name) return []
    const room = bodyInside(other.part.can).value - part.can.bodyDiameter.value
    const beside = Math.min(other.top, inner.top) - Math.max(other.base, inner.base)
    return room > 0 && beside >= (inner.top - inner.base) / 2 ? [{ other, room }] : []
  })
  return around.sort((a, b) => a.room - b.room)[0]?.other ?? null
}

const canMeasures = (at: PlacedPart, placed: readonly PlacedPart[]): readonly Measure[] => {
  const { name, part } = at
  if (part.form !== 'can') return []
  const { can } = part
  const path = ['parts', name]
  const outer = canRound(at, placed)
  const gap =
    outer?.part.form === 'can' ? (bodyInside(outer.part.can).value - can.bodyDiameter.value) / 2 : null
  return [
    ...(isSeamed(can.bottom) || isSeamed(can.top)
      ? [
          measure('seam diameter', 'canSeamDiameter', [...path, 'seamDiameter'], {
            label: 'diameter over the seam',
            how: 'Outside, at its widest, then at right angles to that.',
            planned: can.seamDiameter.value,
            readings: 2,
          }),
        ]
      : []),
    measure('body diameter', 'canBodyDiameter', [...path, 'bodyDiameter'], {
      label: can.taper === undefined ? 'diameter of the body' : 'body at the bottom edge',
      how:
        can.taper === undefined
          ? 'Outside, on the plain wall away from seams and beads, then at right angles to that.'
          : 'Outside, on the wall at its bottom edge as it stands, then at right angles to that.',
      planned: (can.taper?.bottom ?? can.bodyDiameter).value,
      readings: 2,
    }),
    ...(can.taper === undefined
      ? []
      : [
          measure('top body diameter', 'canBodyDiameter', [...path, 'topBodyDiameter'], {
            label: 'body at the top edge',
            how: 'Outside, on the wall at its top edge as it stands, then at right angles to that.',
            planned: can.taper.top.value,
            readings: 2,
          }),
        ]),
    measure('can height', 'canHeight', [...path, 'height'], {
      label: 'height',
      how: 'From edge to edge as it stands in the stove; the mean of a few places.',
      planned: can.height.value,
    }),
    ...(gap === null || outer === null
      ? []
      : [
          measure('wall gap', 'clearance', [...path, 'gap'], {
            label: `gap to ${outer.name}`,
            how: 'Put together, at the front, the left, the back and the right.',
            planned: gap,
            readings: 4,
          }),
        ]),
  ]
}

const bodyMeasures = (at: PlacedPart, placed: readonly PlacedPart[]): readonly Measure[] => {
  const { name, part } = at
  const path = ['parts', name]
  switch (part.form) {
    case 'can':
      return canMeasures(at, placed)
    case 'disc':
      return [
        measure('disc diameter', 'discDiameter', [...path, 'diameter'], {
          label: 'diameter',
          how: 'Across the disc, then at right angles to that.',
          planned: part.diameter.value,
          readings: 2,
        }),
      ]
    case 'band':
      return [
        measure('band height', 'canHeight', [...path, 'height'], {
          label: 'height of the band',
          how: 'From edge to edge; the mean of a few places.',
          planned: part.height,
        }),
      ]
  }
}

/** A part that stands off what holds it: how far. */
const raisedMeasure = ({ name, placement }: PlacedPart): readonly Measure[] => {
  const stands = placement.place !== 'hangs in' && placement.place !== 'sits on'
  const always = placement.place === 'slips over' || placement.place === 'slips into'
  if (!stands || (placement.raised === 0 && !always)) return []
  const from =
    placement.place === 'on ground'
      ? 'the ground'
      : placement.place === 'stands in'
        ? `the floor of ${placement.host}`
        : `the bottom edge of ${placement.host}`
  return [
    measure('raised', 'raised', ['parts', name, 'raised'], {
      label: 'how high it stands',
      how: `From ${from} up to its own lower edge.`,
      planned: placement.raised,
    }),
  ]
}

const weightOf = (at: PlacedPart, placed: readonly PlacedPart[]): number => {
  const host = placed.find(({ name }) => name === at.placement.host)
  const round = host?.part.form === 'can' ? host.part.can.bodyDiameter.value : 0
  const length = at.part.form === 'band' ? bandLength(round as never, at.part.thickness) : 0
  return partMass(at.part, length as never)
}

/** Everything to measure on one part, in the order it is measured. */
const partMeasures = (at: PlacedPart, placed: readonly PlacedPart[]): readonly Measure[] => [
  ...bodyMeasures(at, placed),
  ...raisedMeasure(at),
  measure('part weight', 'mass', ['parts', at.name, 'weight'], {
    label: 'weight',
    how: 'On the kitchen scale, clean and dry. The plan’s is worked out from the tin’s thickness.',
    planned: weightOf(at, placed),
  }),
  ...[...at.part.openings].flatMap(([name, opening]) =>
    openingMeasures(opening, ['parts', at.name, 'openings', name]),
  ),
]

/**
 * What to measure on a stove when it is built: every part in the order it was put together, then the fuel and the
 * whole. Throws `BadInput` where `placeParts` refuses; a stove read from a file never does.
 */
export const builtSheet = (stove: Stove): readonly Measure[] => {
  const placed = orThrow(placeParts(stove))
  return [
    ...placed.flatMap((at) => partMeasures(at, placed)),
    measure('fuel level', 'fuelLevel', ['fuel', 'level'], {
      label: 'fuel level',
      how: 'Filled as you burn it: from the floor the fuel lies on up to its top.',
      planned: stove.fuel.level,
    }),
    measure('fuel weight', 'fuelWeight', ['fuel', 'weight'], {
      label: 'weight of that filling',
      how: 'Tip it out and weigh it.',
      planned: null,
    }),
    measure('fuel moisture', 'fuelMoisture', ['fuel', 'moisture'], {
      label: 'moisture of the fuel',
      how: 'Where you know it: water as a share of the weight as it is.',
      planned: stove.fuel.moisture,
    }),
    measure('stove weight', 'mass', ['weight'], {
      label: 'weight of the whole stove',
      how: 'Put together, without fuel and pot.',
      planned: placed.reduce((sum, at) => sum + weightOf(at, placed), 0),
    }),
  ]
}
