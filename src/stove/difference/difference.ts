import { long } from '#basis/text/bothUnits.ts'
import type { StoveFile } from '#stove/document/schema.ts'
import { assemblyDifferences } from './assembly.ts'
import { partDifferences } from './part.ts'
import { type Difference, plainChange, type Telling, tellingBy } from './words.ts'

export type { Difference } from './words.ts'

/** How whoever reads wants things said. */
export interface Wording {
  /** A length, in whatever unit it was written [from m]. */
  readonly length: (length: number) => string
  /** A fuel of the table, by its key. */
  readonly fuel: (key: string) => string
}

const PLAIN: Wording = { length: long, fuel: (key) => key }

const fuelDifferences = (
  before: StoveFile['fuel'],
  after: StoveFile['fuel'],
  telling: Telling,
  called: Wording['fuel'],
): readonly Difference[] => {
  const said = (what: string): Difference => ({ part: null, opening: null, subject: 'fuel', what })
  const name = ({ kind, own }: StoveFile['fuel']): string =>
    own?.name ?? (kind === undefined ? '' : called(kind))
  const [was, is] = [name(before), name(after)]
  const changes = [
    was === is
      ? JSON.stringify(before.own) === JSON.stringify(after.own)
        ? null
        : `${is} measured anew`
      : `${was} → ${is}`,
    telling.change(before.level, after.level, 'fuelLevel', ['filled', 'higher', 'lower']),
    plainChange('moisture', before.moisture ?? 'as usual', after.moisture ?? 'as usual'),
    plainChange('fines', before.fines ?? 'none', after.fines ?? 'none'),
    plainChange('packing', before.packing ?? 'tipped', after.packing ?? 'tipped'),
  ]
  return changes.flatMap((what) => (what === null ? [] : [said(what)]))
}

const potDifferences = (
  before: StoveFile['pot'],
  after: StoveFile['pot'],
  telling: Telling,
): readonly Difference[] => {
  const said = (what: string): Difference => ({ part: null, opening: null, subject: 'pot', what })
  if (before === undefined && after === undefined) return []
  if (before === undefined) return [said(`a pot of ${telling.length(after?.diameter ?? '', 'potDiameter')}`)]
  if (after === undefined) return [said('no pot any more')]
  const changes = [
    telling.change(before.diameter, after.diameter, 'potDiameter', ['', 'wider', 'narrower']),
    telling.change(before.gap ?? '0 mm', after.gap ?? '0 mm', 'potGap', [
      'stands',
      'higher over the rim',
      'lower over the rim',
    ]),
  ]
  return changes.flatMap((what) => (what === null ? [] : [said(what)]))
}

/**
 * What a maker changed from one stove file to another, thing by thing, in the words of whoever made it: part and opening by
 * their own names, what it was before and after. Nothing that only reads differently (`16 mm` for `0.016 m`) is told.
 */
export const stoveDifference = (
  before: StoveFile,
  after: StoveFile,
  { length, fuel }: Wording = PLAIN,
): readonly Difference[] => {
  const telling = tellingBy(length)
  return [
    ...partDifferences(before.parts, after.parts, telling),
    ...assemblyDifferences(before, after, telling),
    ...fuelDifferences(before.fuel, after.fuel, telling, fuel),
    ...potDifferences(before.pot, after.pot, telling),
    ...((before.about ?? '') === (after.about ?? '')
      ? []
      : [{ part: null, opening: null, subject: 'remarks', what: 'rewritten' }]),
  ]
}

/** A difference as one line: `shell, intake: 12 → 14 holes`. */
export const differenceLine = ({ subject, what }: Difference): string => `${subject}: ${what}`
