declare const TINWRIGHT_VERSION: string

/** Of the program, as its package says; put in when the bench is built. */
export const version: string = TINWRIGHT_VERSION
