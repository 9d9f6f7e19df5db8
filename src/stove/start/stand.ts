import { isSeamed, outsideAt } from '#stove/can/ends.ts'
import { AREAS } from '#stove/check/rules.ts'
import type { ShelfCan } from './choice.ts'
import { markedDown, markedUp } from './row.ts'
import { CUT, measuresOf, mm, OPEN, type PartFile } from './written.ts'

/** A pot stand, and how wide what it stands on has to be at least [m]. */
export interface Stand {
  readonly part: PartFile
  readonly needs: number
}

/** Windows under its rim let out more than the concentrator lets in. */
export const standOf = ({ item, can }: ShelfCan, passage: number): Stand | null => {
  const height = Math.min(can.height.value - 0.004, Math.max(0.07, 0.9 * can.bodyDiameter.value))
  const circumference = Math.PI * can.bodyDiameter.value
  const count = circumference > 0.36 ? 8 : 6
  const width = markedDown(0.38 * (circumference / count))
  const tall = markedUp((1.4 * AREAS.outletToPassage.low * passage) / (count * width))
  const drop = 0.007
  if (width < 0.008 || tall + drop > 0.55 * height) return null
  const { beads: _, ...measures } = measuresOf(item)
  const beads = can.beads.filter(({ to }) => to < height)
  return {
    needs: outsideAt(can, 'bottom').value,
    part: {
      form: 'can',
      role: 'pot stand',
      can: {
        ...measures,
        ...(beads.length === 0
          ? {}
          : { beads: beads.map(({ from, to }) => ({ from: mm(from), to: mm(to) })) }),
      },
      bottom: isSeamed(can.bottom) ? OPEN : CUT,
      top: CUT,
      trim: { height: mm(markedDown(height)) },
      openings: {
        windows: {
          kind: 'row',
          duty: 'outlet',
          hole: { window: { width: mm(width), height: mm(tall) } },
          count,
          height: mm(drop + tall / 2),
          from: 'top',
        },
      },
    },
  }
}
