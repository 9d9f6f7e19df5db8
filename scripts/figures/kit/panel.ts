import type { Axis } from './axis.ts'

/** Ember for heat, cool for air, ink for what is neither; char and fuel as on the section. */
export type Tone = 'ember' | 'cool' | 'ink' | 'muted' | 'fuel' | 'char'

export type Point = readonly [x: number, y: number]

/** A line, broken where a value is no number. */
export interface Series {
  readonly points: readonly Point[]
  readonly tone: Tone
  /** Stands at the line's right end. */
  readonly label?: string
  readonly dash?: boolean
  readonly width?: number
}

/** A shaded strip: between two values of one axis, or between two lines. */
export interface Shade {
  readonly tone: Tone
  readonly strength?: number
  readonly area:
    | { readonly axis: 'x' | 'y'; readonly from: number; readonly to: number }
    | { readonly low: readonly Point[]; readonly high: readonly Point[] }
}

/** A word at a place in the panel. */
export interface Note {
  readonly at: Point
  readonly text: string
  readonly anchor?: 'start' | 'middle' | 'end'
  readonly dx?: number
  readonly dy?: number
  readonly tone?: Tone
}

/** Where something stands: a dot on a line, with a word. */
export interface Dot {
  readonly at: Point
  readonly tone: Tone
  readonly hollow?: boolean
}

export interface Panel {
  /** What the upright axis shows, over the panel. */
  readonly heading: string
  readonly x: Axis
  readonly y: Axis
  readonly series: readonly Series[]
  readonly shades?: readonly Shade[]
  readonly dots?: readonly Dot[]
  readonly notes?: readonly Note[]
  /** Lines across at a value, such as zero. */
  readonly rules?: readonly { readonly axis: 'x' | 'y'; readonly at: number; readonly dash?: boolean }[]
  readonly height?: number
  /** Share of the page's width; all alike unless said. */
  readonly share?: number
  /** Leave out the label and ticks under it, where the panel below has them. */
  readonly bareX?: boolean
}
