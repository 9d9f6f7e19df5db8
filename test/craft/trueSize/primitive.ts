/** What a reader of others found in a file: millimetres, x to the right, y up, angles in degrees anticlockwise. */

export interface Spot {
  readonly x: number
  readonly y: number
}

export type Kind = 'cut' | 'drill' | 'fold' | 'mark' | 'paper' | 'dimension'

export type Primitive =
  | { readonly kind: 'circle'; readonly layer: string; readonly centre: Spot; readonly radius: number }
  | {
      readonly kind: 'arc'
      readonly layer: string
      readonly centre: Spot
      readonly radius: number
      readonly ends: readonly [Spot, Spot]
    }
  | {
      readonly kind: 'path'
      readonly layer: string
      readonly points: readonly Spot[]
      readonly closed: boolean
    }

export type Path = Extract<Primitive, { kind: 'path' }>
export type Round = Extract<Primitive, { kind: 'circle' }>

export const pathsOn = (items: readonly Primitive[], layer: Kind): readonly Path[] =>
  items.flatMap((item) => (item.kind === 'path' && item.layer === layer ? [item] : []))

export const roundsOn = (items: readonly Primitive[], layer: Kind): readonly Round[] =>
  items.flatMap((item) => (item.kind === 'circle' && item.layer === layer ? [item] : []))

export const arcsOn = (items: readonly Primitive[], layer: Kind) =>
  items.flatMap((item) => (item.kind === 'arc' && item.layer === layer ? [item] : []))

export const apart = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y)
