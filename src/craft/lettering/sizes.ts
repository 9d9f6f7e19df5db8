/** Heights of a capital [mm]: 2.5 is read at arm's length, 3 across a bench. Workshop judgement, no source. */
export const TITLE_SIZE = 3.6
export const LABEL_SIZE = 3
export const NOTE_SIZE = 2.5
/** For what is read once, at a desk. */
export const SMALL_SIZE = 2.1
