import * as z from 'zod'
import { bad, good, type Outcome, type Problem } from '#basis/problem.ts'
import { type QuantityKey, quantity } from '#basis/quantities.ts'
import { shown } from '#basis/text/fault.ts'
import { readLength, readMeasured } from '#basis/text/length.ts'
import { allowedRange } from '#basis/text/range.ts'
import { readCount, readQuantity } from '#basis/text/read.ts'
import { type Degrees, type Fraction, fromMillimetres, type Metres } from '#basis/units.ts'
import { readBit } from '#stove/bit/readBit.ts'
import type { Bit, Measured } from '#stove/model.ts'

/**
 * The fields a stove file is made of. Each is a zod type whose input is what the maker wrote and
 * whose output is what the house keeps; the readers of `basis/text` do the work and say what is
 * wrong, and their problems travel through zod untouched (`params.problem`).
 */

type JsonType = 'string' | 'integer' | readonly ('string' | 'integer' | 'null')[]

/** A field with a reader of its own: what it makes of the text, or the problems it finds in it. */
export const field = <T, Written>(
  read: (value: unknown) => Outcome<T>,
  json: { readonly type: JsonType; readonly description: string } & Record<string, unknown>,
): z.ZodType<T, Written> =>
  z
    .unknown()
    .transform((value, context) => {
      const outcome = read(value)
      if (outcome.ok) return outcome.value
      for (const problem of outcome.problems) {
        context.issues.push({ code: 'custom', input: value, message: problem.code, params: { problem } })
      }
      return z.NEVER
    })
    // Not `z.string()`: the readers want to see a bare number, to ask for its unit.
    .meta(json) as unknown as z.ZodType<T, Written>

const described = (key: QuantityKey, more: string): string => {
  const { description } = quantity(key)
  return `${description} ${more}: ${allowedRange(quantity(key))}.`
}

const EXAMPLES = 'Text with its unit, such as "16 mm", "5/8 in" or "5/8 in (16 mm)"'

/** A length as makers write it [m]. */
export const length = (key: QuantityKey): z.ZodType<Metres, string> =>
  field((value) => readLength(value, '', key), { type: 'string', description: described(key, EXAMPLES) })

/** Half a division of a rule in millimetres, either way: common practice, no source [m]. */
const RULE_TOLERANCE = fromMillimetres(0.5)

/** A length as measured, with `± …` where the maker says how well; else ± 0.5 mm, a rule's [m]. */
export const measured = (key: QuantityKey, tolerance: Metres = RULE_TOLERANCE): z.ZodType<Measured, string> =>
  field((value) => readMeasured(value, '', key, tolerance), {
    type: 'string',
    description: described(key, 'Text such as "108 mm" or "108.0 mm ± 0.3 mm"'),
  })

/** An angle: `30 deg`, `30°` [deg]. */
export const angle = (key: QuantityKey): z.ZodType<Degrees, string> =>
  field((value) => readQuantity(value, '', key) as Outcome<Degrees>, {
    type: 'string',
    description: described(key, 'Text such as "30 deg"'),
  })

/** A share in percent [1]. */
export const share = (key: QuantityKey): z.ZodType<Fraction, string> =>
  field((value) => readQuantity(value, '', key) as Outcome<Fraction>, {
    type: 'string',
    description: described(key, 'Text such as "8 %"'),
  })

/** Any other amount with its unit: a weight, a volume [SI unit of the quantity]. */
export const amount = (key: QuantityKey, examples: string): z.ZodType<number, string> =>
  field((value) => readQuantity(value, '', key), {
    type: 'string',
    description: described(key, examples),
  })

/** Counts are the only bare numbers of a stove file; text with digits in it is not one. */
export const readBareCount = (value: unknown, key: QuantityKey): Outcome<number> =>
  typeof value === 'string' && readCount(value, '', key).ok
    ? bad({
        code: 'count.in-quotes',
        field: '',
        value: `"${shown(value)}"`,
        allowed: allowedRange(quantity(key)),
        fix: `Write it without quotation marks: ${shown(value)}.`,
      })
    : readCount(value, '', key)

/** A whole number. */
export const count = (key: QuantityKey): z.ZodType<number, number> => {
  const { description, min, max } = quantity(key)
  return field((value) => readBareCount(value, key), {
    type: 'integer',
    description: `${description} A whole number.`,
    minimum: min,
    maximum: max,
  })
}

/** A drill bit as the trade names it. */
export const bit = (): z.ZodType<Bit, string> =>
  field((value) => readBit(value, ''), {
    type: 'string',
    description:
      'The bit that drills the hole, as the trade names it: "6 mm", "5/8 in", "#7", "letter E", "16 mm step".',
  })

/** Text that some reader makes sense of. */
export const readText = <T>(
  read: (value: unknown) => Outcome<T>,
  description: string,
): z.ZodType<T, string> => field(read, { type: 'string', description })

/** Any words, kept as they are. Control characters, line breaks apart, would spoil a terminal or a PDF. */
export const words = (most: number, description: string): z.ZodType<string, string> => {
  const allowed = `text of at most ${most} characters`
  const wrong = (code: string, value: string, fix: string): Outcome<never> =>
    bad({ code: `words.${code}`, field: '', value, allowed, fix })
  return field(
    (value) => {
      if (typeof value !== 'string') return wrong('not-text', shown(value), 'Write it in quotation marks.')
      if (value.length > most) return wrong('too-long', `${value.length} characters`, 'Say it shorter.')
      if (/[^\P{Cc}\n]/u.test(value))
        return wrong('control', shown(value), 'Take out tabs and other invisible characters.')
      return good(value)
    },
    { type: 'string', description, maxLength: most },
  )
}

/** A problem of a rule between fields, found while the shape is read. */
export const addProblem = (
  issues: z.core.$ZodRawIssue[],
  input: unknown,
  path: readonly PropertyKey[],
  problem: Omit<Problem, 'field'>,
): void => {
  issues.push({ code: 'custom', input, path: [...path], message: problem.code, params: { problem } })
}

/** An object in which every key must be known; zod carries the known ones to the message. */
export const strict = <Shape extends z.core.$ZodLooseShape>(shape: Shape) =>
  z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? Object.keys(shape).join(', ') : undefined),
  })
