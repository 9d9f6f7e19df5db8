import { BadInput, bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { closely } from '#basis/text/bothUnits.ts'
import { fieldPath } from '#basis/text/fieldPath.ts'
import { CAN_DEFAULTS } from '#stove/can/defaults.ts'
import { canFromCode, measuredCan } from '#stove/can/fromCode.ts'
import type { Can, CanEnd, Measured } from '#stove/model.ts'
import type { CanRead, EndRead } from './canSchema.ts'
import { type Place, problemAt, within } from './place.ts'

const endOf = (end: EndRead): CanEnd => {
  switch (end.end) {
    case 'plain':
      return { kind: 'plain', countersink: end.countersink ?? CAN_DEFAULTS.countersink.value }
    case 'pull-off':
    case 'friction':
      return { kind: end.end, opening: end.opening }
    case 'drawn':
    case 'open':
    case 'cut':
      return { kind: end.end }
  }
}

/** Keys that are there; the can builders take what is absent as not measured. */
const given = <T extends object>(record: T): { [K in keyof T]: Exclude<T[K], undefined> } =>
  Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>
  }

/** Where the file tells about a can: its measures may stand in a group of their own. */
export interface CanPlaces {
  readonly measures: Place
  /** Ends and trim. */
  readonly part: Place
}

/** A field of the can's own (`can.top.opening`, `can.beads.0`) as it is written in the file. */
const fieldInFile = (field: string, { measures, part }: CanPlaces, trimmed: boolean): string => {
  const [, ...steps] = field.split('.')
  const path = steps
    .filter((step) => step !== 'tolerance')
    .map((step) => (/^\d+$/.test(step) ? Number(step) : step))
  if (path[0] === 'bottom' || path[0] === 'top') return fieldPath([...part.path, ...path])
  if (path[0] === 'height' && trimmed) return fieldPath([...part.path, 'trim', 'height'])
  return fieldPath([...measures.path, ...path])
}

const build = (
  { code, ...measures }: CanRead,
  ends: { bottom: CanEnd; top: CanEnd },
  height: Measured | undefined,
): Can => {
  const known = { ...given(measures), ...ends, ...(height === undefined ? {} : { height }) }
  if (code !== undefined) return canFromCode(code, known)
  if (known.height === undefined) throw new Error('A can without code or height passed the schema')
  return measuredCan({ ...known, height: known.height })
}

const trimProblems = (can: Can, trim: Measured | undefined, part: Place): readonly Problem[] => {
  const cut = can.bottom.kind === 'cut' || can.top.kind === 'cut'
  if (trim === undefined)
    return cut
      ? [
          problemAt(
            within(part, 'trim'),
            'trim.missing',
            'the height that is left, where an end is "cut"',
            'Add "trim": { "height": "…" }, measured after cutting.',
          ),
        ]
      : []
  const place = within(part, 'trim', 'height')
  if (!cut)
    return [
      problemAt(
        within(part, 'trim'),
        'trim.no-cut-end',
        'a trim only where "bottom" or "top" is { "end": "cut" }',
        'Say which end was cut away, or leave the trim out.',
      ),
    ]
  return trim.value > can.height.value
    ? [
        problemAt(
          place,
          'trim.above-can',
          `up to the height of the can as bought, ${closely(can.height.value)}`,
          'A can gets no taller by cutting: measure again, or look at the size code.',
        ),
      ]
    : []
}

/** A can as bought, then as trimmed. Its problems are told at the fields that say them. */
export const readCan = (
  read: CanRead,
  bottom: EndRead,
  top: EndRead,
  trim: Measured | undefined,
  places: CanPlaces,
): Outcome<Can> => {
  const ends = { bottom: endOf(bottom), top: endOf(top) }
  let trimmed = false
  try {
    // Beads are given on the can as it stands, so the can as bought has none yet.
    const bought = build({ ...read, beads: undefined }, ends, undefined)
    const problems = trimProblems(bought, trim, places.part)
    if (problems.length > 0) return bad(...problems)
    trimmed = trim !== undefined
    return good(build(read, ends, trim))
  } catch (error) {
    if (!(error instanceof BadInput)) throw error
    return bad(...error.problems.map((one) => ({ ...one, field: fieldInFile(one.field, places, trimmed) })))
  }
}
