import { long } from '#basis/text/bothUnits.ts'
import { toRadians } from '#basis/units.ts'
import { isSeamed, outsideAt } from '#stove/can/ends.ts'
import { bodyAt, widestBody } from '#stove/can/taper.ts'
import type { Can, CanPart, RowOpening } from '#stove/model.ts'
import { drilledCount, placeRow } from '#stove/opening/row.ts'
import type { Drawing, Layer, Point, Shape } from '../../drawing.ts'
import { isFootDrilled } from '../../flat/hole.ts'
import { flatOutline } from '../../section/beyond.ts'
import { drawScene, FIELD, line, polyline, rectangle, type SceneLabel, scaleFor, upright } from './page.ts'

/** A can from its front, bearing 0 towards the eye; bearing 90 is on the left. Millimetres of the can. */
const mm = (metres: number): number => metres * 1000

/** Half the width of the wall at a height [mm]; where it tapers, on the slope. */
export const wallHalf = (can: Can, z: number): number => mm(bodyAt(can, z / 1000).value) / 2

/** Half of the widest there is on a can [mm]. */
export const widestHalf = (can: Can): number =>
  Math.max(mm(can.seamDiameter.value), mm(widestBody(can).value)) / 2

/** How high a can stands as bought, and where its bottom edge as used lies on that. */
export interface Bought {
  /** [mm] */
  readonly above: number
  readonly below: number
}

export interface CanView {
  readonly scale: number
  readonly at: (x: number, z: number) => Point
}

/** The can's own outline, its ends as used in full lines, what is cut away from it dashed. */
export const canOutline = (
  { can }: CanPart,
  { at, scale }: CanView,
  layer: Layer,
  bought: Bought,
): readonly Shape[] => {
  const height = mm(can.height.value)
  const half = (z: number): number => wallHalf(can, z)
  const box = (l: Layer, wide: number, low: number, high: number): Shape => {
    const [a, b] = [at(-wide, low), at(wide, high)]
    return rectangle(l, { left: a.x, right: b.x, bottom: a.y, top: b.y })
  }
  const wall: Shape = polyline(
    layer,
    [at(-half(0), 0), at(half(0), 0), at(half(height), height), at(-half(height), height)],
    true,
  )
  const seamHeight = mm(can.seamHeight)
  const seam = (which: 'bottom' | 'top'): number => mm(outsideAt(can, which).value) / 2
  return [
    wall,
    ...(isSeamed(can.bottom) ? [box(layer, seam('bottom'), 0, seamHeight)] : []),
    ...(isSeamed(can.top) ? [box(layer, seam('top'), height - seamHeight, height)] : []),
    ...(bought.above > 0 ? [box('mark', half(height), height, height + bought.above)] : []),
    ...(bought.below > 0 ? [box('mark', half(0), -bought.below, 0)] : []),
    ...can.beads.flatMap(({ from, to }) =>
      [from, to].map((z) => line('mark', at(-half(mm(z)), mm(z)), at(half(mm(z)), mm(z)))),
    ),
    ...(can.sideSeam !== null && Math.cos(toRadians(can.sideSeam)) > 0.05 && scale > 0
      ? [
          line(
            'mark',
            at(-half(0) * Math.sin(toRadians(can.sideSeam)), 0),
            at(-half(height) * Math.sin(toRadians(can.sideSeam)), height),
          ),
        ]
      : []),
  ]
}

/** Arms of a punch mark [mm of the can]. */
const CROSS = 2.2

/** How a row shows: as what this step makes, as a place to punch, or as what is there already. */
export type RowLook = 'made' | 'punched' | 'there'

