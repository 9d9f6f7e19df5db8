export type Key = '0' | '1' | '2' | '3' | '4' | '5' | '6' | '7' | '8' | '9' | '.' | 'back' | 'clear'
/** The text after a key. */
export declare const pressed: (text: string, key: Key) => string
/** Whether it is a number; a lone point at its end is forgiven. */
export declare const typed: (text: string) => string | null
