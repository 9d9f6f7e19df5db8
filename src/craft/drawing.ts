import type { Millimetres } from '#basis/units.ts'

/**
 * Pens and tools: what a line is for decides how every writer draws it. `cut` is cut in the tin; `paper`
 * is the edge of the template itself, cut with scissors.
 */
export type Layer = 'cut' | 'drill' | 'fold' | 'mark' | 'paper' | 'text' | 'dimension'

/** In the order in which writers lay them on each other: fine marks first, so that the lines that matter lie on top. */
export const LAYERS: readonly Layer[] = ['mark', 'dimension', 'paper', 'fold', 'drill', 'cut', 'text']

/** x to the right, y up [mm]. */
export interface Point {
  readonly x: number
  readonly y: number
}

/** Angles in degrees anticlockwise from +x. */
export type Shape =
  | { readonly kind: 'line'; readonly layer: Layer; readonly from: Point; readonly to: Point }
  | {
      readonly kind: 'polyline'
      readonly layer: Layer
      readonly points: readonly Point[]
      readonly closed: boolean
    }
  | { readonly kind: 'circle'; readonly layer: Layer; readonly centre: Point; readonly radius: number }
  | {
      readonly kind: 'arc'
      readonly layer: Layer
      readonly centre: Point
      readonly radius: number
      readonly from: number
      readonly to: number
    }
  | {
      readonly kind: 'text'
      readonly layer: Layer
      readonly at: Point
      readonly text: string
      /** Height of a capital letter [mm]. */
      readonly size: number
      readonly anchor: 'start' | 'middle' | 'end'
      readonly angle: number
    }

/** A flat picture at true size, in millimetres, its lower left corner at the origin. */
export interface Drawing {
  readonly title: string
  readonly width: Millimetres
  readonly height: Millimetres
  readonly shapes: readonly Shape[]
  /** Paragraphs that go with it; each writer sets them where it has room. */
  readonly notes: readonly string[]
}
