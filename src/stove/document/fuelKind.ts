import { bad, good, type Outcome } from '#basis/problem.ts'
import { shown } from '#basis/text/fault.ts'

const KEY = /^[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/

/** Reads a key of the fuel table. Which keys there are is known to `science/fuel`, which asks again. */
export const readFuelKind = (value: unknown): Outcome<string> =>
  typeof value === 'string' && value.length <= 40 && KEY.test(value)
    ? good(value)
    : bad({
        code: 'fuel.kind',
        field: '',
        value: shown(value),
        allowed: 'a key of the fuel table: small letters, digits and hyphens, such as pellets-6mm or twigs',
        fix: 'Write the key of the fuel table in quotation marks: "pellets-6mm".',
      })
