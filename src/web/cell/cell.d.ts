/** A value that changes, and who wants to know. */
export interface Cell<T> {
    readonly get: () => T;
    /** Calls back after every change; gives back how to stop. */
    readonly subscribe: (listener: () => void) => () => void;
}
export interface OpenCell<T> extends Cell<T> {
    /** Tells nobody when it is the same value as before. */
    readonly set: (value: T) => void;
    readonly update: (change: (value: T) => T) => void;
}
export declare const createCell: <T>(first: T) => OpenCell<T>;
/** Works a value out of others, anew only after one of them has changed. */
export declare const derivedCell: <T>(sources: readonly Cell<unknown>[], work: () => T) => Cell<T>;
