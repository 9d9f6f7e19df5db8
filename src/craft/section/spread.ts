/** Something as high as it is, that wants its middle somewhere. */
export interface Wanting {
  readonly want: number
  readonly height: number
}

interface Block {
  readonly first: number
  readonly count: number
  /** Sum of where the block's top would be for each member to have its wish. */
  readonly sum: number
  readonly height: number
}

const topOf = ({ sum, count, height }: Block, from: number, to: number): number =>
  Math.max(from, Math.min(sum / count, to - height))

/**
 * Tops for a column of things, in order, so that none meet, all lie between `from` and `to` and each is as near to
 * where it wants to be as the others let it (least squares, by merging neighbours that meet). What does not fit at all
 * runs over the lower end.
 */
export const spread = (
  things: readonly Wanting[],
  gap: number,
  from: number,
  to: number,
): readonly number[] => {
  const blocks: Block[] = []
  for (const [first, { want, height }] of things.entries()) {
    let block: Block = { first, count: 1, sum: want - height / 2, height }
    for (let last = blocks.at(-1); last !== undefined; last = blocks.at(-1)) {
      if (topOf(last, from, to) + last.height + gap <= topOf(block, from, to)) break
      blocks.pop()
      // Members of the lower block want the merged top this much higher.
      const shift = last.height + gap
      block = {
        first: last.first,
        count: last.count + block.count,
        sum: last.sum + block.sum - block.count * shift,
        height: shift + block.height,
      }
    }
    blocks.push(block)
  }
  return blocks.flatMap((block) => {
    let top = topOf(block, from, to)
    return things.slice(block.first, block.first + block.count).map(({ height }) => {
      const here = top
      top += height + gap
      return here
    })
  })
}
