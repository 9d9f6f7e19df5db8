import type { Problem } from '#basis/problem.ts'
import type { Artefact } from '#compose/artefact/artefacts.ts'
import type { ArtefactFile } from '#compose/artefact/file.ts'
import type { MakingWish } from '#compose/artefact/wish.ts'
import type { Arrangement } from '#craft/solid/arrange.ts'
import type { Bit, Stove } from '#stove/model.ts'
import type { ShelfCan, StartChoice } from '#stove/start/choice.ts'
import type { SpaceScene } from '../../space/scene.ts'
import type { PossibleStarts, StartShown } from '../../startStove/work.ts'

/** A page of the plan, to be looked at. */
export interface PlanPage {
  readonly svg: string
  readonly label: string
  /** [mm] */
  readonly width: number
  readonly height: number
}

export interface PlanPages {
  readonly pages: readonly PlanPage[]
  /** Letters of the maker's own words that print as `?`. */
  readonly missingLetters: readonly string[]
  /** Why it does not burn as drawn, or null. */
  readonly noBurn: string | null
}

/** How a stove is to be seen in space. */
export interface SpaceWish {
  readonly stove: Stove
  readonly arrangement: Exclude<Arrangement, 'parts'>
}

/** Everything the second worker does, by name: what it takes, what it gives. */
export interface Jobs {
  readonly pages: { readonly wish: MakingWish; readonly done: PlanPages }
  readonly make: {
    readonly wish: MakingWish & { readonly artefact: Artefact | 'everything' }
    /** Null where there is nothing of the kind in this stove. */
    readonly done: ArtefactFile | null
  }
  readonly space: { readonly wish: SpaceWish; readonly done: SpaceScene }
  /** The same as a drawing, for a device that shows nothing in space. */
  /** A stove from two cans, or why there is none. */
  readonly start: { readonly wish: StartChoice; readonly done: StartShown }
  /** What could be made of a whole shelf. */
  readonly starts: {
    readonly wish: {
      readonly cans: readonly ShelfCan[]
      readonly bits: readonly Bit[]
      readonly fuel: string
    }
    readonly done: PossibleStarts
  }
  readonly drawn: { readonly wish: SpaceWish & { readonly dark: boolean }; readonly done: string }
}

export type JobName = keyof Jobs

export interface Request {
  readonly id: number
  readonly name: JobName
  readonly wish: unknown
}

/** What the worker says. */
export type Word =
  | { readonly id: number; readonly kind: 'doing'; readonly doing: string; readonly share: number | null }
  | { readonly id: number; readonly kind: 'done'; readonly done: unknown }
  | { readonly id: number; readonly kind: 'refused'; readonly problems: readonly Problem[] }
  | { readonly id: number; readonly kind: 'broken'; readonly sentence: string }
