import type * as z from 'zod'
import { bad, good, type Outcome } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'
import { field } from '#stove/document/fields.ts'

const readWhole = (value: unknown, min: number, max: number): Outcome<number> =>
  typeof value === 'number' && Number.isInteger(value) && value >= min && value <= max
    ? good(value)
    : bad({
        code: 'number.whole',
        field: '',
        value: shown(value),
        allowed: `a whole number from ${min} to ${max}`,
        fix: 'Write it in digits, without quotation marks.',
      })

/** A whole number that counts nothing of the table of quantities: a place in an order, an edit. */
export const whole = (min: number, max: number, description: string): z.ZodType<number, number> =>
  field((value) => readWhole(value, min, max), { type: 'integer', description, minimum: min, maximum: max })
