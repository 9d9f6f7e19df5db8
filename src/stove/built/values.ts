import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import { fieldPath } from '#basis/text/fieldPath.ts'
import { partHeight } from '#stove/assembly/place.ts'
import type { JsonValue } from '#stove/document/json.ts'
import { nearest } from '#stove/document/nearest.ts'
import { valueAt } from '#stove/document/place.ts'
import type { RowOpening, Stove } from '#stove/model.ts'
import type { Measure } from './measure.ts'
import { likelySlip, measureText, offPlan, plausibleOff } from './plausible.ts'
import type { BuiltRead } from './schema.ts'

/** A measure with what was read for it. */
export interface BuiltValue {
  readonly measure: Measure
  /** The mean of its readings [SI unit of the quantity]. */
  readonly value: number
  /** Half of what the readings lie apart. */
  readonly spread: number
  /** As the maker wrote it, where it is one reading. */
  readonly written: string | null
  /** For the height of an opening: the edge it was taken from. */
  readonly from: 'bottom' | 'top'
  /** For the count of a row: the places that stay whole, where the maker said so. */
  readonly leftOut: readonly number[] | null
}

/** Keys that belong to another measure, or are only for the eye. */
const BESIDE = ['plan', 'from', 'leftOut', 'openings']

const problem = (
  code: string,
  path: readonly PropertyKey[],
  value: string,
  allowed: string,
  fix: string,
): Problem => ({ code: `built.${code}`, field: fieldPath(path), value, allowed, fix })

const quoted = (names: Iterable<string>): string => [...names].map((name) => `"${name}"`).join(', ') || 'none'

const unknownName = (
  path: readonly string[],
  name: string,
  names: readonly string[],
  what: string,
): Problem => {
  const near = nearest(name, names)
  return problem(
    `unknown-${what}`,
    [...path, name],
    `"${name}"`,
    `${what === 'part' ? 'a part' : 'an opening'} of this stove: ${quoted(names)}`,
    near === null ? 'Take it out, or use the name of the stove file.' : `Was "${near}" meant?`,
  )
}

/** Names that the stove does not have. */
const nameProblems = (read: BuiltRead, stove: Stove): readonly Problem[] =>
  Object.entries(read.parts ?? {}).flatMap(([name, entry]) => {
    const part = stove.parts.get(name)
    if (part === undefined) return [unknownName(['parts'], name, [...stove.parts.keys()], 'part')]
    const openings = [...part.openings.keys()]
    return Object.keys(entry.openings ?? {})
      .filter((opening) => !part.openings.has(opening))
      .map((opening) => unknownName(['parts', name, 'openings'], opening, openings, 'opening'))
  })

type Group = { readonly [key: string]: unknown }

/** Paths of the file that hold a measure, filled in or blank. */
const writtenPaths = (group: Group, path: readonly string[]): readonly (readonly string[])[] =>
  Object.entries(group).flatMap(([key, value]) => {
    if (value === undefined || BESIDE.includes(key)) return []
    const at = [...path, key]
    return typeof value === 'object' && value !== null && !Array.isArray(value)
      ? writtenPaths(value as Group, at)
      : [at]
  })

/** Measures that this part or opening does not have. */
const strayProblems = (read: BuiltRead, stove: Stove, measures: readonly Measure[]): readonly Problem[] => {
  const known = new Set(measures.map(({ path }) => fieldPath(path)))
  const stray = (path: readonly string[], group: Group): readonly Problem[] =>
    writtenPaths(group, path)
      .filter((at) => !known.has(fieldPath(at)))
      .map((at) => {
        const here = measures.filter((one) => fieldPath(one.path.slice(0, path.length)) === fieldPath(path))
        const kept = here.filter(({ opening }) => (opening === null) === !path.includes('openings'))
        const keys = [...new Set(kept.map((one) => one.path.slice(path.length).join('.')))]
        return problem(
          'not-measured-here',
          at,
          shown(valueAt(read as unknown as JsonValue, at)),
          `of ${path.at(-1)} only ${quoted(keys)}`,
          'Take it out: the plan has nothing like it here.',
        )
      })
  return Object.entries(read.parts ?? {}).flatMap(([name, entry]) => {
    if (!stove.parts.has(name)) return []
    const { openings, ...own } = entry
    return [
      ...stray(['parts', name], own as Group),
      ...Object.entries(openings ?? {}).flatMap(([opening, measured]) =>
        stove.parts.get(name)?.openings.has(opening)
          ? stray(['parts', name, 'openings', opening], measured as Group)
          : [],
      ),
    ]
  })
}

const isNumber = (value: unknown): value is number => typeof value === 'number'

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

/** The round hole of the same area as one measured across and up: √(ab) of an ellipse; of more readings likewise. */
const equalArea = (values: readonly number[]): number =>
  values.every((value) => value > 0)
    ? Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length)
    : mean(values)

