import type { StoveFile } from '#stove/document/schema.ts'
import { countChange, lengthChange, lengthOf, plainChange, turnChange } from './words.ts'

type PartFile = StoveFile['parts'][string]
export type OpeningFile = NonNullable<PartFile['openings']>[string]
type RowFile = Extract<OpeningFile, { kind: 'row' }>
type PatternFile = Extract<OpeningFile, { kind: 'pattern' }>
type VanesFile = Extract<OpeningFile, { kind: 'vanes' }>

type HoleFile = RowFile['hole']

/** One hole as a maker says it. */
export const holeWords = (hole: HoleFile): string => {
  if ('bit' in hole) return hole.bit
  if ('diameter' in hole) return hole.diameter
  if ('window' in hole) return `windows ${hole.window.width} × ${hole.window.height}`
  return `slits ${hole.slit.length} × ${hole.slit.width}`
}

/** Height from the bottom edge of a wall of this height, whichever edge it was measured from [m]. */
const heightOf = ({ height, from }: RowFile, wall: number | null): number | null => {
  const read = lengthOf(height, 'holeHeight')
  if (read === null) return null
  if (from !== 'top') return read
  return wall === null ? null : wall - read
}

const heightWords = ({ height, from }: RowFile): string =>
  from === 'top' ? `${height} from the top` : height

const heightChange = (
  before: RowFile,
  after: RowFile,
  walls: readonly [number | null, number | null],
): string | null => {
  if ((before.from ?? 'bottom') === (after.from ?? 'bottom')) {
    const up = after.from === 'top' ? (['', 'lower', 'higher'] as const) : (['', 'higher', 'lower'] as const)
    return lengthChange(before.height, after.height, 'holeHeight', up)
  }
  const [was, is] = [heightOf(before, walls[0]), heightOf(after, walls[1])]
  if (was !== null && is !== null && Math.abs(was - is) < 1e-6) return null
  return `${heightWords(before)} → ${heightWords(after)}`
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
): readonly (string | null)[] => {
  const [was, is] = [holeWords(before.hole), holeWords(after.hole)]
  const word = 'slit' in after.hole ? 'slit' : 'window' in after.hole ? 'window' : 'hole'
  return [
    countChange(before.count, after.count, word, `${word}s`),
    was === is && JSON.stringify(before.hole) === JSON.stringify(after.hole)
      ? null
      : was === is
        ? 'holes shaped otherwise'
        : `${was} → ${is}`,
    heightChange(before, after, walls),
    leftOutChange(before.leftOut, after.leftOut),
    turnChange(before.bearing, after.bearing),
    (before.stagger ?? false) === (after.stagger ?? false)
      ? null
      : after.stagger === true
        ? 'staggered'
        : 'staggered no more',
  ]
}

const layoutWords = ({ layout }: PatternFile): string => {
  if ('rings' in layout)
    return `${layout.rings.reduce((sum, { count }) => sum + count, layout.centre === true ? 1 : 0)} holes in rings`
  const [name, filling] =
    'hexagonal' in layout
      ? (['a honeycomb', layout.hexagonal] as const)
      : (['a sunflower', layout.sunflower] as const)
  const how = filling.count === undefined ? `${filling.pitch} apart` : `${filling.count} holes`
  return `${how} in ${name}, margin ${filling.margin}`
}

const patternChanges = (before: PatternFile, after: PatternFile): readonly (string | null)[] => {
  const [was, is] = [layoutWords(before), layoutWords(after)]
  return [
    was === is
      ? JSON.stringify(before.layout) === JSON.stringify(after.layout)
        ? null
        : 'holes laid otherwise'
      : `${was} → ${is}`,
    plainChange('', holeWords(before.hole), holeWords(after.hole)),
  ]
}

const vanesChanges = (before: VanesFile, after: VanesFile): readonly (string | null)[] => [
  countChange(before.count, after.count, 'vane', 'vanes'),
  lengthChange(before.innerRadius, after.innerRadius, 'vaneInnerRadius', [
    'begin',
    'further out',
    'further in',
  ]),
  lengthChange(before.outerRadius, after.outerRadius, 'vaneOuterRadius', [
    'end',
    'further out',
    'further in',
  ]),
  lengthChange(before.width, after.width, 'vaneWidth', ['', 'wider', 'narrower']),
  plainChange('bent', before.angle, after.angle),
  plainChange('bent', before.bend ?? 'up', after.bend ?? 'up'),
  plainChange('turn the gas', before.hand, after.hand),
  turnChange(before.bearing, after.bearing),
]

const shapeChanges = (
  before: OpeningFile,
  after: OpeningFile,
  walls: readonly [number | null, number | null],
): readonly (string | null)[] => {
  if (before.kind === 'row' && after.kind === 'row') return rowChanges(before, after, walls)
  if (before.kind === 'pattern' && after.kind === 'pattern') return patternChanges(before, after)
  if (before.kind === 'bore' && after.kind === 'bore')
    return [lengthChange(before.diameter, after.diameter, 'boreDiameter', ['', 'wider', 'narrower'])]
  if (before.kind === 'vanes' && after.kind === 'vanes') return vanesChanges(before, after)
  return [`${before.kind} → ${after.kind}`]
}

/** What was changed of one opening, thing by thing; `walls`: heights of the wall before and after [m]. */
export const openingChanges = (
  before: OpeningFile,
  after: OpeningFile,
  walls: readonly [number | null, number | null],
): readonly string[] =>
  [
    ...shapeChanges(before, after, walls),
    before.duty === after.duty ? null : `called ${after.duty} instead of ${before.duty}`,
  ].filter((change) => change !== null)

/** An opening that is new or gone, in a few words. */
export const openingWords = (opening: OpeningFile): string => {
  switch (opening.kind) {
    case 'row':
      return `${opening.count} × ${holeWords(opening.hole)}, ${opening.duty}`
    case 'pattern':
      return `${layoutWords(opening)}, ${holeWords(opening.hole)}`
    case 'bore':
      return `a bore of ${opening.diameter}`
    case 'vanes':
      return `${opening.count} vanes`
  }
}
