import type { StoveFile } from '#stove/document/schema.ts'
import type { CanItem } from '#stove/document/shelfItem.ts'
import type { Bit, Can } from '#stove/model.ts'
import type { PlannedRow } from './row.ts'

// What a stove file says, as a start writes it.

export type PartFile = StoveFile['parts'][string]
export type DiscOpeningFile = NonNullable<Extract<PartFile, { form: 'disc' }>['openings']>[string]
export type EndFile = Extract<PartFile, { form: 'can' }>['bottom']

/** A length as text in millimetres. */
export const mm = (length: number): string => `${Number((length * 1000).toFixed(2))} mm`

export const OPEN: EndFile = { end: 'open' }
export const CUT: EndFile = { end: 'cut' }

/** The measures of a can of the shelf without its ends, which a stove decides. */
export const measuresOf = ({ bottom: _, top: __, ...measures }: CanItem): Omit<CanItem, 'bottom' | 'top'> =>
  measures

/** Beads of a can whose bottom was cut off this high [m]. */
export const withoutFoot = (item: CanItem, can: Can, cut: number): Omit<CanItem, 'bottom' | 'top'> => {
  const { beads: _, ...measures } = measuresOf(item)
  const left = can.beads.flatMap(({ from, to }) =>
    to - cut <= 0 ? [] : [{ from: mm(Math.max(0, from - cut)), to: mm(to - cut) }],
  )
  return left.length === 0 ? measures : { ...measures, beads: left }
}

/** A row as it stands in a file; `fromTop`: height of its wall, where it is measured from the top [m]. */
export const rowFile = (
  duty: 'intake' | 'primary' | 'secondary' | 'tertiary' | 'outlet' | 'fixing',
  { bit, count, height }: PlannedRow,
  fromTop: number | null,
) => ({
  kind: 'row' as const,
  duty,
  hole: { bit: bit.name },
  count,
  ...(fromTop === null ? { height: mm(height) } : { height: mm(fromTop - height), from: 'top' as const }),
})

/** The bit nearest to a size. */
export const nearestTo = (bits: readonly Bit[], diameter: number): Bit =>
  bits.reduce((best, bit) =>
    Math.abs(bit.diameter - diameter) < Math.abs(best.diameter - diameter) ? bit : best,
  )