const readingOf = (measure: Measure, read: BuiltRead, json: JsonValue): BuiltValue | null => {
  const found = valueAt(read as unknown as JsonValue, measure.path) as unknown
  const values = (Array.isArray(found) ? found : [found]).filter(isNumber)
  if (values.length === 0) return null
  const texts = [valueAt(json, measure.path) ?? []].flat().filter((one) => typeof one === 'string')
  const opening = read.parts?.[measure.part ?? '']?.openings?.[measure.opening ?? '']
  const isHole = measure.kind === 'hole diameter' || measure.kind === 'bore diameter'
  return {
    measure,
    value: isHole ? equalArea(values) : mean(values),
    spread: (Math.max(...values) - Math.min(...values)) / 2,
    written: values.length === 1 ? (texts[0] ?? null) : null,
    from: (measure.kind === 'opening height' ? opening?.from : undefined) ?? 'bottom',
    leftOut: measure.kind === 'row count' ? (opening?.leftOut ?? null) : null,
  }
}

/** The height of an opening above the part's bottom edge, whichever edge it was taken from [m]. */
const heightFromBottom = (value: BuiltValue, whole: number | null): number =>
  value.from === 'top' && whole !== null ? whole - value.value : value.value

const farOff = (value: BuiltValue, stove: Stove, confirmed: ReadonlySet<string>): readonly Problem[] => {
  const { measure } = value
  const allowed = plausibleOff(measure)
  const part = measure.part === null ? undefined : stove.parts.get(measure.part)
  const whole = part === undefined ? null : partHeight(part)
  const built = measure.kind === 'opening height' ? heightFromBottom(value, whole) : value.value
  const field = fieldPath(measure.path)
  if (allowed === null || measure.planned === null || confirmed.has(field)) return []
  if (Math.abs(offPlan(measure, built)) <= allowed * (1 + 1e-9)) return []
  const slip = likelySlip(measure, built, whole)
  return [
    problem(
      'far-off-plan',
      measure.path,
      value.written ?? measureText(measure, value.value),
      `within ${measureText(measure, allowed)} of the plan, ${measureText(measure, measure.planned)}`,
      `${slip ?? 'Measure again.'} If it really is so, add "${field}" to "confirmed".`,
    ),
  ]
}

/** A row with another number of openings than the plan: which places stay whole has to be said. */
const rowProblems = (value: BuiltValue, stove: Stove): readonly Problem[] => {
  const { measure, leftOut } = value
  const row = stove.parts.get(measure.part ?? '')?.openings.get(measure.opening ?? '') as RowOpening
  const path = [...measure.path.slice(0, -1), 'leftOut']
  if (leftOut === null)
    return value.value === measure.planned
      ? []
      : [
          problem(
            'which-left-out',
            path,
            '',
            `the places that stay whole, since the plan has ${measure.planned} openings and ${value.value} were counted`,
            `Add "leftOut": such as [${row.leftOut.join(', ') || '3'}], or [] where the ${value.value} are spread evenly all round.`,
          ),
        ]
  const places = value.value + leftOut.length
  const beyond = leftOut.find((place) => place > places)
  if (beyond === undefined && new Set(leftOut).size === leftOut.length && value.value > 0) return []
  return [
    problem(
      'left-out-places',
      path,
      `[${leftOut.join(', ')}]`,
      `places from 1 to ${places}, each once, and at least one opening cut`,
      'Count again: openings cut and places left whole make up the row.',
    ),
  ]
}

/** A place list without the count it belongs to. */
const loneLeftOut = (read: BuiltRead): readonly Problem[] =>
  Object.entries(read.parts ?? {}).flatMap(([part, entry]) =>
    Object.entries(entry.openings ?? {}).flatMap(([opening, { leftOut, count }]) =>
      leftOut === undefined || isNumber(count)
        ? []
        : [
            problem(
              'left-out-alone',
              ['parts', part, 'openings', opening, 'leftOut'],
              `[${leftOut.join(', ')}]`,
              'places left whole only beside a count',
              'Add "count": how many openings are really cut.',
            ),
          ],
    ),
  )

const confirmedProblems = (read: BuiltRead, measures: readonly Measure[]): readonly Problem[] => {
  const fields = measures.map(({ path }) => fieldPath(path))
  return (read.confirmed ?? []).flatMap((field, index) => {
    if (fields.includes(field)) return []
    const near = nearest(field, fields)
    return [
      problem(
        'confirmed-unknown',
        ['confirmed', index],
        `"${field}"`,
        'the field of a measure, as a question names it',
        near === null ? 'Take it out.' : `Was "${near}" meant?`,
      ),
    ]
  })
}

/** Every measure that was filled in, or what is wrong with those that were. */
export const builtValues = (
  read: BuiltRead,
  json: JsonValue,
  stove: Stove,
  measures: readonly Measure[],
): Outcome<readonly BuiltValue[]> => {
  const misplaced = [
    ...nameProblems(read, stove),
    ...strayProblems(read, stove, measures),
    ...confirmedProblems(read, measures),
    ...loneLeftOut(read),
  ]
  if (misplaced.length > 0) return bad(...misplaced)
  const values = measures.flatMap((one) => readingOf(one, read, json) ?? [])
  const confirmed = new Set(read.confirmed ?? [])
  const doubtful = values.flatMap((value) => [
    ...farOff(value, stove, confirmed),
    ...(value.measure.kind === 'row count' ? rowProblems(value, stove) : []),
  ])
  return doubtful.length > 0 ? bad(...doubtful) : good(values)
}
