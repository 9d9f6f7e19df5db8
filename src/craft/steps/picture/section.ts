import { orThrow } from '#basis/problem.ts'
import { long } from '#basis/text/bothUnits.ts'
import { type PlacedPart, placeParts } from '#stove/assembly/place.ts'
import { potPlace } from '#stove/assembly/pot.ts'
import { profileOf } from '#stove/assembly/profile.ts'
import { bodyInside } from '#stove/can/ends.ts'
import { fuelBedOf } from '#stove/measure/fuelBed.ts'
import type { Stove } from '#stove/model.ts'
import type { Drawing, Layer, Point, Shape } from '../../drawing.ts'
import { type CutPlate, cutPlates } from '../../section/plates.ts'
import { type CutWall, cutWalls } from '../../section/walls.ts'
import { drawScene, FIELD, line, polyline, rectangle, type SceneLabel, scaleFor, upright } from './page.ts'

/** A stove cut down its centre line, part by part: the one that is new heavy, what it goes to fine. */
export interface SectionScene {
  readonly title: string
  readonly stove: Stove
  /** Parts that are in place, in the order of the assembly. */
  readonly parts: readonly string[]
  readonly fresh: readonly string[]
  readonly labels: readonly { readonly part: string; readonly lines: readonly string[] }[]
  /** Measured beside it, from the ground or another height [m]. */
  readonly heights: readonly {
    readonly from: number
    readonly to: number
    readonly lines: readonly string[]
  }[]
  readonly fuel: boolean
  readonly pot: boolean
  readonly captions: readonly string[]
}

type At = (r: number, z: number) => Point

const both = (shape: (side: 1 | -1) => Shape): readonly Shape[] => [shape(1), shape(-1)]

/** A band lies on its can: drawn so far out that the two lines stay apart [mm of the picture]. */
const BAND_OUT = 1

const wallShapes = (wall: CutWall, at: At, layer: Layer): readonly Shape[] => [
  ...wall.pieces.flatMap((piece) =>
    both((side) =>
      polyline(
        layer,
        piece.map(({ r, z }) => {
          const { x, y } = at(r, z)
          return { x: side * (x + (wall.form === 'band' ? BAND_OUT : 0)), y }
        }),
      ),
    ),
  ),
  ...wall.seams.flatMap(({ outer, reach }) =>
    both((side) => {
      const [a, b] = [at(wall.radius, reach.from), at(outer, reach.to)]
      const xs = [side * a.x, side * b.x]
      return rectangle(layer, { left: Math.min(...xs), right: Math.max(...xs), bottom: a.y, top: b.y })
    }),
  ),
]

const plateShapes = (plate: CutPlate, at: At, layer: Layer): readonly Shape[] => [
  ...plate.pieces.flatMap(({ from, to }) =>
    both((side) => {
      const [a, b] = [at(from, plate.height), at(to, plate.height)]
      return line(layer, { x: side * a.x, y: a.y }, { x: side * b.x, y: b.y })
    }),
  ),
  ...plate.tongues
    .filter(({ rise }) => Math.abs(rise) > 1e-6)
    .flatMap(({ from, to, rise }) =>
      both((side) => {
        const [a, b] = [at(from, plate.height), at(to, plate.height + rise)]
        const xs = [side * a.x, side * b.x]
        return rectangle(layer, {
          left: Math.min(...xs),
          right: Math.max(...xs),
          bottom: Math.min(a.y, b.y),
          top: Math.max(a.y, b.y),
        })
      }),
    ),
]

/** Down the axis onto what is new, from over whatever it goes into. */
const downArrow = (top: number, rim: number): readonly Shape[] => {
  const [tip, tail] = [top + 1.5, Math.max(top, rim) + 8]
  return [
    line('dimension', { x: 0, y: tail }, { x: 0, y: tip }),
    polyline('dimension', [
      { x: -1.1, y: tip + 2.2 },
      { x: 0, y: tip },
      { x: 1.1, y: tip + 2.2 },
    ]),
  ]
}

/** Where the leader of a part begins: on its right, high up, where it is seen. */
const anchorOf = (
  part: PlacedPart,
  walls: readonly CutWall[],
  plates: readonly CutPlate[],
  at: At,
): Point => {
  const wall = walls.find((one) => one.part === part.name)
  if (wall !== undefined) {
    const high = wall.reach.to - (wall.reach.to - wall.reach.from) * 0.25
    // On tin, not in a hole.
    const middles = wall.pieces.map((piece) => {
      const heights = piece.map(({ z }) => z)
      const [low, top] = [Math.min(...heights), Math.max(...heights)]
      return low <= high && high <= top ? high : (low + top) / 2
    })
    const z = middles.sort((a, b) => Math.abs(a - high) - Math.abs(b - high))[0] ?? high
    const { x, y } = at(wall.radius, z)
    return { x: x + (wall.form === 'band' ? BAND_OUT : 0), y }
  }
  const plate = plates.find((one) => one.part === part.name)
  return plate === undefined ? at(0, part.top * 1000) : at(plate.reach.to, plate.height)
}

