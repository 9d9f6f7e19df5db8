import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { toMillimetres } from '#basis/units.ts'
import { isSeamed, type WhichEnd } from '#stove/can/ends.ts'
import type { Can } from '#stove/model.ts'
import type { GuideOptions } from './options.ts'
import { chooseSplit, type Split } from './split.ts'
import type { WallHoleAt } from './wallHoles.ts'

/** A hole as the collar has it: height over the edge of the can the collar is set by [mm], bearing as printed [deg]. */
export interface CollarHole extends WallHoleAt {
  readonly up: number
  readonly printedBearing: number
}

/**
 * The sizes of a collar, radii and heights over the can’s edge that it is set by [mm]. It is printed with that edge on the
 * bed; a collar that is set by the top of a can is drawn upside down.
 */
export interface CollarShape {
  readonly datum: WhichEnd
  readonly holes: readonly CollarHole[]
  /** On the body, with tolerance and clearance. */
  readonly inner: number
  readonly outer: number
  readonly top: number
  /** Room for the seam at the edge it is set by: radius, and up to where; null where the can has none there. */
  readonly recess: { readonly radius: number; readonly to: number } | null
  /** A ring under the can’s edge where there is no seam: its inner radius and thickness. */
  readonly lip: { readonly radius: number; readonly thickness: number } | null
  /** Null where it slips over an end without a seam. */
  readonly split: Split | null
  readonly sideSeam: number | null
}

/** Collar above the topmost guide hole, and least of it [mm]. */
const ABOVE = 6
const LEAST_ABOVE = 1.5
/** Below this it tilts [mm]. */
const LEAST_HEIGHT = 15
/** Play over a seam, along the axis [mm]. */
const SEAM_PLAY = 0.6
/** How far a lip reaches under the can’s edge inside of its wall, and how thick it is [mm]. */
const LIP = 2

const problem = (part: string, code: string, value: string, allowed: string, fix: string): Problem => ({
  code,
  field: `guide for ${part}`,
  value,
  allowed,
  fix,
})

const mm = (value: number): string => `${Number(value.toFixed(1))} mm`

/** The edge of the can that is nearer to a hole. */
export const datumOf = (can: Can, hole: WallHoleAt): WhichEnd =>
  2 * hole.height <= toMillimetres(can.height.value) ? 'bottom' : 'top'

/** Works out a collar for holes that are set by one edge of a can, or says in a sentence why there is none. */
export const collarShape = (
  part: string,
  can: Can,
  datum: WhichEnd,
  wanted: readonly WallHoleAt[],
  options: GuideOptions,
): Outcome<CollarShape> => {
  const half = (measured: Can['bodyDiameter']): number =>
    toMillimetres(measured.value) / 2 +
    (toMillimetres(measured.tolerance) + toMillimetres(options.clearance)) / 2
  const height = toMillimetres(can.height.value)
  const inner = half(can.bodyDiameter)
  const outer = inner + toMillimetres(options.wall)
  const seam = toMillimetres(can.seamHeight)
  const other: WhichEnd = datum === 'bottom' ? 'top' : 'bottom'
  const seamRadius = half(can.seamDiameter)
  const turned = datum === 'top'
  const holes = wanted.map(
    (hole): CollarHole => ({
      ...hole,
      up: turned ? height - hole.height : hole.height,
      printedBearing: (((turned ? 180 - hole.bearing : hole.bearing) % 360) + 360) % 360,
    }),
  )
  const highest = Math.max(...holes.map(({ up, diameter }) => up + diameter / 2))
  const lowest = Math.min(...holes.map(({ up, diameter }) => up - diameter / 2))
  const ceiling = height - (isSeamed(can[other]) ? seam + SEAM_PLAY : 0)
  if (lowest < LEAST_ABOVE)
    return bad(
      problem(
        part,
        'guide.edge',
        `a hole that ends ${mm(lowest)} from the ${datum} edge`,
        `${mm(LEAST_ABOVE)} or more, so that the collar holds together under it`,
        'Drill this row by the template.',
      ),
    )
  if (highest + LEAST_ABOVE > ceiling)
    return bad(
      problem(
        part,
        'guide.seam',
        `a hole that ends ${mm(highest)} from the ${datum} edge`,
        `up to ${mm(ceiling - LEAST_ABOVE)}, where the collar meets the other seam`,
        'Drill this row by the template.',
      ),
    )
  const recess =
    isSeamed(can[datum]) && seamRadius > inner ? { radius: seamRadius, to: seam + SEAM_PLAY } : null
  const lip = isSeamed(can[datum])
    ? null
    : {
        radius: toMillimetres(can.bodyDiameter.value) / 2 - toMillimetres(can.bodyWall) - LIP,
        thickness: LIP,
      }
  const slips = (['bottom', 'top'] as const).some((end) => !isSeamed(can[end]) || seamRadius <= inner)
  const top = Math.min(ceiling, Math.max(LEAST_HEIGHT, highest + ABOVE))
  const front = turned ? 180 : 0
  const sideSeam = can.sideSeam === null ? null : turned ? 180 - can.sideSeam : can.sideSeam
  const shape = { datum, holes, inner, outer, recess, lip, sideSeam }
  const whole = 2 * outer <= toMillimetres(Math.min(options.bed.width, options.bed.depth) as never)
  if (slips && whole) return good({ ...shape, top, split: null })
  const chosen = chooseSplit({ part, holes, front, inner, outer, top, ceiling, options })
  return chosen.ok ? good({ ...shape, top: chosen.value.top, split: chosen.value.split }) : chosen
}
