import { MAKING_CAUTIONS } from '../caution.ts'
import type { Point, Shape } from '../drawing.ts'
import { breakLines, emOf } from '../lettering/measure.ts'
import { SMALL_SIZE as SMALL } from '../lettering/sizes.ts'

/** From base line to base line [em]. */
const LEADING = 1.12
/** From base line to base line of what is read once [mm]. */
export const PITCH = emOf(SMALL) * LEADING

export const text = (
  words: string,
  at: Point,
  size: number,
  {
    anchor = 'start',
    angle = 0,
  }: { readonly anchor?: 'start' | 'middle' | 'end'; readonly angle?: number } = {},
): Shape => ({ kind: 'text', layer: 'text', at, text: words, size, anchor, angle })

/** Lines of text from the top down. */
export const column = (words: readonly string[], at: Point, size: number): readonly Shape[] =>
  words.map((line, index) => text(line, { x: at.x, y: at.y - index * emOf(size) * LEADING }, size))

/** Each caution on a line of its own where the page is narrow, else one after the other. */
export const cautionLines = (width: number): readonly string[] => {
  const apart = MAKING_CAUTIONS.flatMap((caution) => breakLines(caution, SMALL, width))
  const together = breakLines(MAKING_CAUTIONS.join(' '), SMALL, width)
  return apart.length - together.length > 1 ? together : apart
}
