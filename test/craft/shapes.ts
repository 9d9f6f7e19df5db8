import type { Drawing, Shape } from '#craft/drawing.ts'

/** Reading drawings back: only what is drawn, nothing of how it was worked out. */

export type Circle = Extract<Shape, { kind: 'circle' }>
export type Text = Extract<Shape, { kind: 'text' }>

export const circlesOf = (shapes: readonly Shape[], layer: Shape['layer']): readonly Circle[] =>
  shapes.flatMap((shape) => (shape.kind === 'circle' && shape.layer === layer ? [shape] : []))

export const textsOf = (shapes: readonly Shape[]): readonly Text[] =>
  shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []))

export const drawingOf = (drawings: readonly Drawing[], title: string): Drawing => {
  const found = drawings.find((drawing) => drawing.title === title)
  if (found === undefined)
    throw new Error(`No drawing "${title}" among ${drawings.map((drawing) => drawing.title).join('; ')}`)
  return found
}

/** The strip's own outline: left end, and the line at its right end where the overlap begins [mm]. */
export const stripEnds = (
  drawing: Drawing,
): { readonly left: number; readonly right: number; readonly low: number } => {
  const outline = drawing.shapes.find(
    (shape) =>
      shape.kind === 'polyline' &&
      shape.closed &&
      shape.points.length >= 6 &&
      (shape.layer === 'paper' || shape.layer === 'cut'),
  )
  if (outline?.kind !== 'polyline') throw new Error(`"${drawing.title}" has no outline of a strip`)
  const [start, join] = outline.points
  if (start === undefined || join === undefined) throw new Error('an outline has corners')
  return { left: start.x, right: join.x, low: start.y }
}

/** Where the front is on a strip: the tip of its pointer [mm]. */
export const frontOf = (drawing: Drawing): number => {
  const pointer = drawing.shapes.find((shape) => shape.kind === 'polyline' && shape.points.length === 3)
  const tip = pointer?.kind === 'polyline' ? pointer.points[2] : undefined
  if (tip === undefined) throw new Error(`"${drawing.title}" shows no front`)
  return tip.x
}
