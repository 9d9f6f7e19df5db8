import type { StoveFile } from '#stove/document/schema.ts'
import { type ChangeWords, countChange, lengthOf, plainChange, type Telling, turnChange } from './words.ts'

type PartFile = StoveFile['parts'][string]
export type OpeningFile = NonNullable<PartFile['openings']>[string]
type RowFile = Extract<OpeningFile, { kind: 'row' }>
type PatternFile = Extract<OpeningFile, { kind: 'pattern' }>
type VanesFile = Extract<OpeningFile, { kind: 'vanes' }>

type HoleFile = RowFile['hole']

/** One hole as a maker says it. */
const holeWords = (hole: HoleFile, { bit, length }: Telling): string => {
  if ('bit' in hole) return bit(hole.bit)
  if ('diameter' in hole) return length(hole.diameter, 'holeDiameter')
  if ('window' in hole)
    return `windows ${length(hole.window.width, 'windowWidth')} × ${length(hole.window.height, 'windowHeight')}`
  return `slits ${length(hole.slit.length, 'slitLength')} × ${length(hole.slit.width, 'slitWidth')}`
}

/** Height from the bottom edge of a wall of this height, whichever edge it was measured from [m]. */
const heightOf = ({ height, from }: RowFile, wall: number | null): number | null => {
  const read = lengthOf(height, 'holeHeight')
  if (read === null) return null
  if (from !== 'top') return read
  return wall === null ? null : wall - read
}

const heightWords = ({ height, from }: RowFile, { length }: Telling): string =>
  `${length(height, 'holeHeight')}${from === 'top' ? ' from the top' : ''}`

const heightChange = (
  before: RowFile,
  after: RowFile,
  walls: readonly [number | null, number | null],
  telling: Telling,
): string | null => {
  if ((before.from ?? 'bottom') === (after.from ?? 'bottom')) {
    const up = after.from === 'top' ? (['', 'lower', 'higher'] as const) : (['', 'higher', 'lower'] as const)
    return telling.change(before.height, after.height, 'holeHeight', up)
  }
  const [was, is] = [heightOf(before, walls[0]), heightOf(after, walls[1])]
  if (was !== null && is !== null && Math.abs(was - is) < 1e-6) return null
  return `${heightWords(before, telling)} → ${heightWords(after, telling)}`
}

const leftOutChange = (before: readonly number[] = [], after: readonly number[] = []): string | null => {
  const gone = before.filter((position) => !after.includes(position))
  const come = after.filter((position) => !before.includes(position))
  const parts = [
    come.length === 0 ? null : `left out at ${come.join(', ')}`,
    gone.length === 0 ? null : `drilled again at ${gone.join(', ')}`,
  ].filter((part) => part !== null)
  return parts.length === 0 ? null : parts.join(', ')
}

const rowChanges = (
  before: RowFile,
  after: RowFile,
  walls: readonly [number | null, number | null],
  telling: Telling,
): readonly (string | null)[] => {
  const [was, is] = [holeWords(before.hole, telling), holeWords(after.hole, telling)]
  const word = 'slit' in after.hole ? 'slit' : 'window' in after.hole ? 'window' : 'hole'
  return [
    countChange(before.count, after.count, word, `${word}s`),
    was === is && JSON.stringify(before.hole) === JSON.stringify(after.hole)
      ? null
      : was === is
        ? 'holes shaped otherwise'
        : `${was} → ${is}`,
    heightChange(before, after, walls, telling),
    leftOutChange(before.leftOut, after.leftOut),
    turnChange(before.bearing, after.bearing),
    (before.stagger ?? false) === (after.stagger ?? false)
      ? null
      : after.stagger === true
        ? 'staggered'
        : 'staggered no more',
  ]
}

type LayoutFile = PatternFile['layout']

const fillingOf = (layout: Exclude<LayoutFile, { rings: unknown }>) =>
  'hexagonal' in layout
    ? ({ name: 'a honeycomb', filling: layout.hexagonal } as const)
    : ({ name: 'a sunflower', filling: layout.sunflower } as const)

const layoutWords = ({ layout }: PatternFile, { length }: Telling): string => {
  if ('rings' in layout)
    return `${layout.rings.reduce((sum, { count }) => sum + count, layout.centre === true ? 1 : 0)} holes in rings`
  const { name, filling } = fillingOf(layout)
  const how =
    filling.count === undefined
      ? `${length(filling.pitch ?? '', 'patternPitch')} apart`
      : `${filling.count} holes`
  return `${how} in ${name}, margin ${length(filling.margin, 'patternMargin')}`
}

