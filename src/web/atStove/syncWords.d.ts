import type { BurnState } from './burnBook.ts'
/** Where everything is that was noted: `12 events, 3 not yet with the workshop`. */
export declare const countWords: ({ count, waiting }: Pick<BurnState, 'count' | 'waiting'>) => string
/** How it stands with the workshop beyond the count, where there is something to say. */
export declare const lineWords: ({ visit, waiting }: Pick<BurnState, 'visit' | 'waiting'>) => string | null
/** How the clocks differ, where they do. */
export declare const clockWords: (shift: number) => string | null
