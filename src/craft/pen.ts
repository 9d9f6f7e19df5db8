import type { Layer } from './drawing.ts'

/** How a layer is drawn so that it stays apart from the others in black and white [mm]. */
export interface Pen {
  readonly width: number
  /** 0 is black. */
  readonly grey: number
  /** Lengths of dash and gap in turn; empty for a solid line. */
  readonly dash: readonly number[]
}

export const PENS: Readonly<Record<Layer, Pen>> = {
  cut: { width: 0.5, grey: 0, dash: [] },
  drill: { width: 0.2, grey: 0, dash: [] },
  fold: { width: 0.3, grey: 0, dash: [4, 1.2, 0.6, 1.2] },
  mark: { width: 0.18, grey: 0.45, dash: [1.6, 1.2] },
  paper: { width: 0.3, grey: 0.25, dash: [] },
  text: { width: 0.15, grey: 0, dash: [] },
  dimension: { width: 0.14, grey: 0, dash: [] },
}