export const sectionPicture = (scene: SectionScene): Drawing => {
  const { title, stove, parts, fresh, captions } = scene
  const placed = orThrow(placeParts(stove)).filter(({ name }) => parts.includes(name))
  const walls = cutWalls(placed)
  const plates = cutPlates(placed, profileOf(placed))
  const stand = scene.pot ? potPlace(stove, placed) : null
  const pot = stand === null ? null : { radius: stand.diameter * 500, bottom: stand.bottom * 1000 }
  const radius = Math.max(
    1,
    ...walls.flatMap((wall) => [wall.radius, ...wall.seams.map(({ outer }) => outer)]),
    ...plates.map(({ reach }) => reach.to),
    ...(pot === null ? [] : [pot.radius]),
  )
  const top = Math.max(...placed.map((part) => part.top * 1000), pot === null ? 0 : pot.bottom + 12)
  const room = { width: FIELD.width - 4 - 3 * scene.heights.length, height: FIELD.height }
  const scale = scaleFor(2 * radius, top, room)
  const at: At = (r, z) => ({ x: r * scale, y: z * scale })
  const layerOf = (part: string): Layer => (fresh.includes(part) ? 'cut' : 'paper')
  const edge = radius * scale
  const labels: SceneLabel[] = scene.labels.flatMap(({ part: name, lines }) => {
    const part = placed.find((one) => one.name === name)
    if (part === undefined) return []
    const from = anchorOf(part, walls, plates, at)
    return [{ lines, from, want: from.y }]
  })
  const measured = scene.heights.flatMap(({ from, to, lines }, index): readonly Shape[] => {
    const x = edge + 3 + 3 * index
    const [low, high] = [from * 1000 * scale, to * 1000 * scale]
    labels.push({ lines, from: { x, y: (low + high) / 2 }, want: (low + high) / 2 })
    return [
      ...[low, high].map((y) => line('dimension', { x: edge * 0.7, y }, { x: x + 1, y })),
      ...upright(x, low, high),
    ]
  })
  const bed = scene.fuel ? fuelBedOf(stove, placed) : null
  const bedShapes: readonly Shape[] =
    bed === null
      ? []
      : (() => {
          const bedRadius = (bodyInside(bed.can.part.can).value / 2) * 1000
          const [a, b] = [at(-bedRadius, bed.floor * 1000), at(bedRadius, bed.top * 1000)]
          labels.push({
            lines: ['fuel up to here:', `${long(stove.fuel.level)} deep`],
            from: { x: b.x * 0.8, y: b.y },
            want: b.y,
          })
          const rows = 5
          return [
            line('cut', { x: a.x, y: b.y }, b),
            ...Array.from({ length: rows }, (_, i) => {
              const y = a.y + ((b.y - a.y) * (i + 0.5)) / rows
              return line('mark', { x: a.x * 0.96, y }, { x: b.x * 0.96, y })
            }),
          ]
        })()
  const potShapes: readonly Shape[] =
    pot === null
      ? []
      : [
          polyline(
            'mark',
            [
              [-pot.radius, pot.bottom + 12],
              [-pot.radius, pot.bottom],
              [pot.radius, pot.bottom],
              [pot.radius, pot.bottom + 12],
            ].map(([r, z]) => at(r ?? 0, z ?? 0)),
          ),
        ]
  const tops = placed.filter(({ name, part }) => fresh.includes(name) && part.form !== 'band')
  const rim = Math.max(...placed.map((part) => part.top)) * 1000 * scale
  const arrow = placed.length < 2 ? [] : tops.flatMap((part) => downArrow(part.top * 1000 * scale, rim))
  return drawScene(title, {
    shapes: [
      ...arrow,
      line('dimension', { x: -edge - 2, y: 0 }, { x: edge + 2 + 3 * scene.heights.length, y: 0 }),
      ...placed.flatMap(({ name }) => [
        ...walls.filter(({ part }) => part === name).flatMap((wall) => wallShapes(wall, at, layerOf(name))),
        ...plates
          .filter(({ part }) => part === name)
          .flatMap((plate) => plateShapes(plate, at, layerOf(name))),
      ]),
      ...bedShapes,
      ...potShapes,
      ...measured,
    ],
    labels,
    captions,
  })
}
