import { toMillimetres } from '#basis/units.ts'
import type { CanPart, RowOpening } from '#stove/model.ts'
import { placeRow } from '#stove/opening/row.ts'
import { BIT_PLAY, type GuideOptions } from './options.ts'

/** A hole to be guided in a wall: its middle above the part's bottom edge [mm]. */
export interface WallHoleAt {
  readonly opening: string
  readonly position: number
  readonly bearing: number
  readonly height: number
  /** Of the guide hole, play included [mm]. */
  readonly diameter: number
}

export interface GuidedRows {
  readonly holes: readonly WallHoleAt[]
  readonly without: readonly { readonly opening: string; readonly why: string }[]
}

/** Diameter that is drilled and how far above the row's middle it is, or why nothing is [mm]. */
const drilled = ({ hole }: RowOpening): { diameter: number; up: number } | string => {
  if (hole.shape === 'round') return { diameter: toMillimetres(hole.diameter), up: 0 }
  if (hole.shape === 'slit') return 'A slit is cut, not drilled: mark it from the template.'
  if (hole.foot === 'square')
    return 'A window with a square foot is cut, not drilled: mark it from the template.'
  const width = toMillimetres(hole.width)
  const height = toMillimetres(hole.height)
  if (height < width)
    return 'Its round foot reaches over its top and is cut, not drilled: mark it from the template.'
  return { diameter: width, up: width / 2 - height / 2 }
}

/** What can be guided in the wall of a can; positions that are left out stay closed. */
export const guidedRows = (part: CanPart, { bit, pilot }: GuideOptions): GuidedRows => {
  const holes: WallHoleAt[] = []
  const without: { opening: string; why: string }[] = []
  for (const [opening, row] of part.openings) {
    if (row.kind !== 'row') continue
    const what = drilled(row)
    if (typeof what === 'string') {
      without.push({ opening, why: what })
      continue
    }
    const diameter = bit === 'full' ? what.diameter : Math.min(what.diameter, toMillimetres(pilot))
    for (const { position, bearing } of placeRow(row, row.height))
      holes.push({
        opening,
        position,
        bearing,
        height: toMillimetres(row.height) + what.up,
        diameter: diameter + BIT_PLAY,
      })
  }
  return { holes, without }
}
