import { quantity } from '#basis/quantities.ts'
import { nextStep, writingOf } from '#basis/text/writing.ts'
import type { Metres } from '#basis/units.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import { wrapBearing } from '#stove/opening/row.ts'
import { degreesText, type Move, within, withPlacement } from './move.ts'

/** Fills the fuel can to another height above its floor, in the maker's unit [m]. */
export const fillTo = (file: StoveFile, level: number, most = Number.POSITIVE_INFINITY): Move => {
  const { min, max } = quantity('fuelLevel')
  const writing = writingOf(file.fuel.level, 'fuelLevel')
  const text = writing.write(writing.snap(within(min, Math.min(max, most), level) as Metres))
  return {
    label: `fill fuel to ${text}`,
    change: (to) => ({ ...to, fuel: { ...to.fuel, level: text } }),
  }
}

/** Fills it higher or lower by one step of the maker's rule. */
export const stepFuel = (
  file: StoveFile,
  by: 1 | -1,
  large = false,
  most = Number.POSITIVE_INFINITY,
): Move => {
  const writing = writingOf(file.fuel.level, 'fuelLevel')
  return fillTo(file, nextStep(writing, writing.value, by, large), most)
}

/** Another space between rim and pot [m]. Null for a stove without a pot. */
export const setPotGap = (file: StoveFile, gap: number): Move | null => {
  const { pot } = file
  if (pot === undefined) return null
  const { min, max } = quantity('potGap')
  const writing = writingOf(pot.gap ?? pot.diameter, 'potGap')
  const text = writing.write(writing.snap(within(min, max, gap) as Metres))
  const none = writingOf(text, 'potGap').value === 0
  return {
    label: none ? 'set the pot on the rim' : `stand the pot ${text} above the rim`,
    change: (to) => ({
      ...to,
      pot: none ? { diameter: pot.diameter } : { ...pot, gap: text },
    }),
  }
}

/** The pot higher or lower by one step of the maker's rule. */
export const stepPotGap = (file: StoveFile, by: 1 | -1, large = false): Move | null => {
  const { pot } = file
  if (pot === undefined) return null
  const writing = writingOf(pot.gap ?? pot.diameter, 'potGap')
  const now = (pot.gap === undefined ? 0 : writing.value) as Metres
  return setPotGap(file, nextStep(writing, now, by, large))
}

/** Turns a part's front mark to a bearing from the stove's front [deg]. */
export const turnPart = (part: string, bearing: number): Move => {
  const turned = wrapBearing(Math.round(bearing * 2) / 2)
  return {
    label: `turn ${part} to ${Number(turned.toFixed(1))}°`,
    change: (file) =>
      withPlacement(file, part, ({ turned: _, ...rest }) =>
        turned === 0 ? rest : { ...rest, turned: degreesText(turned) },
      ),
  }
}

/** Raises a part that can be slid: a grate on its screws, a damper on its can. Null for one that lies where it lies [m]. */
export const raisePart = (file: StoveFile, part: string, raised: number): Move | null => {
  const placement = file.assembly.find((one) => one.part === part)
  if (placement === undefined || placement.place === 'hangs in' || placement.place === 'sits on') return null
  const { min, max } = quantity('raised')
  const writing = writingOf('raised' in placement ? placement.raised : undefined, 'raised')
  const text = writing.write(writing.snap(within(min, max, raised) as Metres))
  return {
    label: `raise ${part} to ${text}`,
    change: (to) => withPlacement(to, part, (one) => ({ ...one, raised: text }) as typeof one),
  }
}

/** Raises it by one step of the maker's rule. */
export const stepRaised = (file: StoveFile, part: string, by: 1 | -1, large = false): Move | null => {
  const placement = file.assembly.find((one) => one.part === part)
  if (placement === undefined || !('raised' in placement)) return null
  const writing = writingOf(placement.raised, 'raised')
  return raisePart(file, part, nextStep(writing, writing.value, by, large))
}
