import type { StoveFile } from '#stove/document/schema.ts'
import type { CanItem } from '#stove/document/shelfItem.ts'

// What a stove file says, as a start writes it.

export type PartFile = StoveFile['parts'][string]
export type EndFile = Extract<PartFile, { form: 'can' }>['bottom']

/** A length as text in millimetres. */
export const mm = (length: number): string => `${Number((length * 1000).toFixed(2))} mm`

export const OPEN: EndFile = { end: 'open' }
export const CUT: EndFile = { end: 'cut' }

/** The measures of a can of the shelf without its ends, which a stove decides. */
export const measuresOf = ({ bottom: _, top: __, ...measures }: CanItem): Omit<CanItem, 'bottom' | 'top'> =>
  measures
