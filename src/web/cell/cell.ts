/** A value that changes, and who wants to know. */
export interface Cell<T> {
  readonly get: () => T
  /** Calls back after every change; gives back how to stop. */
  readonly subscribe: (listener: () => void) => () => void
}

export interface OpenCell<T> extends Cell<T> {
  /** Tells nobody when it is the same value as before. */
  readonly set: (value: T) => void
  readonly update: (change: (value: T) => T) => void
}

export const createCell = <T>(first: T): OpenCell<T> => {
  let value = first
  const listeners = new Set<() => void>()
  const set = (next: T): void => {
    if (Object.is(next, value)) return
    value = next
    for (const listener of [...listeners]) listener()
  }
  return {
    get: () => value,
    subscribe: (listener) => {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    set,
    update: (change) => set(change(value)),
  }
}

/** Works a value out of others, anew only after one of them has changed. */
export const derivedCell = <T>(sources: readonly Cell<unknown>[], work: () => T): Cell<T> => {
  let seen: readonly unknown[] | null = null
  let value: T
  return {
    get: () => {
      const now = sources.map((source) => source.get())
      if (seen === null || now.some((one, i) => !Object.is(one, seen?.[i]))) {
        value = work()
        seen = now
      }
      return value
    },
    subscribe: (listener) => {
      const stops = sources.map((source) => source.subscribe(listener))
      return () => {
        for (const stop of stops) stop()
      }
    },
  }
}
