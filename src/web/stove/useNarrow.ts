import { useSyncExternalStore } from 'react'

/** As narrow as a phone held upright: one thing at a time [px]. */
const narrow = matchMedia('(max-width: 760px)')

const subscribe = (listener: () => void): (() => void) => {
  narrow.addEventListener('change', listener)
  return () => narrow.removeEventListener('change', listener)
}

export const useNarrow = (): boolean => useSyncExternalStore(subscribe, () => narrow.matches)
