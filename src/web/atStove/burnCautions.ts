import { MAKING_CAUTIONS } from '#craft/caution.ts'

const [, , MONOXIDE, HEAT, APPROVAL] = MAKING_CAUTIONS

/** What of the cautions belongs to a burn. */
export const BURN_CAUTIONS = [MONOXIDE, HEAT, APPROVAL] as readonly string[]
