/**
 * How readings speak for one of several ways of reading them. One damaged field looks like evidence and must settle
 * nothing: a way of reading is taken for certain when so many lines cannot be read in the other way.
 */
const LINES = 3
/** And where the file is long, this share of its lines [1]; judgements, both. */
const SHARE = 0.02

/** Lines that must speak against a rival before it is dropped without asking. */
export const linesThatSettle = (lines: number): number => Math.max(LINES, Math.ceil(SHARE * lines))
