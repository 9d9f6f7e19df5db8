import type { Shape } from '../drawing.ts'
import { breakLines, emOf } from '../lettering/measure.ts'
import { LINE_SPACING } from '../lettering/room.ts'
import { NOTE_SIZE, TITLE_SIZE } from '../lettering/sizes.ts'
import { moved } from '../move.ts'

/** A heading and paragraphs, set in a column. */
export interface SetNotes {
  /** With the column's lower left corner at the origin. */
  readonly shapes: readonly Shape[]
  readonly width: number
  readonly height: number
}

const PARAGRAPH_GAP = 1

/** A small picture beside the words, its lower left corner at the origin. */
export interface Figure {
  readonly shapes: readonly Shape[]
  readonly width: number
  readonly height: number
}

/** Between words and the picture beside them [mm]. */
const BESIDE_FIGURE = 4

/** Sets a heading and paragraphs in a column of the given width, a picture in its upper right corner [mm]. */
export const setNotes = (
  heading: string,
  paragraphs: readonly string[],
  column: number,
  figure: Figure | null = null,
): SetNotes => {
  const width = figure === null ? column : column - figure.width - BESIDE_FIGURE
  const lines = [
    ...breakLines(heading, TITLE_SIZE, width).map((text) => ({ text, size: TITLE_SIZE, gap: 0 })),
    ...paragraphs.flatMap((paragraph) =>
      breakLines(paragraph, NOTE_SIZE, width).map((text, index) => ({
        text,
        size: NOTE_SIZE,
        gap: index === 0 ? PARAGRAPH_GAP : 0,
      })),
    ),
  ]
  let down = 0
  const baselines = lines.map(({ size, gap }) => {
    down += gap + (down === 0 ? size + emOf(size) * 0.1 : emOf(size) * LINE_SPACING)
    return down
  })
  const height = Math.max(down + emOf(NOTE_SIZE) * 0.3, (figure?.height ?? 0) + 1)
  const shapes = lines.map(
    ({ text, size }, index): Shape => ({
      kind: 'text',
      layer: 'text',
      at: { x: 0, y: height - (baselines[index] ?? 0) },
      text,
      size,
      anchor: 'start',
      angle: 0,
    }),
  )
  const picture = (figure?.shapes ?? []).map((shape) =>
    moved(shape, width + BESIDE_FIGURE, height - (figure?.height ?? 0) - 0.5),
  )
  return { shapes: [...shapes, ...picture], width: column, height }
}