/** The openings of a row that the eye meets, bent round the wall. */
export const rowShapes = (
  row: RowOpening,
  { can }: CanPart,
  { at }: CanView,
  look: RowLook,
): readonly Shape[] => {
  const radius = wallHalf(can, mm(row.height))
  const layer: Layer = look === 'made' ? 'cut' : look === 'punched' ? 'drill' : 'paper'
  return placeRow(row, can.bodyDiameter.value).flatMap(({ bearing }) => {
    const middle = toRadians(bearing)
    if (Math.cos(middle) < 0.12) return []
    const seen = (along: number, up: number): Point =>
      at(
        -radius * Math.sin(middle + along / radius),
        // A hole that runs over the edge ends there.
        Math.max(0, Math.min(mm(can.height.value), mm(row.height) + up)),
      )
    const cross = (up: number): readonly Shape[] => [
      line(layer, seen(-CROSS, up), seen(CROSS, up)),
      line(layer, seen(0, up - CROSS), seen(0, up + CROSS)),
    ]
    if (look === 'punched' && row.hole.shape === 'round') return cross(0)
    const foot =
      look === 'punched' && isFootDrilled(row.hole) && row.hole.shape === 'window'
        ? cross(mm(row.hole.width) / 2 - mm(row.hole.height) / 2)
        : []
    const outline = flatOutline(row.hole).filter(([along]) => Math.cos(middle + along / radius) > 0)
    return outline.length < 3
      ? foot
      : [
          ...foot,
          polyline(
            layer,
            outline.map(([along, up]) => seen(along, up)),
            true,
          ),
        ]
  })
}

/** What a row's label says: its name, how many, how high. */
const rowLines = (name: string, row: RowOpening): readonly string[] => [
  `${name}: ${drilledCount(row)}`,
  long(row.height),
  'edge to centre',
]

/** Between dimension lines side by side [mm of the picture]. */
const APART = 3.2

export interface CanScene {
  readonly title: string
  readonly part: CanPart
  readonly rows: readonly (readonly [name: string, row: RowOpening, look: RowLook])[]
  readonly bought: Bought
  /** Lower and upper edge of the paper taped on [mm]; null for none. */
  readonly paper: { readonly low: number; readonly high: number } | null
  /** Heights at which the can is cut through in this step [mm]. */
  readonly cuts: readonly number[]
  /** What is left of a can that is cut down, told beside it. */
  readonly left: readonly string[] | null
  readonly captions: readonly string[]
}

/** A can in elevation with rows in place; those of the step are measured from the bottom edge. */
export const canPicture = ({ title, part, rows, bought, paper, cuts, left, captions }: CanScene): Drawing => {
  const { can } = part
  const half = widestHalf(can)
  const height = mm(can.height.value)
  const told = rows.filter(([, , look]) => look !== 'there')
  const dimensions = (told.length + (left === null ? 0 : 1)) * APART + 3
  const scale = scaleFor(2 * half, height + bought.above + bought.below, {
    width: FIELD.width - dimensions,
    height: FIELD.height,
  })
  const view: CanView = { scale, at: (x, z) => ({ x: x * scale, y: z * scale }) }
  const labels: SceneLabel[] = []
  const measured = told.flatMap(([name, row], index): readonly Shape[] => {
    const x = half * scale + 3 + index * APART
    const y = mm(row.height) * scale
    labels.push({ lines: rowLines(name, row), from: { x, y }, want: y })
    return [line('dimension', { x: half * scale * 0.98, y }, { x: x + 1, y }), ...upright(x, 0, y)]
  })
  const cutLines = cuts.map((z) =>
    line('cut', { x: -half * scale - 1.5, y: z * scale }, { x: half * scale + 1.5, y: z * scale }),
  )
  const leftOver = half * scale + 3 + told.length * APART
  if (left !== null) {
    const middle = (height * scale) / 2
    labels.push({ lines: left, from: { x: leftOver, y: middle }, want: middle })
  }
  const base = line(
    'dimension',
    { x: -half * scale - 2, y: 0 },
    { x: half * scale + Math.max(2, dimensions), y: 0 },
  )
  const wrapHalf = (z: number): number => wallHalf(can, z) + 0.8
  const wrap =
    paper === null
      ? []
      : [
          polyline(
            'paper',
            [
              view.at(-wrapHalf(paper.low), paper.low),
              view.at(wrapHalf(paper.low), paper.low),
              view.at(wrapHalf(paper.high), paper.high),
              view.at(-wrapHalf(paper.high), paper.high),
            ],
            true,
          ),
        ]
  return drawScene(title, {
    shapes: [
      ...canOutline(part, view, 'paper', bought),
      ...wrap,
      ...rows.flatMap(([, row, look]) => rowShapes(row, part, view, look)),
      base,
      ...measured,
      ...cutLines,
      ...(left === null ? [] : upright(leftOver, 0, height * scale)),
    ],
    labels,
    captions,
  })
}
