import { BadInput, bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { closely } from '#basis/text/bothUnits.ts'
import { shown } from '#basis/text/fault.ts'
import { fromInches, type Metres, MILLIMETRES_PER_INCH, toMillimetres } from '#basis/units.ts'

/** What a size code says: outside dimensions over the double seam, as the trade rounds them. */
export interface SizeCode {
  readonly diameter: Metres
  readonly height: Metres
  /** In the trade's plain form, `603x700`. */
  readonly code: string
}

// The rule, [bib:cmi]: the last two digits of a group are sixteenths of an inch, the digits before
// them whole inches; diameter first, then height. Four digits, as in 1012 = 10 12/16 in: [bib:md0708].
const SIXTEENTHS = 16
const ALLOWED = 'a round can’s size code, such as 603x700 (6 3/16 in over the seam, 7 in high)'

const problem = (code: string, field: string, value: string, fix: string): Problem => ({
  code,
  field,
  value,
  allowed: ALLOWED,
  fix,
})

const readGroup = (group: string, which: 'diameter' | 'height', field: string): Outcome<Metres> => {
  const said = `“${group}”`
  if (!/^\d{3,4}$/.test(group) || (group.length === 4 && group.startsWith('0')))
    return bad(
      problem(
        'size-code.form',
        field,
        said,
        `Write the ${which} as whole inches and two digits of sixteenths: 6 3/16 in is 603.`,
      ),
    )
  const inches = Number(group.slice(0, -2))
  const sixteenths = Number(group.slice(-2))
  if (sixteenths >= SIXTEENTHS)
    return bad(
      problem(
        'size-code.sixteenths',
        field,
        said,
        `Its last two digits are sixteenths of an inch and run from 00 to 15, but here they are ${group.slice(-2)}. ` +
          `Measure the ${which} over the seam again.`,
      ),
    )
  if (inches === 0 && sixteenths === 0)
    return bad(
      problem('size-code.zero', field, said, `A ${which} of nothing is no can: look at the code again.`),
    )
  return good(fromInches(inches + sixteenths / SIXTEENTHS))
}

/**
 * Reads the three-digit size code of a round can: `603x700`, `603 x 700`, `603×700` [m].
 * Oblong cans (three groups) are refused, because they are not round. [bib:cmi]
 */
export const readSizeCode = (text: unknown, field: string): Outcome<SizeCode> => {
  if (typeof text !== 'string')
    return bad(
      problem('size-code.not-text', field, shown(text), 'Write the code as text, in quotes: "603x700".'),
    )
  const groups = text.trim().split(/\s*[xX×]\s*/u)
  const said = text.trim() === '' ? shown(text) : `“${shown(text)}”`
  if (groups.length === 3 && groups.every((group) => /^\d{3,4}$/.test(group)))
    return bad(
      problem(
        'size-code.oblong',
        field,
        said,
        'Three groups name an oblong can, and a stove is made of round ones. Use a round can.',
      ),
    )
  const [first, second] = groups
  if (groups.length !== 2 || first === undefined || second === undefined)
    return bad(problem('size-code.form', field, said, 'Write diameter, an x, and height: 603x700.'))
  const diameter = readGroup(first, 'diameter', field)
  const height = readGroup(second, 'height', field)
  if (!diameter.ok || !height.ok)
    return bad(...(diameter.ok ? [] : diameter.problems), ...(height.ok ? [] : height.problems))
  return good({ diameter: diameter.value, height: height.value, code: `${first}x${second}` })
}

const LARGEST_INCHES = 100

const writeGroup = (length: Metres, which: 'diameter' | 'height'): string => {
  const sixteenths = Math.round((toMillimetres(length) / MILLIMETRES_PER_INCH) * SIXTEENTHS)
  if (!(sixteenths >= 1 && sixteenths < LARGEST_INCHES * SIXTEENTHS))
    throw new BadInput([
      {
        code: 'size-code.range',
        field: which,
        value: Number.isFinite(length) ? closely(length) : String(length),
        allowed: '1/16 in to 99 15/16 in (1.6 mm to 2538.4 mm)',
        fix: 'A size code has no way to write this length: give it in millimetres.',
      },
    ])
  return `${Math.floor(sixteenths / SIXTEENTHS)}${String(sixteenths % SIXTEENTHS).padStart(2, '0')}`
}

/**
 * The size code nearest to outside dimensions over the seam; off by at most 1/32 in (0.8 mm) each way.
 * Throws `BadInput` outside 1/16 in to 99 15/16 in, which a code cannot write.
 */
export const writeSizeCode = (diameter: Metres, height: Metres): string =>
  `${writeGroup(diameter, 'diameter')}x${writeGroup(height, 'height')}`
