import type { Metres } from '#basis/units.ts'
import { FOOD_CANS, type NamedCan } from '#stove/can/foodCans.ts'
import { readSizeCode } from '#stove/can/sizeCode.ts'
import type { Can, CanEnd, CanPart, Measured, Stove } from '#stove/model.ts'
import { type Check, contextOf } from './context.ts'
import { damper } from './damper/damper.ts'
import { collisions } from './fit/collisions.ts'
import { goingIn } from './fit/goingIn.ts'
import { potFits } from './fit/potFits.ts'
import { sitting } from './fit/sitting.ts'
import { rowSpacing } from './spacing/rowSpacing.ts'

/** Which other cans would do in the place of one: as far from it as nothing new is found wrong. */
export interface CanWindow {
  readonly part: string
  /** Outside of the body [m]. */
  readonly least: Metres
  readonly most: Metres
  /** At least so high, before trimming [m]. */
  readonly height: Metres
  /** Trimmed from a taller can: height is easily had. */
  readonly trimmed: boolean
  /** Sizes of the public table that lie within, nearest first. */
  readonly sizes: readonly NamedCan[]
}

const ASKED: readonly Check[] = [goingIn, sitting, collisions, potFits, rowSpacing, damper]

/** How far from the plan a can is tried, and how finely [m]. */
const REACH = 0.015
const STEP = 0.0005

const widened = (measured: Measured, by: number): Measured => ({
  ...measured,
  value: (measured.value + by) as Metres,
})

const endWidened = (end: CanEnd, by: number): CanEnd =>
  end.kind === 'pull-off' || end.kind === 'friction' ? { ...end, opening: widened(end.opening, by) } : end

/** The same can, wider or narrower all over; its height stays. */
const canWidened = (can: Can, by: number): Can => ({
  ...can,
  seamDiameter: widened(can.seamDiameter, by),
  bodyDiameter: widened(can.bodyDiameter, by),
  bottom: endWidened(can.bottom, by),
  top: endWidened(can.top, by),
})

const withCan = (stove: Stove, name: string, part: CanPart, can: Can): Stove => ({
  ...stove,
  parts: new Map(stove.parts).set(name, { ...part, can }),
})

/** What is wrong, counted by severity and code; what a plan already is warned of does not count again. */
const wrongs = (stove: Stove): ReadonlyMap<string, number> => {
  const context = contextOf(stove, null)
  const counts = new Map<string, number>()
  for (const { severity, code } of ASKED.flatMap((check) => check(context)))
    if (severity !== 'note') counts.set(`${severity} ${code}`, (counts.get(`${severity} ${code}`) ?? 0) + 1)
  return counts
}

const noWorse = (now: ReadonlyMap<string, number>, planned: ReadonlyMap<string, number>): boolean =>
  [...now].every(([code, count]) => count <= (planned.get(code) ?? 0))

const inches = 0.0254

/**
 * For every can of a stove, how much wider or narrower another may be with nothing else changed, in file order. Tried in
 * steps of half a millimetre up to 15 mm either way; the draught is not looked at: predict the stove with the can at hand.
 */
export const canWindows = (stove: Stove): readonly CanWindow[] => {
  const planned = wrongs(stove)
  return [...stove.parts].flatMap(([name, part]): readonly CanWindow[] => {
    if (part.form !== 'can') return []
    const { can } = part
    const does = (by: number): boolean =>
      noWorse(wrongs(withCan(stove, name, part, canWidened(can, by))), planned)
    const far = (sign: 1 | -1): number => {
      let reached = 0
      while (reached + STEP <= REACH + 1e-9 && does(sign * (reached + STEP))) reached += STEP
      return reached
    }
    const body = can.bodyDiameter.value
    const least = (body - far(-1)) as Metres
    const most = (body + far(1)) as Metres
    const trimmed = can.top.kind === 'cut' || can.bottom.kind === 'cut'
    const over = can.seamDiameter.value - body
    const sizes = FOOD_CANS.flatMap((named) => {
      const size = readSizeCode(named.code, 'code')
      if (!size.ok) return []
      const bodyOf = size.value.diameter - over
      const height = size.value.height
      const tallEnough = trimmed
        ? height >= can.height.value
        : Math.abs(height - can.height.value) <= inches / 4
      const within = bodyOf >= least - 1e-9 && bodyOf <= most + 1e-9
      return tallEnough && within
        ? [{ named, off: Math.abs(bodyOf - body) + Math.abs(height - can.height.value) / 10 }]
        : []
    })
    return [
      {
        part: name,
        least,
        most,
        height: can.height.value,
        trimmed,
        sizes: sizes.sort((one, other) => one.off - other.off).map(({ named }) => named),
      },
    ]
  })
}
