import type { Opening, Part, RowOpening, Stove } from '#stove/model.ts'
import type { FaceOpening } from '../../flat/disc.ts'
import type { CanToFind } from '../../shop/cans.ts'
import type { DrillJob } from '../../shop/drilling.ts'
import type { NamedOpening } from '../../shop/making.ts'
import { CUTTING_CAUTIONS } from '../cautions.ts'
import type { BuildStep } from '../step.ts'

type Named<T extends Opening = Opening> = readonly [name: string, opening: T]

/** Everything a step of one part is made from. */
export interface Bench {
  readonly stove: Stove
  readonly cans: readonly CanToFind[]
  readonly jobs: readonly DrillJob[]
}

export type Where = 'wall' | 'bottom' | 'top' | 'face'

const whereOf = (opening: Opening): Where => (opening.kind === 'row' ? 'wall' : opening.face)

/** Openings of one place in a part, in file order. */
export const openingsAt = (part: Part, where: Where): readonly Named[] =>
  [...part.openings].filter(([, opening]) => whereOf(opening) === where)

export const isRow = (named: Named): named is Named<RowOpening> => named[1].kind === 'row'

export const isFace = (named: Named): named is Named<FaceOpening> => named[1].kind !== 'row'

export const step = (
  key: string,
  title: string,
  part: string,
  rest: Pick<BuildStep, 'sentences' | 'makes' | 'tools' | 'checks' | 'picture'>,
): BuildStep => ({ key, title, parts: [part], places: null, cautions: CUTTING_CAUTIONS, ...rest })

export const namesOf = (part: string, openings: readonly Named[]): readonly NamedOpening[] =>
  openings.map(([opening]) => ({ part, opening }))

export const whereWord = (part: Part, where: Where): string =>
  part.form !== 'can' ? '' : where === 'wall' ? 'wall of ' : `${where} of `
