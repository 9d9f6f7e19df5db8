import { MAKING_CAUTIONS } from '../caution.ts'

const [EDGES = '', COATINGS = '', MONOXIDE = '', HEAT = '', APPROVAL = ''] = MAKING_CAUTIONS

/** Whoever handles, cuts or drills tin. */
export const CUTTING_CAUTIONS: readonly string[] = [EDGES]
/** Whoever burns coatings off. */
export const BURN_OFF_CAUTIONS: readonly string[] = [EDGES, COATINGS, MONOXIDE, HEAT]
/** Whoever burns anything in it. */
export const BURNING_CAUTIONS: readonly string[] = [MONOXIDE, HEAT, APPROVAL]