/** What was changed of a layout that is of the same kind still, thing by thing; null where it is of another. */
const fillingChanges = (
  before: LayoutFile,
  after: LayoutFile,
  telling: Telling,
): readonly (string | null)[] | null => {
  if ('rings' in before || 'rings' in after) return null
  const [was, is] = [fillingOf(before), fillingOf(after)]
  if (was.name !== is.name || (was.filling.count === undefined) !== (is.filling.count === undefined))
    return null
  const words = (verb: string): ChangeWords => [verb, 'wider', 'narrower']
  return [
    countChange(was.filling.count ?? 0, is.filling.count ?? 0, 'hole', 'holes'),
    telling.change(was.filling.pitch ?? '', is.filling.pitch ?? '', 'patternPitch', words('spaced')),
    telling.change(was.filling.margin, is.filling.margin, 'patternMargin', words('margin')),
  ]
}

const layoutChanges = (
  before: PatternFile,
  after: PatternFile,
  telling: Telling,
): readonly (string | null)[] => {
  const changes = fillingChanges(before.layout, after.layout, telling)
  if (changes?.some((change) => change !== null)) return changes
  const [was, is] = [layoutWords(before, telling), layoutWords(after, telling)]
  if (was !== is) return [`${was} → ${is}`]
  return JSON.stringify(before.layout) === JSON.stringify(after.layout) ? [] : ['holes laid otherwise']
}

const patternChanges = (
  before: PatternFile,
  after: PatternFile,
  telling: Telling,
): readonly (string | null)[] => [
  ...layoutChanges(before, after, telling),
  plainChange('', holeWords(before.hole, telling), holeWords(after.hole, telling)),
]

const vanesChanges = (before: VanesFile, after: VanesFile, telling: Telling): readonly (string | null)[] => [
  countChange(before.count, after.count, 'vane', 'vanes'),
  telling.change(before.innerRadius, after.innerRadius, 'vaneInnerRadius', [
    'begin',
    'further out',
    'further in',
  ]),
  telling.change(before.outerRadius, after.outerRadius, 'vaneOuterRadius', [
    'end',
    'further out',
    'further in',
  ]),
  telling.change(before.width, after.width, 'vaneWidth', ['', 'wider', 'narrower']),
  plainChange('bent', before.angle, after.angle),
  plainChange('bent', before.bend ?? 'up', after.bend ?? 'up'),
  plainChange('turn the gas', before.hand, after.hand),
  turnChange(before.bearing, after.bearing),
]

const shapeChanges = (
  before: OpeningFile,
  after: OpeningFile,
  walls: readonly [number | null, number | null],
  telling: Telling,
): readonly (string | null)[] => {
  if (before.kind === 'row' && after.kind === 'row') return rowChanges(before, after, walls, telling)
  if (before.kind === 'pattern' && after.kind === 'pattern') return patternChanges(before, after, telling)
  if (before.kind === 'bore' && after.kind === 'bore')
    return [telling.change(before.diameter, after.diameter, 'boreDiameter', ['', 'wider', 'narrower'])]
  if (before.kind === 'vanes' && after.kind === 'vanes') return vanesChanges(before, after, telling)
  return [`${before.kind} → ${after.kind}`]
}

/** What was changed of one opening, thing by thing; `walls`: heights of the wall before and after [m]. */
export const openingChanges = (
  before: OpeningFile,
  after: OpeningFile,
  walls: readonly [number | null, number | null],
  telling: Telling,
): readonly string[] =>
  [
    ...shapeChanges(before, after, walls, telling),
    before.duty === after.duty ? null : `called ${after.duty} instead of ${before.duty}`,
  ].filter((change) => change !== null)

/** An opening that is new or gone, in a few words. */
export const openingWords = (opening: OpeningFile, telling: Telling): string => {
  switch (opening.kind) {
    case 'row':
      return `${opening.count} × ${holeWords(opening.hole, telling)}, ${opening.duty}`
    case 'pattern':
      return `${layoutWords(opening, telling)}, each ${holeWords(opening.hole, telling)}`
    case 'bore':
      return `a bore of ${telling.length(opening.diameter, 'boreDiameter')}`
    case 'vanes':
      return `${opening.count} vanes, ${telling.length(opening.width, 'vaneWidth')} wide, bent ${opening.angle}`
  }
}
