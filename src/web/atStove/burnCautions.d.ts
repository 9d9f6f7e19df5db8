/** What of the cautions belongs to a burn. */
export declare const BURN_CAUTIONS: readonly string[]
