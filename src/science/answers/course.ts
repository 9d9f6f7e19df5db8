import type { Regime } from '#science/steady/prediction.ts'

/** How a burn goes, most of the time it has wood gas. */
export type Course = Regime | 'goes out before the floor' | 'does not burn'
