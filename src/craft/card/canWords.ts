import { isSeamed } from '#stove/can/ends.ts'
import { bodyAtEnd } from '#stove/can/taper.ts'
import type { Can, CanEnd, Part } from '#stove/model.ts'
import type { Block } from './block.ts'
import { size } from './length.ts'

/** What is left of an end, in a few words. */
export const endWords = (which: 'bottom' | 'top', end: CanEnd): string => {
  switch (end.kind) {
    case 'plain':
    case 'drawn':
      return `${which} whole`
    case 'pull-off':
      return `${which} pulled off, ${size(end.opening.value)} open`
    case 'friction':
      return `lid off, ring ${size(end.opening.value)} open`
    case 'open':
      return `${which} cut out`
    case 'cut':
      return `${which} trimmed off`
  }
}

/** Of a can that tapers, at either edge; the first is the one that a picture says. */
const bodyWidths = (can: Can): readonly (readonly [what: string, value: number])[] =>
  can.taper === undefined
    ? [['body', can.bodyDiameter.value]]
    : [
        ['bottom edge', bodyAtEnd(can, 'bottom').value],
        ['top edge', bodyAtEnd(can, 'top').value],
      ]

/** Widths of a can, each with what it is measured over. */
export const canWidths = (can: Can): readonly (readonly [what: string, value: number])[] => [
  ...bodyWidths(can),
  ...(isSeamed(can.bottom) || isSeamed(can.top) ? [['over the seam', can.seamDiameter.value] as const] : []),
]

/** Size code, or that it was measured. */
export const canName = ({ code }: Can): string => (code === null ? 'can as measured' : `can ${code}`)

/** A can's own sizes; body and height stand in the picture. */
export const canBlock = (can: Can): Block => ({
  name: canName(can),
  opening: null,
  key: null,
  lines: [
    ...canWidths(can)
      .slice(1)
      .map(([what, value]) => `${what} ${size(value)}`),
    `${endWords('bottom', can.bottom)}, ${endWords('top', can.top)}`,
  ],
})

/** A can in the list of a stove's cans. */
export const canInList = (name: string, can: Can): Block => ({
  name: can.code === null ? name : `${name}, ${canName(can)}`,
  opening: null,
  key: null,
  lines: [
    ...bodyWidths(can).map(([what, value]) => `${what} ${size(value)} wide`),
    `${size(can.height.value)} high`,
  ],
})

/** What a part is, where its name does not say so. */
export const roleWords = (name: string, part: Part): string | null =>
  name.toLowerCase() === part.role ? null : part.role
