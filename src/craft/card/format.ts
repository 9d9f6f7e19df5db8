import type { PixelBox } from '../section/sheet.ts'

export type CardShape = 'wide' | 'square'

/** Measures of one shape of card, in its own pixels: x to the right, y down. */
export interface CardFormat {
  readonly shape: CardShape
  readonly width: number
  readonly height: number
  readonly margin: number
  /** Where the picture stands, its dimensions included. */
  readonly picture: PixelBox
  /** Where the sizes stand; `top` is under the head, wherever that ends. */
  readonly text: Omit<PixelBox, 'top'>
  readonly columns: { readonly count: number; readonly gap: number }
  readonly head: {
    readonly left: number
    /** Base line of the stove's name. */
    readonly eyebrow: number
    /** Base line of the card's name. */
    readonly title: number
  }
  /** Base lines of the foot, and the rule over it. */
  readonly foot: {
    readonly rule: number
    readonly lines: readonly number[]
    readonly imprint: number
  }
  /** Ems. */
  readonly em: CardEms
  /** Strokes [px]. */
  readonly stroke: { readonly tin: number; readonly hole: number; readonly thin: number }
}

export interface CardEms {
  readonly title: number
  readonly smallTitle: number
  readonly eyebrow: number
  readonly sub: number
  readonly name: number
  readonly key: number
  readonly line: number
  readonly dimension: number
  readonly caution: number
  readonly imprint: number
}

/**
 * Smallest lettering that carries a size, as a share of the card's width: on a card that is seen 360 px wide its em is then 9 px.
 */
export const SMALLEST_SIZE = 9 / 360

/** Ems of every lettering, shape by shape [px]. */
const EMS: Readonly<Record<keyof CardEms, Readonly<Record<CardShape, number>>>> = {
  title: { wide: 100, square: 76 },
  smallTitle: { wide: 72, square: 52 },
  eyebrow: { wide: 46, square: 32 },
  sub: { wide: 48, square: 31 },
  name: { wide: 50, square: 34 },
  key: { wide: 60, square: 36 },
  line: { wide: 50, square: 32 },
  dimension: { wide: 48, square: 30 },
  caution: { wide: 41, square: 28 },
  imprint: { wide: 34, square: 24 },
}

const emsOf = (shape: CardShape): CardEms =>
  Object.fromEntries(Object.entries(EMS).map(([what, ems]) => [what, ems[shape]])) as unknown as CardEms

const wide: CardFormat = {
  shape: 'wide',
  width: 1920,
  height: 1080,
  margin: 72,
  picture: { left: 72, right: 1010, top: 66, bottom: 906 },
  text: { left: 1080, right: 1848, bottom: 938 },
  columns: { count: 1, gap: 0 },
  head: { left: 1080, eyebrow: 112, title: 212 },
  foot: { rule: 952, lines: [1000, 1046], imprint: 1046 },
  em: emsOf('wide'),
  stroke: { tin: 5, hole: 4, thin: 2.4 },
}

const square: CardFormat = {
  shape: 'square',
  width: 1080,
  height: 1080,
  margin: 54,
  picture: { left: 54, right: 1026, top: 176, bottom: 606 },
  text: { left: 54, right: 1026, bottom: 936 },
  columns: { count: 2, gap: 34 },
  head: { left: 54, eyebrow: 76, title: 150 },
  foot: { rule: 956, lines: [990, 1024, 1058], imprint: 1058 },
  em: emsOf('square'),
  stroke: { tin: 3.6, hole: 3, thin: 1.8 },
}

export const cardFormats: Readonly<Record<CardShape, CardFormat>> = { wide, square }
