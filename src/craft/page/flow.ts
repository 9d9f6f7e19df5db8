import type { Block } from './block.ts'
import { INK, MUTED } from './paint.ts'
import { cautions } from './strips/cautions.ts'
import { facts } from './strips/facts.ts'
import { fieldLines } from './strips/fieldLines.ts'
import { picture } from './strips/picture.ts'
import { bundled, stackHeight } from './strips/stack.ts'
import type { Strip } from './strips/strip.ts'
import { table } from './strips/table.ts'
import { heading, list, paragraph } from './strips/text.ts'
import { BODY, HEADING, SMALL, SUBHEADING } from './type.ts'

const GUTTER = 18
/** What goes on a page of Letter paper, margins off; anything taller is cut after all. */
const TALLEST_BUNDLE = 670

/** Blocks one under the other in a column of a width, nothing over the first [pt]. */
export const heightOfBlocks = (blocks: readonly Block[], width: number): number =>
  stackHeight(blocks.flatMap((block) => flow(block, width)))

/** A block in a column of a width, as strips. */
export const flow = (block: Block, width: number): readonly Strip[] => {
  switch (block.kind) {
    case 'heading':
      return heading(block.text, HEADING, 18, width)
    case 'subheading':
      return heading(block.text, SUBHEADING, 11, width)
    case 'text':
      return paragraph(block.text, block.muted ? SMALL : BODY, width, 4, block.muted ? MUTED : INK)
    case 'list':
      return list(block.items, block.numbered ?? false, width)
    case 'table':
      return table(block, width)
    case 'facts':
      return facts(block.facts, width)
    case 'picture':
      return picture(block, width)
    case 'cautions':
      return cautions(block.title, block.items, width)
    case 'fields':
      return fieldLines(block.fields, width)
    case 'beside': {
      const left = (width - GUTTER) * block.share
      const right = width - GUTTER - left
      // With nothing on its left, what stands on the right may go on to the next page.
      if (block.left.length === 0)
        return block.right
          .flatMap((one) => flow(one, right))
          .map((strip, i) => ({
            ...strip,
            keep: strip.keep || i === 0,
            draw: (canvas, x, y) => strip.draw(canvas, x + left + GUTTER, y),
          }))
      return [
        bundled(
          [
            { strips: block.left.flatMap((one) => flow(one, left)), x: 0 },
            { strips: block.right.flatMap((one) => flow(one, right)), x: left + GUTTER },
          ],
          10,
        ),
      ]
    }
    case 'together': {
      const strips = block.blocks.flatMap((one) => flow(one, width))
      return stackHeight(strips) > TALLEST_BUNDLE
        ? strips
        : [bundled([{ strips, x: 0 }], strips[0]?.before ?? 0)]
    }
  }
}
