/** What a body is made of: how it looks follows. */
export type Stuff = 'tin' | 'sooty tin' | 'fuel'

/** A solid ready to be shown: three corners a triangle, every corner with its own normal. z is up [mm]. */
export interface Body {
  readonly name: string
  readonly stuff: Stuff
  readonly positions: Float32Array
  readonly normals: Float32Array
  /** Sharp edges and rims, two points a line. */
  readonly edges: Float32Array
}

/** The rims of an opening where they lie in this arrangement, two points a line [mm]. */
export interface OpeningOutline {
  readonly part: string
  readonly opening: string
  readonly lines: Float32Array
}

/** A stove in space. */
export interface SpaceScene {
  readonly bodies: readonly Body[]
  readonly outlines: readonly OpeningOutline[]
  /** Height of its middle, and how far its farthest corner lies from there [mm]. */
  readonly middle: number
  readonly radius: number
  /** From its lowest to its highest point, and its greatest width [mm]. */
  readonly height: number
  readonly width: number
}
