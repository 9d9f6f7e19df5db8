import { formatLength } from '#basis/text/format.ts'
import type { Metres } from '#basis/units.ts'
import type { CanWindow } from '#stove/check/canWindow.ts'
import type { Block } from '../page/block.ts'

const both = (length: number): string => formatLength(length as Metres, { units: 'both' })

/** How to find another can where the planned one is not to be had. */
export const substituteBlocks = (windows: readonly CanWindow[]): readonly Block[] => [
  { kind: 'subheading', text: 'Other cans that would do' },
  {
    kind: 'text',
    text: 'Cans differ from shelf to shelf. Measure the body with a strip of paper: its length divided by 3.14 is the diameter. A can between the two figures goes together with the other parts as planned; keep number, size and height of the holes. How it then burns is worth another prediction.',
  },
  {
    kind: 'table',
    head: ['in place of', 'body from', 'to', 'height', 'sizes of the trade that fit'],
    widths: [3, 3.4, 3.4, 4.6, 5],
    rows: windows.map(({ part, least, most, height, trimmed, sizes }) => [
      part,
      both(least),
      both(most),
      trimmed ? `${both(height)} or more, then trimmed` : `as near to ${both(height)} as you find`,
      sizes.length === 0
        ? 'none of the public table: measure'
        : sizes
            .slice(0, 4)
            .map(({ name, code }) => `${name} (${code})`)
            .join(', '),
    ]),
  },
]
