import { markedUp, type PlannedRow } from './row.ts'
import { mm, type PartFile } from './written.ts'

/** Tin of a flattened can [m]. */
const BAND = 0.0002
/** Wider and higher than the hole behind it, so that it can stand wide open [m]. */
const WINDOW_PLAY = { width: 0.001, height: 0.002 }

/** A band whose windows stand over the holes of an intake, `over` of it above and below them, and how high it sits [m]. */
export const damperOver = (
  { bit, count, height }: PlannedRow,
  over: number,
): { readonly part: PartFile; readonly raised: number } => {
  const bandHeight = markedUp(bit.diameter + 2 * over)
  return {
    raised: height - bandHeight / 2,
    part: {
      form: 'band',
      role: 'damper',
      height: mm(bandHeight),
      thickness: mm(BAND),
      openings: {
        windows: {
          kind: 'row',
          duty: 'intake',
          hole: {
            window: {
              width: mm(bit.diameter + WINDOW_PLAY.width),
              height: mm(bit.diameter + WINDOW_PLAY.height),
            },
          },
          count,
          height: mm(bandHeight / 2),
        },
      },
    },
  }
}
