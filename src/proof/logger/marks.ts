import type { Mapping, Question } from './mapping.ts'

export type Marks = Pick<Mapping, 'decimal' | 'thousands'>

const GROUPED = /^[+-]?\d{1,3}(?:([,.' ])\d{3})+$/

/** What the fields of readings say of the marks in their numbers. */
interface Evidence {
  /** Certain: two kinds of marks in one number, or digits after a mark that cannot be a group. */
  readonly decimals: ReadonlySet<string>
  readonly groups: ReadonlySet<string>
  /** Fields such as `1,234`, which may be either; by their mark. */
  readonly doubtful: ReadonlyMap<string, string>
}

const evidenceOf = (fields: Iterable<string>): Evidence => {
  const decimals = new Set<string>()
  const groups = new Set<string>()
  const doubtful = new Map<string, string>()
  for (const field of fields) {
    const both = /^[+-]?\d{1,3}(?:([,.' ])\d{3})+([.,])\d+$/.exec(field)
    if (both !== null && both[1] !== both[2]) {
      groups.add(both[1] as string)
      decimals.add(both[2] as string)
      continue
    }
    const group = GROUPED.exec(field)
    if (group !== null) {
      const mark = group[1] as string
      const marks = field.split(mark).length - 1
      // 0,123 begins with nothing to group; 1,234,567 has two, and a number one decimal mark.
      if (mark === ' ' || mark === "'" || marks > 1) groups.add(mark)
      else if (/^[+-]?0/.test(field)) decimals.add(mark)
      else doubtful.set(mark, field)
      continue
    }
    const single = /^[+-]?\d*([.,])\d*(?:[eE][+-]?\d+)?$/.exec(field)
    if (single !== null) decimals.add(single[1] as string)
  }
  return { decimals, groups, doubtful }
}

const question = (seen: string, mark: string): Question => ({
  key: 'decimal',
  ask: `Does the ${mark === ',' ? 'comma' : 'point'} in ${seen} set off decimals, or thousands?`,
  seen,
  choices: ['decimals', 'thousands'],
})

/** Marks as far as the fields tell them; a question where they may mean either. */
export const marksOf = (
  fields: Iterable<string>,
  answer: string | undefined,
): { readonly marks: Marks; readonly question: Question | null; readonly contradiction: string | null } => {
  const { decimals, groups, doubtful } = evidenceOf(fields)
  const group = [...groups][0] ?? ''
  if (decimals.size > 1 || groups.size > 1 || [...groups].some((one) => decimals.has(one)))
    return {
      marks: { decimal: '.', thousands: '' },
      question: null,
      contradiction: 'Some numbers have a decimal comma and some a decimal point',
    }
  const decimal = [...decimals][0]
  if (decimal !== undefined || group !== '') {
    const point = decimal ?? (group === '.' ? ',' : '.')
    // 1,234 beside 23.4: nothing else is left for the comma to be.
    const other = [...doubtful.keys()].find((mark) => mark !== point)
    return {
      marks: { decimal: point as Marks['decimal'], thousands: (group || other || '') as Marks['thousands'] },
      question: null,
      contradiction: null,
    }
  }
  const [mark, seen] = [...doubtful][0] ?? []
  if (mark === undefined || seen === undefined)
    return { marks: { decimal: '.', thousands: '' }, question: null, contradiction: null }
  if (doubtful.size > 1)
    return {
      marks: { decimal: '.', thousands: '' },
      question: null,
      contradiction: 'Some numbers have a comma before three digits and some a point',
    }
  const asDecimals = { decimal: mark as Marks['decimal'], thousands: '' as const }
  const asThousands = { decimal: mark === ',' ? '.' : ',', thousands: mark } as Marks
  return {
    marks: answer === 'thousands' ? asThousands : asDecimals,
    question: answer === 'decimals' || answer === 'thousands' ? null : question(seen, mark),
    contradiction: null,
  }
}
