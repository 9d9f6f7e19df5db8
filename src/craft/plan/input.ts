import type { BurnReport } from '#science/answers/burn/report.ts'
import type { CanWindow } from '#stove/check/canWindow.ts'
import type { Finding, Stove } from '#stove/model.ts'
import type { BurnFigureInput } from '../figure/input.ts'
import type { LetteringFonts } from '../pdf/face.ts'
import type { BurnSummary } from '../section/airState.ts'
import type { ShopList } from '../shop/list.ts'
import type { BuildStep } from '../steps/step.ts'
import type { TurntableInput } from './turntable.ts'

/** The fire as predicted, in the shapes that pictures and tables take. */
export interface PlanBurn {
  readonly summary: BurnSummary
  readonly report: BurnReport
  readonly figure: BurnFigureInput
}

/** The stove in space: pictures for paper, solids to turn on a screen. SVGs of this house. */
export interface PlanViews {
  readonly whole: string
  readonly cut: string
  readonly exploded: string
  readonly turntable: readonly TurntableInput[]
}

/** Sums a maker asks before setting out: what it weighs and how small it packs, in sentences. */
export interface PlanBundle {
  readonly weight: string
  readonly packed: string
}

/** Everything a plan is made from. Nothing in it is worked out here: predictions, lists, solids come as plain data. */
export interface PlanInput {
  readonly stove: Stove
  /** The stove file as it was read: it goes on the plan as a code. */
  readonly file: string
  readonly findings: readonly Finding[]
  /** Null with the reason, for a stove that does not burn. */
  readonly burn: PlanBurn | { readonly noBurn: string }
  readonly windows: readonly CanWindow[]
  readonly shop: ShopList
  readonly steps: readonly BuildStep[]
  readonly bundle: PlanBundle | null
  readonly views: PlanViews | null
  /** Day the plan bears, `2031-05-17`. */
  readonly date: string
  /** Of the program. */
  readonly version: string
  /** Who publishes it and under what terms; null: nobody said. */
  readonly author: string | null
  readonly licence: string | null
  readonly fonts: LetteringFonts
  /** What runs in the page for a screen. */
  readonly script: string
}
