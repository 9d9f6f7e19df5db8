import type { Mapping, Question } from './mapping.ts'
import { numberish, numberReader, saysNothing, timeish } from './numbers.ts'
import { linesThatSettle } from './support.ts'

export type Marks = Pick<Mapping, 'decimal' | 'thousands'>

/** Every way of marking numbers that is known, the plainest first: of two that read alike the first is taken. */
const WAYS: readonly Marks[] = [
  { decimal: '.', thousands: '' },
  { decimal: ',', thousands: '' },
  { decimal: '.', thousands: ',' },
  { decimal: ',', thousands: '.' },
  { decimal: '.', thousands: "'" },
  { decimal: ',', thousands: "'" },
  { decimal: '.', thousands: ' ' },
  { decimal: ',', thousands: ' ' },
]

/** Share of the lines that may have the other mark before the file is refused as a whole [1]; a judgement. */
const MIXED = 0.1

export interface MarksFound {
  readonly marks: Marks
  readonly question: Question | null
  /** Why the file cannot be read in any one way. */
  readonly contradiction: string | null
}

/** A date with points in it says nothing of decimals. */
const isMarked = (field: string): boolean => numberish(field) && !saysNothing(field) && !timeish(field)

/** The same for the many fields of a file that say the same. */
const markedIn = (lines: readonly (readonly string[])[]): readonly (readonly string[])[] => {
  const known = new Map<string, boolean>()
  const isKnown = (field: string): boolean => {
    const before = known.get(field)
    if (before !== undefined) return before
    const marked = isMarked(field)
    known.set(field, marked)
    return marked
  }
  return lines.map((fields) => fields.filter(isKnown))
}

interface Tried {
  readonly way: Marks
  /** Of each distinct field that looks like a number: what it is in this way. */
  readonly value: ReadonlyMap<string, number | null>
  /** Lines in which all such fields can be read. */
  readonly whole: number
}

const tried = (way: Marks, rows: readonly (readonly string[])[]): Tried => {
  const number = numberReader(way)
  const value = new Map<string, number | null>()
  let whole = 0
  for (const fields of rows) {
    let every = true
    for (const field of fields) {
      let read = value.get(field)
      if (read === undefined) {
        read = number(field)
        value.set(field, read)
      }
      every &&= read !== null
    }
    if (every) whole++
  }
  return { way, value, whole }
}

/** Those whose marks occur at all. */
const waysFor = (rows: readonly (readonly string[])[]): readonly Marks[] => {
  const occurs = (mark: string): boolean =>
    rows.some((fields) => fields.some((field) => field.includes(mark)))
  const comma = occurs(',')
  return WAYS.filter(({ decimal, thousands }) =>
    thousands === '' ? decimal === '.' || comma : occurs(thousands),
  )
}

/** A field that both ways read, and not alike: `1,312`. */
const doubtfulField = (one: Tried, other: Tried): string | null => {
  for (const [field, value] of one.value) {
    const second = other.value.get(field) ?? null
    if (value !== null && second !== null && value !== second) return field
  }
  return null
}

const question = (seen: string): Question => ({
  key: 'decimal',
  ask: `Does the ${seen.includes(',') ? 'comma' : 'point'} in ${seen} set off decimals, or thousands?`,
  seen,
  choices: ['decimals', 'thousands'],
})

/**
 * Marks as far as the lines of readings tell them; a question where they may mean either. `1,312` may be either;
 * `18,2` cannot be thousands, but one such line among many of the other sort is a damaged line until enough lines say
 * so.
 */
export const marksOf = (lines: readonly (readonly string[])[], answer: string | undefined): MarksFound => {
  const rows = markedIn(lines)
  const all = waysFor(rows).map((way) => tried(way, rows))
  const enough = linesThatSettle(rows.length)
  // A plainer way is given up only for one that reads more than a damaged line would.
  const best = all.reduce((kept, one) => {
    const gain = one.whole - kept.whole
    const plainer = kept.way.thousands === '' && one.way.thousands !== ''
    return gain > (plainer ? 1 : 0) ? one : kept
  })
  const rivals = all.flatMap((one) => {
    const seen = one === best ? null : doubtfulField(best, one)
    return seen !== null && best.whole - one.whole < enough ? [{ ...one, seen }] : []
  })
  const [rival] = rivals
  if (rival !== undefined) {
    const asDecimals = (way: Marks): boolean => way.decimal === (rival.seen.includes(',') ? ',' : '.')
    const meant =
      answer === 'decimals' || answer === 'thousands'
        ? [best, ...rivals]
            .filter(({ way }) => asDecimals(way) === (answer === 'decimals'))
            .sort((a, b) => b.whole - a.whole)[0]
        : undefined
    return meant === undefined
      ? { marks: best.way, question: question(rival.seen), contradiction: null }
      : { marks: meant.way, question: null, contradiction: null }
  }
  const mixed = all.some((one) => {
    if (one.way.decimal === best.way.decimal) return false
    const other = linesOnlyIn(one, best, rows)
    return (other >= 2 && other > MIXED * rows.length) || (other >= 1 && best.whole - one.whole < enough)
  })
  return {
    marks: best.way,
    question: null,
    contradiction: mixed ? 'Some numbers have a decimal comma and some a decimal point' : null,
  }
}

/** Lines with a number that only the one way reads. */
const linesOnlyIn = (one: Tried, best: Tried, rows: readonly (readonly string[])[]): number =>
  rows.filter((fields) =>
    fields.some((field) => best.value.get(field) === null && one.value.get(field) !== null),
  ).length
